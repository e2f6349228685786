"""The words that the table and the list of equipment ask of a recipe, from `grammar/words/<language>/table.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists


class EquipmentWords(NamedTuple):
    """By which it is known what piece a clause means."""

    fixtures: frozenset[str]
    """No equipment to set out."""
    pointers: frozenset[str]
    changed: frozenset[str]
    """Adjectives that tell what happened to a piece. With *the*, they point at one that stood there before."""
    racks: frozenset[str]
    """Of which an oven has several."""
    lidded: frozenset[str]
    another: frozenset[str]
    eaten: frozenset[str]
    """Before *lid*: it is one of dough."""


class AmountWords(NamedTuple):
    """By which it is known what an amount is of, and how it is taken."""

    to_taste: frozenset[str]
    needed: frozenset[str]
    heaped: frozenset[str]
    uneven: frozenset[str]
    """Heaped and the like, of which nobody knows how much it holds."""
    nearly: frozenset[str]
    beyond: frozenset[str]
    """Said before a measure: more than it, or less."""
    own: frozenset[str]
    """Of which a percentage is: the food's own weight."""
    flour: frozenset[str]
    stick: frozenset[str]
    divided: re.Pattern[str]
    """What stands before the number of a dough's pieces."""


@cache
def equipment_words(language: str) -> EquipmentWords:
    return EquipmentWords(**_sets(language, "equipment"))


@cache
def amount_words(language: str) -> AmountWords:
    openers = one_of(word_lists(language, "table")["divisions"]["openers"])
    return AmountWords(**_sets(language, "amounts"), divided=pattern(rf"{openers} "))


def _sets(language: str, table: str) -> dict[str, frozenset[str]]:
    return {key: frozenset(words) for key, words in word_lists(language, "table")[table].items()}
