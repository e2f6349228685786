"""The words that the model asks of a recipe, from `grammar/words/<language>/model.toml`."""

from __future__ import annotations

from functools import cache

from tamis.words import word_lists


@cache
def cold_states(language: str) -> frozenset[str]:
    """How a liquid is called that gives no heat to what lies in it."""
    return frozenset(word_lists(language, "model")["liquids"]["cold"])
