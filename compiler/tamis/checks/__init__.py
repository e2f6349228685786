"""What a careful reader would say about a recipe that compiles: one file a rule, found by folder."""
