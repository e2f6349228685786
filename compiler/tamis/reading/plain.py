"""Equipment that plain words name: *tip into the pot*, *on a baking tray lined with paper*.

The words are found by the same cutting and the same classes as in clauses. What they name is set out like what stands
in brackets; where the food lies is told by clauses alone.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.quantity.number import parse as parse_number
from tamis.reading.clause_reader import parser_of
from tamis.reading.clauses import Tool
from tamis.reading.prose import prose_words
from tamis.reading.vocabulary import Choices
from tamis.source import Span
from tamis.syntax.cutting import NUMBER_WORD, ONE
from tamis.syntax.document import Clause
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.reading.vocabulary import Vocabulary
    from tamis.syntax.cutting import NUMBER_WORD, ONE, Cut
from tamis.syntax.document import Text

_PLACES = frozenset(("PREP", "INTO", "ONHEAT", "TO"))
_ARTICLES = frozenset(("ARTICLE", "THE"))
_TOOLS = frozenset(("TOOL", "COUNTTOOL"))
# Adjectives before the noun: *a large deep baking tray*.
_MOST_WORDS = 6


def tools_in(part: Text, kitchen: Kitchen) -> Iterator[Tool]:
    """The equipment after each preposition; a bowl *of* ice is told by what it holds, and is none of these."""
    vocabulary = parser_of(kitchen).vocabulary
    cut = vocabulary.cutter.cut(part.text)
    asked, of = prose_words(kitchen.language), frozenset(word_lists(kitchen.language, "clause")["closed"]["OF"])
    at, end = 0, len(cut.words)
    while at < end:
        taken = _taken(vocabulary, cut, at, _PLACES)
        if not taken or cut.words[at] in asked.without:
            at += 1
            continue
        at += taken
        article = _taken(vocabulary, cut, at, _ARTICLES)
        definite = bool(_taken(vocabulary, cut, at, frozenset(("THE",))))
        number = _number(cut, at + article, kitchen.language)
        first = at + article + bool(number)
        last = _end_of_tool(vocabulary, cut, first)
        if last is not None and not (last < end and cut.words[last] in of):
            found = kitchen.cupboard.find([word for word in cut.words[first:last] if word])
            if found is not None and (article or number or found.several or found.item.kind == "lining"):
                start, stop = cut.starts[first], cut.ends[last - 1]
                clause = Clause(part.text[start:stop], Span(start, stop).shifted(part.span.start))
                yield Tool(clause, clause.text, found.item, found.adjectives, number or Fraction(1), definite=definite)
            at = last


def _number(cut: Cut, at: int, language: str) -> Fraction | None:
    """How many of them: *on two trays*."""
    if at < len(cut.words) and cut.fixed[at] in (NUMBER_WORD, ONE["NUMBER"]):
        return parse_number(cut.text[cut.starts[at] : cut.ends[at]].strip(), language)
    return None


def _taken(vocabulary: Vocabulary, cut: Cut, at: int, kinds: frozenset[str]) -> int:
    """How many words at a place are of one of these classes; 0 for none."""
    if at >= len(cut.words) or cut.fixed[at] is not None:
        return 0
    return next((size for kind, size in vocabulary.choice(cut.words, at).ways if kind in kinds), 0)


def _end_of_tool(vocabulary: Vocabulary, cut: Cut, first: int) -> int | None:
    """Where a row of open words ends that names a tool with its last words."""
    end, at, choices = None, first, Choices(cut, vocabulary)
    while at < min(len(cut.words), first + _MOST_WORDS):
        ways = choices.at(at).ways
        size = next((size for kind, size in ways if kind in _TOOLS), 0)
        if size:
            at += size
            end = at
        elif end is not None or not any(kind in ("WORD", "ADJCOMMA") for kind, _ in ways):
            break
        else:
            at += 1
    return end
