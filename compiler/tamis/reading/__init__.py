"""From clauses to what they say: roles by `roles.toml` and the lists of goods, verbs and equipment."""
