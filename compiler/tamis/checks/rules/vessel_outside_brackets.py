"""A pan or a bowl in the plain words of a line.

It stands in the equipment list, but nothing tells that the food now lies in another vessel.

Put it in a bracket: `[in a large bowl]`, `[into a wide pan]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import Words, check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "vessel-outside-brackets"
LEVEL: Severity = "information"
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


@cache
def _placed(language: str) -> re.Pattern[str]:
    """`in a` or `into a`, and the words that may name a vessel."""
    into, articles = one_of(check_words(language).vessels.enters), one_of(nouns(language).indefinite)
    named = r"((?:[^\W\d_][\w-]* ){0,3}[^\W\d_][\w-]*)"
    return pattern(rf"\b{into} {articles} {named}", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """`in a` or `into a` with a vessel; *the* pan was named before, and a bowl of ice is told by its *of*."""
    placed, of = _placed(view.recipe.language), check_words(view.recipe.language).small.between
    for action in view.recipe.actions:
        for part in action.parts:
            for found in placed.finditer(part.text) if isinstance(part, Text) else ():
                length = _vessel(view, found[1].split(), of)
                rest = part.text[found.start(1) :].split()[length : length + 1]
                if length and not (rest and rest[0] in of):
                    words = " ".join((found[0][: found.start(1) - found.start()].rstrip(), *found[1].split()[:length]))
                    span = Span(found.start(), found.start() + len(words)).shifted(part.span.start)
                    message = f"“{words}” stands outside brackets: nothing tells that the food lies there now"
                    yield Diagnostic(RULE, LEVEL, span, message, f"write `[{words}]`")


def _vessel(view: View, words: list[str], of: Words) -> int:
    """How many of the words name a vessel; 0 if none do, or if it holds something."""
    words = words[: next((at for at, word in enumerate(words) if word in of), len(words))]
    for end in range(len(words), 0, -1):
        found = view.kitchen.cupboard.find(words[:end])
        if found is not None:
            return end if found.item.kind == "vessel" and not found.item.count_unit else 0
    return 0
