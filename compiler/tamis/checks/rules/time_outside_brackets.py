"""A time in the plain words of a line.

The timeline uses tamis's estimate instead of the cook's own time, and then disagrees with the text.

Put it in a bracket: `[knead for 10 min]`, `[stirring every 5 min]`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Cue, Tending, Time
from tamis.reading.plain import phrases
from tamis.reading.plain_amounts import amount_opener
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import Stretch, View
    from tamis.model.recipe import Action
    from tamis.reading.plain import Phrases

RULE = "time-outside-brackets"
LEVEL: Severity = "warning"
ABOUT = ("view amounts",)
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


@cache
def _openers(language: str) -> Phrases:
    return phrases(check_words(language).times.openers, language)


def check(view: View) -> Iterator[Diagnostic]:
    """`for` or `every` with a time, in a line that has none in its brackets and whose verbs do not ask for one."""
    told: Stretch | None = None
    for words, time in view.amounts:
        if time.kind != "time" or words is told:
            continue
        opener = amount_opener(words.plain, time, _openers(view.recipe.language))
        if opener is not None and not _has_time(words.action):
            told = words
            text = words.plain.slice(opener, time.end)
            message = f"“{text}” stands outside brackets: the timeline leaves it out"
            yield Diagnostic(RULE, LEVEL, words.span(opener, time.end), message, f"write `[{text}]`")


def _has_time(action: Action) -> bool:
    """A line whose verb waits for a time that no bracket gives is told as that."""
    untimed = action.work.wait is None and any(use.verb.waits for use in action.verbs)
    return untimed or any(
        isinstance(read, Time | Tending) or (isinstance(read, Cue) and read.duration is not None)
        for read in action.reads
    )
