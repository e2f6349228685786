"""A dough in weights and baker's percentages, and how warm its water must be."""
