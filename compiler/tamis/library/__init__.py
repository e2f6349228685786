"""A folder of recipes: the house around them, which uses which, and what is wrong between them."""
