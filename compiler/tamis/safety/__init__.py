"""Hazards, allergens and cautions: what in the food can hurt someone, and where the recipe takes care of it."""
