"""Rules that look at the whole compiled recipe; every file here is one, named after it."""
