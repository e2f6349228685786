"""A time in the plain words of a line.

The timeline plans the kitchen's estimate instead of the cook's own figure, and a card made from it says otherwise than
the text.

Put it in a bracket: `[knead for 10 min]`, `[stirring every 5 min]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.quantity.units import shipped
from tamis.reading.clauses import Cue, Tending, Time
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "time-outside-brackets"
LEVEL: Severity = "warning"
BAD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl], then knead for 10 minutes.
[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""
GOOD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl], then [knead for 10 minutes].
[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""

_FIGURE = r"\d[\d.,/½¼¾]*"


@cache
def _time(language: str) -> re.Pattern[str]:
    """`for about 10 minutes`."""
    words, small = check_words(language).times, check_words(language).small
    number = rf"(?:{_FIGURE}(?: ?(?:[–-]|{one_of(small.ranges)}) ?{_FIGURE})?|{one_of(small.numbers)})"
    before = rf"{one_of(words.openers)} (?:{one_of(small.hedges)} )*"
    return pattern(rf"\b{before}{number}[ \u00a0-]?{shipped(language).pattern('time')}\b", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """`for` or `every` with a time, in a line that has none in its brackets and whose verbs do not ask for one."""
    time = _time(view.recipe.language)
    for action in view.recipe.actions:
        for part in action.parts:
            found = time.search(part.text) if isinstance(part, Text) else None
            if found and not _has_time(action):
                text = found[0]
                span = Span(found.start(), found.end()).shifted(part.span.start)
                message = f"“{text}” stands outside brackets: the timeline does not see it"
                yield Diagnostic(RULE, LEVEL, span, message, f"write `[{text}]`")


def _has_time(action: Action) -> bool:
    """A line whose verb waits for a time that no bracket gives is told as that."""
    untimed = action.work.wait is None and any(use.verb.waits for use in action.verbs)
    return untimed or any(
        isinstance(read, Time | Tending) or (isinstance(read, Cue) and read.duration is not None)
        for read in action.reads
    )
