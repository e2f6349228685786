"""A pan or a bowl in the plain words of a line.

It stands in the equipment list, but the food is not counted as being in that vessel.

Put it in a bracket: `[in a large bowl]`, `[into a wide pan]`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import takewhile

from tamis.checks.words import check_words, word_set
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.plain import phrases
from tamis.reading.plain_tools import placed_tools
from tamis.reading.prose import STOPS, prose_words
from tamis.typed import TYPE_CHECKING
from tamis.words import word_lists

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.plain import Phrases, Plain
    from tamis.reading.plain_tools import Placed

RULE = "vessel-outside-brackets"
LEVEL: Severity = "information"
ABOUT = ("said vessels.enters",)
BAD = """\
title: Sweet cream
serves: 4

# Cream

Whip [300 ml double cream] and [20 g caster sugar] in a large bowl [until thick].
"""
GOOD = """\
title: Sweet cream
serves: 4

# Cream

Whip [300 ml double cream] and [20 g caster sugar] [in a large bowl] [until thick].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """`in a` or `into a` with a vessel; *the* pan was named before, in a bowl of ice something else stands, and what
    is served in a bowl goes nowhere from there."""
    enters = check_words(view.recipe.language).vessels.enters
    for words in view.saying(word_set(view.recipe.language, "vessels.enters")):
        served = any(use.verb.serves for use in words.action.verbs)
        for placed in words.plain.ask(placed_tools) if not served and words.plain.ask(_may_enter) else ():
            item = placed.tool.equipment
            entered = placed.indefinite and placed.tool.preposition in enters
            kept = item.kind == "vessel" and not (item.count_unit or placed.tool.contains)
            if entered and kept and not _is_other_way(words.plain, placed):
                span = placed.span.shifted(words.start)
                said = view.source.slice(span)
                message = f"“{said}” stands outside brackets: the food is not counted as being there"
                yield Diagnostic(RULE, LEVEL, span, message, f"write `[{said}]`")


def _is_other_way(plain: Plain, placed: Placed) -> bool:
    """*Pour it over, or hand it in a bowl*: whether what puts it there is done instead of what stands before; but *by
    hand or in a bowl*."""
    other = prose_words(plain.kitchen.language).or_else
    at = next((at for at, start in enumerate(plain.starts) if start >= placed.span.start), 0)
    between = list(takewhile(lambda word: word not in STOPS, reversed(plain.said[:at])))
    return not other.isdisjoint(between[1:])


@cache
def _begins(language: str) -> tuple[Phrases, frozenset[str]]:
    """What leads into a vessel, and the words that may follow it."""
    closed = word_lists(language, "clause")["closed"]
    articles = phrases((*closed["ARTICLE"], *closed["ANOTHER"]), language)
    return phrases(check_words(language).vessels.enters, language), frozenset(articles)


def _may_enter(plain: Plain) -> bool:
    """Whether *in a* stands in some words: to look for a vessel takes longer."""
    (enters, articles), said = _begins(plain.kitchen.language), plain.said
    sizes = [(at, plain.phrase(enters, at)) for at in range(len(said) - 2)]
    return any([size and not articles.isdisjoint(said[at + size : at + size + 1]) for at, size in sizes])
