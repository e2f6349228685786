"""A joint, a bird or a fish that comes out in parts when a recipe is scaled.

Nobody buys a third of a shoulder; a heavier piece feeds more, and takes longer by its weight, not by their number.

Choose a factor that leaves the pieces whole, or buy a heavier one and go by the core temperature.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene

RULE = "scale-joints"
LEVEL: Severity = "warning"
FACTOR = Fraction(3, 2)
BAD = """\
title: Roast leg of lamb
serves: 6

# Roast

Lay [1 leg of lamb (2 kg)] [on a baking tray].
[Roast for 90 min] [at 180 °C] [until 63 °C inside].
[Rest for 15 min].
"""
GOOD = """\
title: Roast leg of lamb
serves: 6

# Roast

Lay [2 legs of lamb (2 kg each)] [on a baking tray].
[Roast for 90 min] [at 180 °C] [until 63 °C inside].
[Rest for 15 min].
"""

_WHOLE = ("meat", "fish")
_MANY = 4


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Meat and fish counted in pieces whose number is whole before and not after; of many a part is no matter."""
    from tamis.quantity.numerals import number

    for use in scene.recipe.uses:
        food = use.ingredient
        if food.goods is None or food.goods.show not in _WHOLE or len(food.measures) != 1 or use.rest_of is not None:
            continue
        measure = food.measures[0]
        if scene.kitchen.units.get(measure.unit) is not None or measure.amount.lo.denominator != 1:
            continue
        wanted = measure.amount.lo * scene.factor
        if wanted < _MANY and wanted.denominator != 1:
            name = f"{measure.unit} of {food.name}" if measure.unit else food.name
            message = f"{measure.amount.lo} becomes {number(wanted)}: {name}"
            hint = "buy heavier ones instead, and go by the core temperature: they take longer"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
