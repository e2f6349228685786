"""Amounts that plain words name: times, weights, volumes, degrees. `for about 10 minutes`, `half a cup of sugar`.

A number in figures is cut as in a clause, with its unit; here come small words that stand for one before a unit (*a few
minutes*), which in a clause begin names as well.
"""

from __future__ import annotations

from functools import cache

from tamis.quantity.degrees import degree_words
from tamis.quantity.nouns import nouns
from tamis.reading.plain import phrases
from tamis.record import NamedTuple
from tamis.syntax.cutting import ONE
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.reading.plain import Phrases, Plain
    from tamis.syntax.cutting import Choice

AmountKind = Literal["time", "mass", "volume", "degrees"]

_KINDS: dict[Choice | None, AmountKind] = {
    ONE["TIME"]: "time",
    ONE["MASS"]: "mass",
    ONE["VOLUME"]: "volume",
    ONE["DEGREE"]: "degrees",
}
_MOST_BEFORE = 8
_HOT = ("TO", "AT", "UNTIL")
_HEDGES = ("HEDGE", "ATLEAST", "UPTO", "ANOTHER")


class AmountWords(NamedTuple):
    """The words of a language: those that stand for a number, and those that stand before one and leave it as it is.
    Behind one of `hot`, *degrees* without a scale are a temperature, else they may be an angle."""

    numbers: Phrases
    hedges: Phrases
    hot: Phrases
    degrees: frozenset[str]


@cache
def amount_words(language: str) -> AmountWords:
    """The words of a language, read once."""
    said, closed = word_lists(language, "prose")["amounts"], word_lists(language, "clause")["closed"]
    hedges = (*(word for name in _HEDGES for word in closed[name]), *said["hedges"])
    return AmountWords(
        phrases((*said["numbers"], *nouns(language).indefinite), language),
        phrases(hedges, language),
        phrases((word for name in _HOT for word in closed[name]), language),
        frozenset(degree_words(language).names),
    )


class Amount(NamedTuple):
    """A number with its unit: the token it begins with, the first behind it."""

    kind: AmountKind
    first: int
    end: int


def amounts(plain: Plain) -> tuple[Amount, ...]:
    """The amounts of a stretch, in order."""
    return tuple(_amounts(plain)) if len(plain) > 1 else ()


def _amounts(plain: Plain) -> Iterator[Amount]:
    words = amount_words(plain.kitchen.language)
    fixed, at, end = plain.fixed, 0, len(plain)
    while at < end:
        after = at
        if plain.is_count(at):
            after += 1
            if after + 1 < end and fixed[after] is ONE["RANGE"] and plain.is_count(after + 1):
                after += 2
        elif fixed[at] is ONE["GAS"] and fixed[at + 1 : at + 2] == [ONE["NUMBER"]]:
            yield Amount("degrees", at, at + 2)
            at += 2
            continue
        elif fixed[at] is None:
            after += plain.phrase(words.numbers, at)
        if after == at:
            at += 1
            continue
        kind = _unit(plain, after)
        if kind:
            amount = Amount(kind, at, after + 1)
            if plain.said[after] not in words.degrees or amount_opener(plain, amount, words.hot) is not None:
                yield amount
        at = after + bool(kind)


def _unit(plain: Plain, at: int) -> AmountKind | None:
    """What the unit at a place measures; behind words that stand for a number it has been cut as a word."""
    if at >= len(plain):
        return None
    if plain.fixed[at] is not None:
        return _KINDS.get(plain.fixed[at])
    unit = plain.kitchen.units.get(plain.words[at])
    if unit is None:
        return None
    return unit.kind if unit.kind in ("time", "mass", "volume") else None


def amount_opener(plain: Plain, amount: Amount, openers: Phrases) -> int | None:
    """Where one of these words stands before an amount, with nothing between them but *about* and its like."""
    hedges = amount_words(plain.kitchen.language).hedges
    for at in range(max(0, amount.first - _MOST_BEFORE), amount.first):
        size = plain.phrase(openers, at)
        if size and plain.run(hedges, at + size) == amount.first:
            return at
    return None
