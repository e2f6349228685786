"""Nothing of a food, or no time at all.

A digit was lost: the food is in the list and goes in nowhere.

Write how much it is, or take the bracket out.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "zero-amount"
LEVEL: Severity = "warning"
BAD = """\
title: Lemon water
serves: 4

# Water

Stir [1 l water] with [0 g caster sugar] [in a jug].
"""
GOOD = """\
title: Lemon water
serves: 4

# Water

Stir [1 l water] with [40 g caster sugar] [in a jug].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Measures and times of nothing."""
    for food in view.ingredients:
        if food.measures and not food.measures[0].amount.hi and not any(more.amount.hi for more in food.measures[1:]):
            message = f"“{food.measure_text.strip()}” is nothing"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, "write how much, or take it out")
    for _, read in view.each(Time):
        if read.duration.hi == 0:
            yield Diagnostic(RULE, LEVEL, read.clause.span, "this time is nothing", "write how long, or take it out")
