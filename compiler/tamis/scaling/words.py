"""The words that scaling asks of a recipe, from `grammar/words/<language>/scaling.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.checks.scaling._pans import Shape, shapes
from tamis.patterns import Whole, pattern
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists


class ClauseWords(NamedTuple):
    """Among which the measure of a clause is found."""

    left: Whole
    """In a cue that says what is to be left of a liquid: `until reduced to 150 ml`."""
    of: frozenset[str]
    alternative: frozenset[str]
    plus: frozenset[str]
    each: frozenset[str]
    grows: re.Pattern[str]
    """What stands behind a name, before a number that grows: `to make 240 ml`, `from about 8 ears`."""
    more: frozenset[str]


class ExchangeWords(NamedTuple):
    """By which a tin is exchanged for another one."""

    instead: re.Pattern[str]
    """Between the tin that there is and the one that gives way to it."""
    shape: re.Pattern[str]
    """A word for the shape of a tin."""
    called: dict[Shape, str]
    """… and the one that is written for each."""


@cache
def clause_words(language: str) -> ClauseWords:
    lists = word_lists(language, "scaling")["clauses"]
    return ClauseWords(
        left=Whole(lists["left"]),
        of=frozenset(lists["of"]),
        alternative=frozenset(lists["or"]),
        plus=frozenset(lists["plus"]),
        each=frozenset(lists["each"]),
        grows=pattern(rf"\b{one_of(lists['grows'])}(?: {one_of(lists['hedge'])})? $", re.IGNORECASE),
        more=frozenset(lists["more"]),
    )


@cache
def exchange_words(language: str) -> ExchangeWords:
    instead = word_lists(language, "scaling")["exchange"]["instead"]
    called: dict[Shape, str] = {}
    for word, shape in shapes(language).items():
        called.setdefault(shape, word)
    return ExchangeWords(
        called=called,
        instead=pattern(rf" {one_of(instead)} "),
        shape=pattern(rf"\b{one_of(shapes(language))}\b", re.IGNORECASE),
    )
