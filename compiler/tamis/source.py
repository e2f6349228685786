"""A recipe's text and places in it.

Every later phase points back at the cook's own words, so places are kept as offsets into the decoded text; lines
and columns are worked out only when something is printed.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from itertools import accumulate

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

_LINE_END = pattern(r"\r\n|\n|\r")


class Span(NamedTuple):
    """A stretch of text, as offsets of characters: `start` is in it, `end` is the first that is not."""

    start: int
    end: int

    def shifted(self, by: int) -> Span:
        """The same stretch, seen from a text that begins `by` characters earlier."""
        return Span(self.start + by, self.end + by)


NOWHERE = Span(0, 0)
"""The place of words that are not there."""


class Place(NamedTuple):
    """Where a person finds a character: line and column, both counted from 1."""

    line: int
    column: int


class Source:
    """The text of one recipe file, and the name by which messages call it."""

    __slots__ = ("_starts", "name", "stem", "text")

    def __init__(self, name: str, text: str, stem: str = "") -> None:
        self.name = name
        self.text = text
        self.stem = stem or re.sub(r"\.[^.]*$", "", name.replace("\\", "/").rsplit("/", 1)[-1])
        self._starts: list[int] | None = None

    def slice(self, span: Span) -> str:
        """The words that the span covers."""
        return self.text[span.start : span.end]

    @property
    def starts(self) -> list[int]:
        """The offset at which each line begins; lines end in LF, CR or CR LF."""
        if self._starts is None:
            self._starts = [0, *_line_ends(self.text)]
        return self._starts

    def place(self, offset: int) -> Place:
        """Line and column of an offset."""
        index = bisect_right(self.starts, offset) - 1
        return Place(index + 1, offset - self.starts[index] + 1)


def _line_ends(text: str) -> Iterator[int]:
    """The offset behind each line end."""
    if "\r" in text:
        return (found.end() for found in _LINE_END.finditer(text))
    return accumulate(len(line) + 1 for line in text.split("\n")[:-1])


def decode(data: bytes) -> tuple[str, int | None]:
    """UTF-8 bytes as text, and the offset of the first byte that is not UTF-8 (None if there is none).

    A byte that cannot be read becomes U+FFFD, one character a byte, so that everything around it still compiles.
    """
    try:
        return data.decode("utf-8"), None
    except UnicodeDecodeError:
        text = data.decode("utf-8", "surrogateescape")
        first = next(at for at, char in enumerate(text) if "\udc80" <= char <= "\udcff")
        return re.sub("[\udc80-\udcff]", "\ufffd", text), first
