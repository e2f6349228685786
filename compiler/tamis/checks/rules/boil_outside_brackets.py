"""*To the boil* in plain words, in a line that is timed for something else.

The plan takes the line's own time for all of it, though two litres need a quarter of an hour to come to the boil.

Write it as a clause: `bring [to the boil] and [simmer for 20 min]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "boil-outside-brackets"
LEVEL: Severity = "information"
BAD = """\
title: Barley broth
serves: 4

# Broth

Put [200 g pearl barley] and [2 l water] [into a large pot].
Bring to the boil and [simmer for 35–40 min] [until tender].
"""
GOOD = """\
title: Barley broth
serves: 4

# Broth

Put [200 g pearl barley] and [2 l water] [into a large pot].
Bring [to the boil] and [simmer for 35–40 min] [until tender].
"""


@cache
def _to_the_boil(language: str) -> re.Pattern[str]:
    words, to = check_words(language).boil, one_of(check_words(language).small.toward)
    return pattern(rf"\b{to} {one_of(nouns(language).articles)} (?:\w+ )?{one_of(words.states)}\b")


def check(view: View) -> Iterator[Diagnostic]:
    """The words after a verb that waits, in a line with a time; without one the line is told as untimed."""
    to_the_boil = _to_the_boil(view.recipe.language)
    for action in view.recipe.actions:
        if action.work.given != "text":
            continue
        for part in action.parts:
            found = to_the_boil.search(part.text) if isinstance(part, Text) else None
            if found and any(
                use.verb.waits and part.span.start <= use.span.start < part.span.end for use in action.verbs
            ):
                span = Span(found.start(), found.end()).shifted(part.span.start)
                message = f"“{found[0]}” stands outside brackets: the timeline does not see how long that takes"
                yield Diagnostic(RULE, LEVEL, span, message, f"write `[{found[0]}]`")
