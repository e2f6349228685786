"""A food that is measured by eye, in a recipe that is scaled.

*A few strips of lemon peel* and *a little nutmeg* hold no number, so nothing multiplies them: beside three times
as much of all the rest they are too few.

Use that many times what the recipe as written takes, and taste; or give the recipe a measure.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import times_text
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.reading.clauses import Ingredient

RULE = "scale-by-eye"
LEVEL: Severity = "warning"
ABOUT = ("view by_eye",)
FACTOR = Fraction(3)
BAD = """\
title: Spiced milk
serves: 2

# Milk

Warm [500 ml whole milk] with [a little nutmeg] [in a saucepan] [until steaming, about 5 min].
"""
GOOD = """\
title: Spiced milk
serves: 2

# Milk

Warm [500 ml whole milk] with [1/4 tsp nutmeg] [in a saucepan] [until steaming, about 5 min].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The foods by eye of a recipe, told once."""
    found = scene.by_eye
    if not found:
        return
    said = ", ".join(dict.fromkeys(_said(food) for food in found))
    message = f"{said}: measured by eye, so not scaled"
    hint = f"use about {times_text(scene.factor)} what the recipe as written takes, and taste"
    labels = tuple(Label(food.clause.span, "and this") for food in found[1:])
    yield Diagnostic(RULE, LEVEL, found[0].clause.span, message, hint, labels)


def _said(food: Ingredient) -> str:
    """The amount and the name, as written."""
    return food.clause.text[: food.name_span.end - food.clause.inner].strip()
