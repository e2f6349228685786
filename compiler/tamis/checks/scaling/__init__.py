"""Rules that look at a recipe together with the factor by which it is to be scaled, a file each."""
