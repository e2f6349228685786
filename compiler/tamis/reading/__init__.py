"""From clauses to what they say: `grammar/clause.lark`, the words of a language, the kitchen's lists."""
