"""From clauses to what they say: roles by `words/en/reading.toml` and the lists of goods, verbs and equipment."""
