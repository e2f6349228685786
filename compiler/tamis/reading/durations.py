"""Durations in a clause: `1 h 30 min`, `60–90 min`, `half an hour`, `at least 2 h, up to a day`, `overnight`."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.duration import OVERNIGHT, Duration, at_least, up_to, window
from tamis.reading.phrase import Phrase, seconds_of
from tamis.record import NamedTuple


class DurationRead(NamedTuple):
    """A duration, and the items that say it: from `start` up to, not including, `end`."""

    duration: Duration
    start: int
    end: int


def find_duration(phrase: Phrase, start: int, only_here: bool = False) -> DurationRead | None:
    """The first duration at or after an index (`only_here`: exactly there), with its bounds; None if there is none."""
    last = start + 1 if only_here else phrase.end
    for at in range(start, last):
        found = _bounded(phrase, at)
        if found:
            return found
    return None


def _bounded(phrase: Phrase, at: int) -> DurationRead | None:
    words = phrase.keys[at : at + 2]
    if words == ("at", "least"):
        low = _plain(phrase, at + 2)
        if not low:
            return None
        more = low.end + 1 if phrase.key(low.end) in (",", "and", "but") else low.end
        high = _plain(phrase, more + 2) if phrase.keys[more : more + 2] in (("up", "to"), ("at", "most")) else None
        if high and high.duration.hi is not None:
            return DurationRead(window(low.duration.lo, high.duration.hi), at, high.end)
        return DurationRead(at_least(low.duration.lo), at, low.end)
    if words in (("up", "to"), ("at", "most")):
        high = _plain(phrase, at + 2)
        if high and high.duration.hi is not None:
            return DurationRead(up_to(high.duration.hi), at, high.end)
        return None
    return _plain(phrase, at)


def _plain(phrase: Phrase, at: int) -> DurationRead | None:
    key = phrase.key(at)
    if key == "#time":
        quantity = phrase.quantity(at)
        assert quantity is not None
        return DurationRead(seconds_of(phrase, quantity), at, at + 1)
    if key == "overnight":
        return DurationRead(OVERNIGHT, at, at + 1)
    return _in_words(phrase, at)


def _in_words(phrase: Phrase, start: int) -> DurationRead | None:
    """`an hour`, `half an hour`, `a quarter of an hour`, `three quarters of an hour`, `10 more minutes`."""
    at = start
    part = Fraction(1)
    articles = phrase.tables.articles
    number = phrase.quantity(at)
    if number and number.kind == "pieces" and phrase.key(at + 1) in ("more", "further", "extra"):
        unit = phrase.kitchen.units.get(phrase.key(at + 2))
        if unit and unit.kind == "time":
            return DurationRead(Duration(number.amount.lo * unit.factor, number.amount.hi * unit.factor), start, at + 3)
        return None
    if number and number.kind == "pieces":
        part, at = number.amount.lo, at + 1
    elif phrase.key(at) in articles and phrase.key(at + 1) in phrase.tables.fractions:
        at += 1
    fraction = phrase.tables.fractions.get(phrase.key(at).removesuffix("s"))
    if fraction:
        part, at = part * fraction, at + 1
        at += phrase.key(at) == "of"
    elif number:
        return None
    if phrase.key(at) not in articles:
        return None
    word = phrase.key(at + 1)
    unit = phrase.kitchen.units.get(word) if len(word) > 2 and word.isalpha() else None
    if not unit or unit.kind != "time":
        return None
    length = unit.factor * part
    return DurationRead(Duration(length, length), start, at + 2)
