"""Equipment that plain words name: *tip into the pot*, *on a baking tray lined with paper*.

The words are found by the same cutting and the same classes as in clauses. What they name is set out like what stands
in brackets; where the food lies is told by clauses alone.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.number import parse as parse_number
from tamis.reading.clauses import Tool
from tamis.reading.plain import plain_of
from tamis.reading.prose import prose_words
from tamis.reading.vocabulary import Choices
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.cutting import COMMA, NUMBER_WORD, ONE
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.reading.plain import Plain
    from tamis.syntax.document import Text

_PLACES = frozenset(("PREP", "INTO", "ONHEAT", "TO"))
_ARTICLES = frozenset(("ARTICLE", "THE"))
_DEFINITE = frozenset(("THE",))
_TOOLS = frozenset(("TOOL", "COUNTTOOL"))
_OPEN = frozenset(("WORD",))
# Adjectives before the noun: *a large deep baking tray*.
_MOST_WORDS = 6


class Placed(NamedTuple):
    """A piece of equipment in plain words; the span begins at its preposition. `indefinite`: with an article that makes
    it another piece than those before."""

    tool: Tool
    span: Span
    indefinite: bool


def tools_in(part: Text, kitchen: Kitchen) -> Iterator[Placed]:
    """The equipment after each preposition; a bowl *of* ice is told by what it holds, and is none of these."""
    for placed in plain_of(part.text, kitchen).ask(placed_tools):
        clause, offset = placed.tool.clause, part.span.start
        tool = placed.tool._replace(clause=clause._replace(span=clause.span.shifted(offset)))
        yield placed._replace(tool=tool, span=placed.span.shifted(offset))


def placed_tools(plain: Plain) -> tuple[Placed, ...]:
    """The equipment of a stretch, in order."""
    return tuple(_placed(plain)) if len(plain) > 1 else ()


def _placed(plain: Plain) -> Iterator[Placed]:
    asked = prose_words(plain.kitchen.language)
    at, end = 0, len(plain)
    while at < end:
        taken = plain.is_a(at, _PLACES)
        if not taken or plain.words[at] in asked.without:
            at += 1
            continue
        start, at = at, at + taken
        first = at + plain.is_a(at, _ARTICLES)
        number = _number(plain, first)
        last = _end_of_tool(plain, first + bool(number))
        if last is not None and not (last < end and plain.words[last] in asked.of):
            definite = bool(plain.is_a(at, _DEFINITE))
            tool = _tool(plain, first + bool(number), last)
            if tool is not None and (first > at or number or tool[1]):
                said = plain.slice(start, at).lower()
                placed = tool[0]._replace(number=number or Fraction(1), definite=definite, preposition=said)
                span = Span(plain.starts[start], plain.ends[last - 1])
                yield Placed(placed, span, first > at and not definite)
            at = last


def _tool(plain: Plain, first: int, last: int) -> tuple[Tool, bool] | None:
    """The piece that these words name, and whether it needs no article: several, or foil."""
    found = plain.kitchen.cupboard.find([word for word in plain.words[first:last] if word])
    if found is None:
        return None
    span = Span(plain.starts[first], plain.ends[last - 1])
    clause = Clause(plain.slice(first, last), span, plain.kitchen.language)
    bare = found.several or found.item.kind == "lining"
    return Tool(clause, clause.text, found.item, found.adjectives), bare


def _number(plain: Plain, at: int) -> Fraction | None:
    """How many of them: *on two trays*."""
    if at < len(plain) and plain.fixed[at] in (NUMBER_WORD, ONE["NUMBER"]):
        return parse_number(plain.slice(at, at + 1).strip(), plain.kitchen.language)
    return None


def _end_of_tool(plain: Plain, first: int) -> int | None:
    """Where a row of open words ends that names a tool with its last words."""
    end, at, comma = None, first, False
    while at < min(len(plain), first + _MOST_WORDS):
        size = plain.is_a(at, _TOOLS)
        if size and comma:
            break  # *into a flat square, wrap*: adjectives are parted by a comma, not the noun from them
        if size:
            at += size
            end = at
        elif end is not None or not (plain.is_a(at, _OPEN) or _is_between_adjectives(plain, at)):
            break
        else:
            at, comma = at + 1, plain.fixed[at] is COMMA
    return end


def _is_between_adjectives(plain: Plain, at: int) -> bool:
    """Whether a token is the comma of *a wide, shallow pan*."""
    return plain.fixed[at] is COMMA and Choices(plain.cut, plain.vocabulary).at(at) is not COMMA
