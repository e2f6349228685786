"""Food goes into an oven of which no temperature was said.

The same dish is raw at 120 °C and burnt at 250 °C after the same time; a stranger cannot guess.

Heat it before it is needed: `heat [the oven] [to 180 °C]`, or say it where it bakes: `[bake for 20 min
at 180 °C]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Target
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "oven-without-temperature"
LEVEL: Severity = "error"
ABOUT = ("oven",)
BAD = """\
title: Baked apples
serves: 4

# Apples

Set [4 apples] [in a baking dish].
[Bake for 35–40 min] [until soft].
"""
GOOD = """\
title: Baked apples
serves: 4

# Apples

Heat [the oven] [to 180 °C].
Set [4 apples] [in a baking dish].
[Bake for 35–40 min] [until soft].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """The first action in the oven that has no temperature before it or in it."""
    for here in view.recipe.places.lines:
        if here.station != "oven":
            continue
        if here.celsius is not None:
            return
        action = view.recipe.actions[here.action]
        if _in_words(view, action):
            return  # that is told where it stands
        if here.heats != "station":
            heat = example(view.recipe.language, "heat_oven")
            message = f"the oven temperature is not given here or earlier{_of_the_food(action)}"
            yield Diagnostic(RULE, LEVEL, _place(action), message, f"heat it first: {heat}")
            return


def _in_words(view: View, last: Action) -> bool:
    """Whether degrees stand in the plain words of a line up to this one."""
    return any(
        amount.kind == "degrees" and words.action.span.start <= last.span.start for words, amount in view.amounts
    )


def _of_the_food(action: Action) -> str:
    said = next((read.text for read in action.reads if isinstance(read, Target) and read.celsius), "")
    return f" (“{said}” is read as the food's temperature)" if said else ""


def _place(action: Action) -> Span:
    """The words that send it into the oven: the verb, else its time, else the whole line."""
    return next((use.span for use in action.verbs if use.verb.station == "oven"), action.time_span)
