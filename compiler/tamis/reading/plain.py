"""Equipment that plain words name: *tip into the pot*, *on a baking tray lined with paper*.

The words are found by the same cutting and the same classes as in clauses. What they name is set out like what stands
in brackets; where the food lies is told by clauses alone.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.number import parse as parse_number
from tamis.reading.clause_reader import parser_of
from tamis.reading.clauses import Tool
from tamis.reading.prose import prose_words
from tamis.reading.vocabulary import Choices
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.cutting import NUMBER_WORD, ONE
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.reading.vocabulary import Vocabulary
    from tamis.syntax.cutting import NUMBER_WORD, ONE, Cut
from tamis.syntax.document import Text

_PLACES = frozenset(("PREP", "INTO", "ONHEAT", "TO"))
_ARTICLES = frozenset(("ARTICLE", "THE"))
_DEFINITE = frozenset(("THE",))
_TOOLS = frozenset(("TOOL", "COUNTTOOL"))
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
    if " " not in part.text.strip():  # most of what stands between two clauses
        return
    vocabulary = parser_of(kitchen).vocabulary
    cut = vocabulary.cutter.cut(part.text)
    asked, of = prose_words(kitchen.language), frozenset(word_lists(kitchen.language, "clause")["closed"]["OF"])
    at, end = 0, len(cut.words)
    while at < end:
        taken = _taken(vocabulary, cut, at, _PLACES)
        if not taken or cut.words[at] in asked.without:
            at += 1
            continue
        start, at = at, at + taken
        first = at + _taken(vocabulary, cut, at, _ARTICLES)
        number = _number(cut, first, kitchen.language)
        last = _end_of_tool(vocabulary, cut, first + bool(number))
        if last is not None and not (last < end and cut.words[last] in of):
            definite = bool(_taken(vocabulary, cut, at, _DEFINITE))
            tool = _tool(cut, part, first + bool(number), last, kitchen)
            if tool is not None and (first > at or number or tool[1]):
                said = part.text[cut.starts[start] : cut.ends[at - 1]].lower()
                placed = tool[0]._replace(number=number or Fraction(1), definite=definite, preposition=said)
                span = Span(cut.starts[start], cut.ends[last - 1]).shifted(part.span.start)
                yield Placed(placed, span, first > at and not definite)
            at = last


def _tool(cut: Cut, part: Text, first: int, last: int, kitchen: Kitchen) -> tuple[Tool, bool] | None:
    """The piece that these words name, and whether it needs no article: several, or foil."""
    found = kitchen.cupboard.find([word for word in cut.words[first:last] if word])
    if found is None:
        return None
    start, stop = cut.starts[first], cut.ends[last - 1]
    clause = Clause(part.text[start:stop], Span(start, stop).shifted(part.span.start), kitchen.language)
    bare = found.several or found.item.kind == "lining"
    return Tool(clause, clause.text, found.item, found.adjectives), bare


def _number(cut: Cut, at: int, language: str) -> Fraction | None:
    """How many of them: *on two trays*."""
    if at < len(cut.words) and cut.fixed[at] in (NUMBER_WORD, ONE["NUMBER"]):
        return parse_number(cut.text[cut.starts[at] : cut.ends[at]].strip(), language)
    return None


def _taken(vocabulary: Vocabulary, cut: Cut, at: int, kinds: frozenset[str]) -> int:
    """How many words at a place are of one of these classes; 0 for none."""
    if at < len(cut.words) and cut.fixed[at] is None:
        for kind, size in vocabulary.choice(cut.words, at).ways:
            if kind in kinds:
                return size
    return 0


def _end_of_tool(vocabulary: Vocabulary, cut: Cut, first: int) -> int | None:
    """Where a row of open words ends that names a tool with its last words."""
    end, at, choices, comma = None, first, Choices(cut, vocabulary), False
    while at < min(len(cut.words), first + _MOST_WORDS):
        ways = choices.at(at).ways
        size = next((size for kind, size in ways if kind in _TOOLS), 0)
        if size and comma:
            break  # *into a flat square, wrap*: adjectives are parted by a comma, not the noun from them
        if size:
            at += size
            end = at
        elif end is not None or not any(kind in ("WORD", "ADJCOMMA") for kind, _ in ways):
            break
        else:
            at, comma = at + 1, any(kind == "ADJCOMMA" for kind, _ in ways)
    return end
