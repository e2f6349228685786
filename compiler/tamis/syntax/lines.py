"""The lines of a recipe as tokens for the outline grammar: what a line is shows in its first characters."""

from __future__ import annotations

import re

from tamis.patterns import pattern
from tamis.syntax.document import AHEAD, RemarkKind
from tamis.syntax.token import Token
from tamis.typed import TYPE_CHECKING, get_args

if TYPE_CHECKING:
    from collections.abc import Iterator

_LINE = pattern(r"[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+")
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


def lines_of(text: str) -> Iterator[Token]:
    """The lines of a text in order, line ends included."""
    at = 0
    if text.startswith(_BYTE_ORDER_MARK):
        yield Token("BOM", _BYTE_ORDER_MARK, 0, 1)
        at = 1
    for line in _LINE.findall(text, at):
        kind = _KIND.match(line)
        end = at + len(line)
        yield Token(kind.lastgroup or "TEXT" if kind else "TEXT", line, at, end)
        at = end
