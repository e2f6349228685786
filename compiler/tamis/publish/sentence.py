"""One line of the method as it is printed.

The cook's sentence stays; what a bracket held is marked, so that an eye that comes back from the pan finds the measure,
the time and the cue. What follows an ingredient's first comma belongs to the table. A temperature gets its twin in the
other scale, and a part of a measure (*half of 300 g*) the amount it comes to.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from html import escape
from typing import NamedTuple

from tamis.publish.degrees import twin
from tamis.publish.iso import iso_duration, least
from tamis.quantity.duration import Duration
from tamis.reading.clauses import Cue, Ingredient, Read, Tending
from tamis.source import Span
from tamis.syntax.document import Clause, Part
from tamis.syntax.items import Quantity

_SPACE = re.compile(r"\s+")
_LIST_MARK = re.compile(r"(?:\d{1,3}[.)]|[-*•])[ \t]+(?=\S)")


class Piece(NamedTuple):
    """A stretch of the sentence: plain words, or a "measure", a "time" (with its length), a "cue"."""

    text: str
    kind: str = ""
    length: Duration | None = None


def pieces_of(
    parts: Iterable[Part], reads: Iterable[Read], comes_to: Mapping[Span, str], oven: bool = False
) -> list[Piece]:
    """The pieces of an action. `comes_to` gives the amounts of parts of a measure, by clause; `oven`: it heats one."""
    understood = {read.clause.span: read for read in reads}
    pieces: list[Piece] = []
    for part in parts:
        if isinstance(part, Clause):
            read = understood.get(part.span)
            pieces += _clause(part, read, oven)
            if part.span in comes_to:
                pieces.append(Piece(f" ({comes_to[part.span]})", "measure"))
        else:
            text = part.text if pieces else _LIST_MARK.sub("", part.text, count=1)
            pieces.append(Piece(_plain(text)))
    return pieces


def plain_text(pieces: Iterable[Piece]) -> str:
    """The sentence without marks."""
    return "".join(piece.text for piece in pieces)


def as_html(pieces: Iterable[Piece]) -> str:
    """The sentence as HTML."""
    return "".join(_html(piece) for piece in pieces)


def _html(piece: Piece) -> str:
    text = escape(piece.text, quote=False)
    if piece.kind == "measure":
        return f'<b class="measure">{text}</b>'
    if piece.kind == "time" and piece.length is not None:
        return f'<time datetime="{iso_duration(least(piece.length))}">{text}</time>'
    return f'<span class="cue">{text}</span>' if piece.kind == "cue" else text


def _plain(text: str) -> str:
    return _SPACE.sub(" ", text.replace("\\[", "[").replace("\\]", "]"))


def _clause(clause: Clause, read: Read | None, oven: bool) -> Iterator[Piece]:
    """The pieces of a clause; one that was not understood stays as written."""
    if read is None:
        yield Piece(_plain(clause.text))
    elif isinstance(read, Ingredient):
        yield from _ingredient(clause, read, oven)
    else:
        yield from _timed(clause, read, oven)


def _ingredient(clause: Clause, read: Ingredient, oven: bool) -> Iterator[Piece]:
    """Measure and name; the words up to the comma."""
    text = clause.text[: _first_comma(clause, read)]
    measure = read.measure_text.removesuffix(" of") if read.measured else ""
    at = text.find(measure) if measure else -1
    if at < 0:
        yield Piece(_plain(text))
        return
    end = at + len(measure)
    yield Piece(_plain(text[:at]))
    yield Piece(_plain(measure), "measure")
    degrees = twin(clause, oven) if read.at else None
    if degrees and end <= degrees.at <= len(text):
        text = f"{text[: degrees.at]} ({degrees.text}){text[degrees.at :]}"
    yield Piece(_plain(text[end:]))


def _first_comma(clause: Clause, read: Ingredient) -> int:
    """Where the table's part begins: the first comma after the name, round brackets passed over."""
    named = read.name_span.start - clause.inner
    commas = (i.span.start for i, key in zip(clause.items.items, clause.items.keys, strict=True) if key == ",")
    return next((at for at in commas if at > named), len(clause.text))


def _timed(clause: Clause, read: Read, oven: bool) -> Iterator[Piece]:
    """Words with the lengths of time in them marked; around them a cue is a cue."""
    kind = "cue" if isinstance(read, Cue) else ""
    text, length = clause.text, _length(read)
    start, end = _stretch(clause) if length else (len(text), len(text))
    degrees = twin(clause, oven) if "°" in text else None
    before, after = text[:start], text[end:]
    if degrees and degrees.at <= start:
        before = f"{text[: degrees.at]} ({degrees.text}){text[degrees.at : start]}"
    elif degrees and degrees.at >= end:
        after = f"{text[end : degrees.at]} ({degrees.text}){text[degrees.at :]}"
    yield Piece(_plain(before), kind if before.strip() else "")
    if start < end:
        yield Piece(_plain(text[start:end]), "time", length)
    if after:
        yield Piece(_plain(after), kind)


def _length(read: Read) -> Duration | None:
    return read.every if isinstance(read, Tending) else getattr(read, "duration", None)


def _stretch(clause: Clause) -> tuple[int, int]:
    """From the first to the last length of time in a clause: `8 h, up to 16 h`, `overnight`."""
    spans = [
        item.span
        for item, key in zip(clause.items.items, clause.items.keys, strict=True)
        if key == "overnight" or (isinstance(item, Quantity) and item.kind == "time")
    ]
    return (spans[0].start, spans[-1].end) if spans else (len(clause.text), len(clause.text))
