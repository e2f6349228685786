"""What a formula asks of a recipe's words and foods, from `grammar/words/<language>/formula.toml`."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.record import NamedTuple
from tamis.string_tables import exact
from tamis.words import word_lists, word_tables


class DoughWords(NamedTuple):
    """By which a dough is worked out."""

    separated: tuple[str, ...]
    """In what is done to eggs of which yolks and whites go their own ways."""
    instant: dict[str, Fraction]
    """Grams of instant dry yeast that do the work of one, by the id of a yeast."""


@cache
def dough_words(language: str) -> DoughWords:
    instant = word_tables(language, "formula")["instant"]
    return DoughWords(
        separated=word_lists(language, "formula")["eggs"]["separated"],
        instant={id: exact(grams) for id, grams in instant.items()},
    )
