"""From text to a document: lines by `outline.lark`, clauses by `clause.lark`, nothing lost."""
