"""A line with a time, whose verb is not known, or that has none.

All of that time is planned as hands-on work: nothing else can be done beside it, even if the food is left alone.

Use a verb that the reference lists (`[leave for 2 h]`), or mark the time: `[for 2 h, unattended]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Time
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.checks.view import Stretch, View
    from tamis.model.recipe import Action
    from tamis.source import Span

RULE = "work-unknown"
LEVEL: Severity = "warning"
ABOUT = ("time",)
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
    """The word in the place of the last command before a time, if it is no known verb."""
    before: Action | None = None
    for action, time in view.each(Time):
        first, before = action is not before, action
        # A time that tells neither its work nor whether hands are free.
        if not first or time.verb is not None or time.hands is not None or action.continues:
            continue
        span = _unknown(view.plain_in(action), action, time)
        if span is not None:
            yield _said(view, span)
        elif not action.verbs and action.work.hands:
            message = "this time has no verb: it is planned as hands-on work"
            alone = example(view.recipe.language, "unattended")
            yield Diagnostic(RULE, LEVEL, time.clause.span, message, f"give it a verb, or mark the time: {alone}")


def _unknown(stretches: Iterable[Stretch], action: Action, time: Time) -> Span | None:
    """Where such a word stands; behind a verb only where it can be nothing else."""
    before = [use.span.end for use in action.verbs if use.span.start < time.clause.span.start]
    for words in stretches:
        if words.start < time.clause.span.start:
            from tamis.reading.unknown_work import unknown_work

            for unknown in words.plain.ask(unknown_work):
                span = words.span(unknown.first, unknown.first + 1)
                if not before or (unknown.sure and span.start >= before[-1]):
                    return span
    return None


def _said(view: View, span: Span) -> Diagnostic:
    word = view.source.slice(span)
    near = view.kitchen.verbs.near(word.lower())
    alone = example(view.recipe.language, "unattended")
    hint = f"did you mean `{near}`?" if near else f"use a known verb, or mark the time: {alone}"
    return Diagnostic(RULE, LEVEL, span, f"“{word}” is not a known verb: the time is planned as hands-on work", hint)
