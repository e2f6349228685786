"""Shares: `half the dough`, `another third of the cream`, `all but 2 tbsp of the fat`, `half of 300 g flour`."""

from __future__ import annotations

from typing import Literal

from tamis.quantity.amount import exactly
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Share
from tamis.reading.phrase import Phrase, measures_of
from tamis.reading.tables import match
from tamis.record import NamedTuple


class ShareRead(NamedTuple):
    """A share, where what it is of begins, and what that is: something known (`the`), a measure, or an hour."""

    share: Share
    end: int
    of: Literal["the", "measure", "time"]


def read_share(phrase: Phrase, start: int) -> ShareRead | None:
    """The share that begins at an index, or None."""
    key = phrase.key(start)
    if key[:1] != "#":
        named = _rest(phrase, start) or _some(phrase, start) or _fraction(phrase, start)
        return named or (_one_measure(phrase, start) if key in phrase.tables.articles else None)
    of_pieces = _fraction(phrase, start) if key == "#pieces" else None
    return of_pieces or _measure(phrase, start)


def _the(phrase: Phrase, at: int, share: Share) -> ShareRead | None:
    """`of the X`, `the X`, `of X` where X is named, not measured."""
    if phrase.key(at) == "of":
        at += 1
    if phrase.key(at) in ("the", "its", "their", "that", "it", "them"):
        return ShareRead(share, at + 1, "the")
    return None


def _rest(phrase: Phrase, start: int) -> ShareRead | None:
    found = match(phrase.tables.rest, phrase.keys, start)
    if not found:
        return None
    share = Share("rest")
    after = start + found[1]
    return _the(phrase, after, share) or ShareRead(share, after + (phrase.key(after) == "of"), "the")


def _some(phrase: Phrase, start: int) -> ShareRead | None:
    key, following = phrase.key(start), phrase.key(start + 1)
    if key == "all" and following == "but":
        quantity = phrase.quantity(start + 2)
        if not quantity or quantity.kind not in ("mass", "volume", "pieces"):
            return None
        return _the(phrase, start + 3, Share("but", measure=_as_measure(phrase, start + 2)))
    if key == "another" and following == "of":
        return _the(phrase, start + 1, Share("measure", measure=Measure(exactly(1), "")))
    if key == "all":
        return _the(phrase, start + 1, Share("all"))
    found = match(phrase.tables.some, phrase.keys, start)
    if found and phrase.key(start + found[1]) == "of":
        return _the(phrase, start + found[1], Share("some"))
    return None


def _as_measure(phrase: Phrase, at: int) -> Measure:
    quantity = phrase.quantity(at)
    assert quantity is not None
    return Measure(quantity.amount, "") if quantity.kind == "pieces" else measures_of(phrase, quantity)[0]


def _fraction(phrase: Phrase, start: int) -> ShareRead | None:
    """`half`, `a third`, `another quarter`, `two thirds`, `1/3`, of something."""
    another = phrase.key(start) == "another"
    at = start + 1 if another or phrase.key(start) in phrase.tables.articles else start
    number = phrase.quantity(at)
    times = number.amount.lo if number and number.kind == "pieces" and number.amount.single else None
    if times is not None:
        at += 1
    word = phrase.key(at) if phrase.key(at) != "halves" else "half"
    if word == "of" and times is not None and times < 1:
        return _of_what(phrase, at, Share("fraction", times, another=another))
    part = phrase.tables.fractions.get(word) or phrase.tables.fractions.get(word.removesuffix("s"))
    if part is None:
        return None
    share = part if times is None else times * part
    return _of_what(phrase, at + 1, Share("fraction", share, another=another)) if share <= 1 else None


def _of_what(phrase: Phrase, at: int, share: Share) -> ShareRead | None:
    known = _the(phrase, at, share)
    if known:
        return known
    after = at + 1 if phrase.key(at) == "of" else at
    article = phrase.key(after) in phrase.tables.articles
    unit = phrase.kitchen.units.get(phrase.key(after + article)) if phrase.key(after + article).isalpha() else None
    if unit and unit.kind == "time":
        return ShareRead(share, after + article, "time")
    quantity = phrase.quantity(after)
    if quantity and quantity.kind in ("mass", "volume", "pieces") and phrase.key(at) == "of":
        return ShareRead(share, after, "measure")
    return None


def _measure(phrase: Phrase, start: int) -> ShareRead | None:
    """`2 tbsp of the duck fat`, `3 of the sponges`."""
    quantity = phrase.quantity(start) if phrase.key(start + 1) == "of" else None
    if not quantity or quantity.kind not in ("mass", "volume", "pieces"):
        return None
    return _the(phrase, start + 1, Share("measure", measure=_as_measure(phrase, start)))


def _one_measure(phrase: Phrase, start: int) -> ShareRead | None:
    """`a cup of the pasta water`."""
    unit = phrase.kitchen.units.get(phrase.key(start + 1)) if phrase.key(start + 2) == "of" else None
    if unit is None or unit.kind not in ("mass", "volume"):
        return None
    return _the(phrase, start + 2, Share("measure", measure=Measure(exactly(1), unit.id)))
