"""The lines of a recipe, each with its kind for the outline grammar: what a line is shows in its first characters."""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.record import made
from tamis.source import Span
from tamis.syntax.document import AHEAD, Line, RemarkKind
from tamis.typed import TYPE_CHECKING, get_args

if TYPE_CHECKING:
    from collections.abc import Iterator

# The lines of a text that has other line ends, too.
_ANY_LINE = pattern(r"[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+")
_SIGNS = {"%": "COMMENT", "#": "HEADING"}
_NAMES = {**dict.fromkeys([remark.lower() for remark in get_args(RemarkKind)], "REMARK"), AHEAD.lower(): "AHEAD"}
_BYTE_ORDER_MARK = "\ufeff"


def lines_of(text: str) -> Iterator[tuple[str, Line]]:
    """The kinds and lines of a text in order, line ends included."""
    at = 0
    if text.startswith(_BYTE_ORDER_MARK):
        yield "BOM", Line("BOM", _BYTE_ORDER_MARK, Span(0, 1))
        at = 1
    for line in _ANY_LINE.findall(text, at) if "\r" in text else _split(text[at:]):
        kind = _SIGNS.get(line[0]) or _named(line) or "TEXT"
        end = at + len(line)
        yield kind, made(Line, (kind, line, made(Span, (at, end))))
        at = end


def _split(text: str) -> list[str]:
    """The lines of a text without carriage returns, each with its end."""
    *lines, last = text.split("\n")
    return [f"{line}\n" for line in lines] + [last] * bool(last)


def _named(line: str) -> str:
    """The kind of a line that tells it by a word and a colon, or has nothing in it; "" for plain text."""
    word, colon, _ = line.partition(":")
    if not colon:
        return "BLANK" if line.isspace() else ""
    name = word.rstrip(" \t")
    plain = name.isascii() and name[:1].isalpha() and name.replace("-", "").replace("_", "").isalpha()
    return _NAMES.get(word.lower(), "FIELD") if plain else ""
