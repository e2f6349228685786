"""Fat for frying of which nobody knows whether it is a film or a panful, in a scaled recipe.

A deep panful of fat fries three batches as well as one, and stays as it is; a film is used up by each batch and grows
with them. Between the two the recipe's amount stays as written, and may be too little.

Say `for deep-frying`, or give the degrees of the fat, where it is deep; where it is shallow, keep as much again ready
for the later batches. What counts as a film or a panful is a rule of thumb in `grammar/scaling.toml`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene

RULE = "scale-fat"
LEVEL: Severity = "warning"
ABOUT = ("view media",)
FACTOR = Fraction(3)
BAD = """\
title: Fried bread
serves: 4

# Bread

Heat [50 ml sunflower oil, for frying] [in a wok] [until it shimmers].
Lower in [90 g bread, in strips] and [fry for 2–3 min] [until golden].
"""
GOOD = """\
title: Fried bread
serves: 4

# Bread

Heat [50 ml sunflower oil, for frying] [in a wok] [to 175 °C].
Lower in [90 g bread, in strips] and [fry for 2–3 min] [until golden].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Fat that stays as written, because nothing tells how deep it is."""
    if scene.factor < practice().limits["frying"]:
        return
    for food, why in scene.media:
        if why == "unclear":
            message = f"{times_text(scene.factor)}: the {food.name} for frying stays as written"
            hint = "a deep panful serves every batch; if it is shallow, top it up from batch to batch"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
