"""An egg is cooked, but nothing says until white and yolk are firm.

Most people may choose a soft yolk; young children, older adults, pregnant women and anyone with a weakened immune
system should not (US FDA).

Nothing needs to be done. A firm egg says so: `[until white and yolk are firm]`, or `[boil for 9 min]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "soft-egg"
LEVEL: Severity = "information"
ABOUT = ("view safety.open",)
BAD = """\
title: Fried eggs
serves: 2

# Eggs

Fry [4 eggs] [in 20 g butter] [in a frying pan] [for 2–3 min] [until the edges are crisp].
"""
GOOD = """\
title: Fried eggs
serves: 2

# Eggs

Fry [4 eggs] [in 20 g butter] [in a frying pan] [for 4–5 min] [until yolk and white are firm].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each whole egg that was heated and not cleared."""
    safety = view.safety
    for item in safety.open if not safety.served else ():
        if item.hazard == "egg" and item.form == "whole" and item.heated:
            message = "the egg may stay soft; the page says for whom pasteurised eggs are the better choice"
            hint = f"for a firm egg, write {example(view.recipe.language, 'until_firm')}, or 71 °C (160 °F) inside"
            yield Diagnostic(RULE, LEVEL, item.span, message, hint)
