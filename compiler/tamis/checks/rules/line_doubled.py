"""The same line twice, one under the other: its foods are taken, weighed and bought twice.

A slip of copying, most likely; twice the salt spoils the dish, and the market list has everything double.

Take one of them out. Where it is done again, say so: `[2 times]`; where the food is shared out, take `[half of …]`.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "line-doubled"
LEVEL: Severity = "warning"
BAD = """\
title: Lemon water
serves: 4

# Water

Put [1 l water] [in a jug].
Stir in [40 g caster sugar] and [10 g fine salt].
Stir in [40 g caster sugar] and [10 g fine salt].
"""
GOOD = """\
title: Lemon water
serves: 4

# Water

Put [1 l water] [in a jug].
Stir in [40 g caster sugar] and [10 g fine salt].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Lines that say what the line before them says, of foods that are measured whole."""
    taken: list[int] | None = None
    before, said_before = Span(0, 0), ""
    for line in _lines(view):
        said = view.source.text[line.start : line.end].strip()
        if said == said_before and taken is None:
            taken = [food.clause.span.start for food in view.ingredients if food.measures and food.share is None]
        if said == said_before and _stands_in(line, taken or []):
            message = "this line says the same as the one before it: its foods go in twice"
            label = Label(before, "the first of them")
            yield Diagnostic(RULE, LEVEL, line, message, "take one of them out, or say that it is done again", (label,))
        before, said_before = line, said


def _stands_in(line: Span, places: list[int]) -> bool:
    """Whether one of these places, which are in order, is in a line."""
    at = bisect_left(places, line.start)
    return at < len(places) and places[at] < line.end


def _lines(view: View) -> Iterator[Span]:
    """The lines of the file in which actions begin, each once."""
    text, end = view.source.text, -1
    for action in view.recipe.actions:
        if action.span.start >= end:
            start = text.rfind("\n", 0, action.span.start) + 1
            at = text.find("\n", action.span.start)
            end = len(text) if at < 0 else at
            yield Span(start, end)
