"""The lines of a recipe, each with its kind for the outline grammar: what a line is shows in its first characters."""

from __future__ import annotations

import re

from tamis.patterns import pattern
from tamis.record import made
from tamis.source import Span
from tamis.syntax.document import AHEAD, Line, RemarkKind
from tamis.typed import TYPE_CHECKING, get_args

if TYPE_CHECKING:
    from collections.abc import Iterator

_LINE = pattern(r".*\n|.+")
# The same where a text has other line ends: to look for either takes ten times as long.
_ANY_LINE = pattern(r"[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+")
_REMARKS = "|".join(get_args(RemarkKind))
_KIND = pattern(
    rf"""
      (?P<BLANK>\s*\Z)
    | (?P<COMMENT>%)
    | (?P<HEADING>\#)
    | (?P<REMARK>(?i:{_REMARKS}):)
    | (?P<AHEAD>(?i:{AHEAD}):)
    | (?P<FIELD>[A-Za-z][A-Za-z_-]*[ \t]*:)
    """,
    re.VERBOSE,
)
_BYTE_ORDER_MARK = "\ufeff"


def lines_of(text: str) -> Iterator[tuple[str, Line]]:
    """The kinds and lines of a text in order, line ends included."""
    at = 0
    if text.startswith(_BYTE_ORDER_MARK):
        yield "BOM", Line("BOM", _BYTE_ORDER_MARK, Span(0, 1))
        at = 1
    match = _KIND.match
    for line in (_ANY_LINE if "\r" in text else _LINE).findall(text, at):
        found = match(line)
        kind = found.lastgroup or "TEXT" if found else "TEXT"
        end = at + len(line)
        yield kind, made(Line, (kind, line, made(Span, (at, end))))
        at = end
