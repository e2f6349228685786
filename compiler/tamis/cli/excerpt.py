"""The line of a finding, with the words at fault underlined.

A terminal shows columns, a source counts characters: a tab is several columns, a Chinese character two,
a combining accent none, and a line may be a megabyte long. So only a window around the fault is looked
at, and the underline is measured in the columns that the window takes.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.source import Source, Span

WINDOW = 96
"""Characters of a long line that are shown; a third of them before the fault."""
_TAB = "    "


class Excerpt(NamedTuple):
    """A line fit for a terminal: where its marks begin and how many columns they take."""

    line: int
    text: str
    start: int
    width: int


def excerpt(source: Source, span: Span) -> Excerpt:
    """The first line of a span, cut to a window if it is long."""
    line, column = source.place(span.start)
    first = source.starts[line - 1]
    end = source.starts[line] if line < len(source.starts) else len(source.text)
    lo, hi = first, end
    if end - first > WINDOW:
        lo = max(first, min(span.start - WINDOW // 3, end - WINDOW))
        hi = min(end, lo + WINDOW)
    shown = source.text[lo:hi].rstrip("\r\n")
    at = min(first + column - 1 - lo, len(shown))
    marked = max(at, min(span.end - lo, len(shown)))
    head = "…" if lo > first else ""
    tail = "…" if hi < end else ""
    before, fault, after = (_printable(part) for part in (shown[:at], shown[at:marked], shown[marked:]))
    text = head + before + fault + after + tail
    return Excerpt(line, text, columns(head + before), max(1, columns(fault)))


_FIRST_COMBINING = "\u0300"
"""All signs before it take one column: Latin letters with their accents, fractions, the degree sign."""
_MARKS = "…–—−“”‘’"


def columns(text: str) -> int:
    """How many columns of a terminal a text takes."""
    if all([char < _FIRST_COMBINING or char in _MARKS for char in text]):
        return len(text)
    from unicodedata import combining, east_asian_width

    return sum(0 if combining(char) else 2 if east_asian_width(char) in ("W", "F") else 1 for char in text)


def _printable(text: str) -> str:
    """Text without what would move a cursor: tabs as spaces, no byte-order mark, other controls replaced."""
    text = text.replace("\t", _TAB).replace("\ufeff", "")
    if text.isprintable():
        return text
    return "".join(char if char.isprintable() else "\ufffd" for char in text)
