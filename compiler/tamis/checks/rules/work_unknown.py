"""A line with a time, whose word for the work is not known.

The plan takes all of that time for work by hand: what is left to itself is then done by nobody else, and nothing runs
beside it.

Say it by a word that the reference lists (`[leave for 2 h]`), or mark the time: `[for 2 h, unattended]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Time
from tamis.reading.plain import plain_of
from tamis.reading.prose import first_word
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "work-unknown"
LEVEL: Severity = "warning"
BAD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl].
Faff with it [for 2 h].
[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""
GOOD = """\
title: Flat loaves
serves: 4

# Dough

Mix [500 g bread flour] and [320 g water] [in a bowl].
Leave it [for 2 h].
[Bake for 40 min] [at 220 °C] [in the oven] [until brown].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """The first word of a line with a time and no verb, where it stands as a command."""
    for action in view.recipe.actions:
        first = action.parts[0] if action.parts else None
        if action.verbs or action.continues or not isinstance(first, Text) or not _timed_alone(action):
            continue
        found = plain_of(first.text, view.kitchen).ask(first_word)
        if found is not None:
            found = found.shifted(first.span.start)
            word = view.source.slice(found)
            near = view.kitchen.verbs.near(word.lower())
            alone = example(view.recipe.language, "unattended")
            hint = f"did you mean `{near}`?" if near else f"say it by a word that is known, or mark the time: {alone}"
            message = f"no work is called “{word}”: the time is planned as work by hand"
            yield Diagnostic(RULE, LEVEL, found, message, hint)


def _timed_alone(action: Action) -> bool:
    """A time that tells neither its work nor whether hands are free."""
    return any(isinstance(read, Time) and read.verb is None and read.hands is None for read in action.reads)
