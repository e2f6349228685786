"""Durations in a clause: `1 h 30 min`, `60–90 min`, `half an hour`, `at least 2 h, up to a day`, `overnight`."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.quantity.duration import OVERNIGHT, Duration, at_least, up_to, window
from tamis.reading.phrase import Phrase, seconds_of
from tamis.record import NamedTuple

if TYPE_CHECKING:
    from tamis.quantity.units import Unit


class DurationRead(NamedTuple):
    """A duration, and the items that say it: from `start` up to, not including, `end`."""

    duration: Duration
    start: int
    end: int


def find_duration(phrase: Phrase, start: int, only_here: bool = False) -> DurationRead | None:
    """The first duration at or after an index (`only_here`: exactly there), with its bounds; None if there is none."""
    last = min(start + 1, phrase.end) if only_here else phrase.end
    for at in range(start, last):
        found = _bounded(phrase, at)
        if found:
            return found
    return None


def _bounded(phrase: Phrase, at: int) -> DurationRead | None:
    if phrase.keys[at] not in ("at", "up"):
        plain = _plain(phrase, at)
        return _or_longer(phrase, plain) if plain and phrase.key(plain.end) in ("or", ",") else plain
    words = phrase.keys[at : at + 2]
    if words == ("at", "least"):
        low = _plain(phrase, at + 2)
        if not low:
            return None
        more = low.end + 1 if phrase.key(low.end) in (",", "and", "but") else low.end
        high = _plain(phrase, more + 2) if phrase.keys[more : more + 2] in (("up", "to"), ("at", "most")) else None
        high = high or _alternative(phrase, low.end)
        if high and high.duration.hi is not None:
            return DurationRead(window(low.duration.lo, high.duration.hi), at, high.end)
        return DurationRead(at_least(low.duration.lo), at, low.end)
    if words in (("up", "to"), ("at", "most")):
        high = _plain(phrase, at + 2)
        if high and high.duration.hi is not None:
            return DurationRead(up_to(high.duration.hi), at, high.end)
    return None


def _or_longer(phrase: Phrase, least: DurationRead) -> DurationRead:
    """`3 h or overnight`, `2 h or up to 6 h`, `30 min or longer`: what the cook may choose within."""
    more = phrase.quantity(least.end + 1) if phrase.key(least.end) == "or" else None
    if more and more.kind == "pieces" and not phrase.key(least.end + 2).isalpha():  # `an hour or two`
        hi = least.duration.lo * more.amount.hi
        return DurationRead(Duration(least.duration.lo, hi), least.start, least.end + 2)
    high = _alternative(phrase, least.end)
    if high and high.duration.hi is not None:
        return DurationRead(window(least.duration.lo, high.duration.hi), least.start, high.end)
    at = least.end + (phrase.key(least.end) == ",")
    if phrase.keys[at : at + 2] in (("or", "longer"), ("or", "more")):
        return DurationRead(at_least(least.duration.lo), least.start, at + 2)
    return least


def _alternative(phrase: Phrase, at: int) -> DurationRead | None:
    """The longer time after `or`, or None."""
    at += phrase.key(at) == ","
    if phrase.key(at) != "or":
        return None
    at += 1
    return _plain(phrase, at + 2 if phrase.keys[at : at + 2] == ("up", "to") else at)


def _plain(phrase: Phrase, at: int) -> DurationRead | None:
    key = phrase.key(at)
    if key == "#time":
        quantity = phrase.quantity(at)
        assert quantity is not None
        return DurationRead(seconds_of(phrase, quantity), at, at + 1)
    if key == "overnight":
        return DurationRead(OVERNIGHT, at, at + 1)
    begins = key == "#pieces" or key in phrase.tables.articles or key.removesuffix("s") in phrase.tables.fractions
    return _in_words(phrase, at) if begins else None


def _in_words(phrase: Phrase, start: int) -> DurationRead | None:
    """`an hour`, `half an hour`, `a quarter of an hour`, `three quarters of an hour`, `10 more minutes`."""
    at = start
    number = phrase.quantity(at) if phrase.key(at) == "#pieces" else None
    if number and phrase.key(at + 1) in ("more", "further", "extra"):
        unit = _unit_of_time(phrase, at + 2)
        return DurationRead(Duration(*number.amount.times(unit.factor)), start, at + 3) if unit else None
    articles, fractions = phrase.tables.articles, phrase.tables.fractions
    if phrase.keys[at : at + 3] == ("a", "couple", "of"):
        unit = _unit_of_time(phrase, at + 3)
        return DurationRead(Duration(2 * unit.factor, 2 * unit.factor), start, at + 4) if unit else None
    if number or (phrase.key(at) in articles and phrase.key(at + 1) in fractions):
        at += 1
    part = fractions.get(phrase.key(at).removesuffix("s"))
    if part:
        at += 2 if phrase.key(at + 1) == "of" else 1
    elif number:
        return None
    if phrase.key(at) not in articles:
        return None
    word = phrase.key(at + 1)
    unit = _unit_of_time(phrase, at + 1) if len(word) > 2 and word.isalpha() else None
    if not unit:
        return None
    length = unit.factor * part if part else unit.factor
    if number:
        length *= number.amount.lo
    return DurationRead(Duration(length, length), start, at + 2)


def _unit_of_time(phrase: Phrase, at: int) -> Unit | None:
    unit = phrase.kitchen.units.get(phrase.key(at))
    return unit if unit and unit.kind == "time" else None
