"""More in the mixer's bowl than it can turn when a recipe is scaled.

A dough that climbs over the hook is not kneaded, and the motor gets hot.

Knead in two bowlfuls, or by hand. The bowl of a domestic mixer turns about 2 kg (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action

RULE = "scale-bowl"
LEVEL: Severity = "warning"
FACTOR = Fraction(3)
BAD = """\
title: Plain rolls
makes: 8 rolls

# Rolls

Stir [500 g plain flour] with [300 g water] [in the mixer bowl].
[Knead for 5 min] [on low speed] [until smooth].
Shape [into 8 pieces].
[Bake for 20–25 min at 220 °C] [until golden].
"""
GOOD = """\
title: Plain rolls
makes: 8 rolls

# Rolls

Stir [500 g plain flour] with [300 g water] [in a bowl].
[Knead for 5 min] [until smooth].
Shape [into 8 pieces].
[Bake for 20–25 min at 220 °C] [until golden].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Mixer bowls that hold the recipe and don't hold the scaled one."""
    from tamis.checks.scaling._scene import practice, times_text
    from tamis.quantity.display import grams

    told: set[int] = set()
    for action in scene.recipe.actions:
        for tool in action.tools:
            most = practice().bowls.get(tool.equipment.id)
            if most is None or action.component in told:
                continue
            told.add(action.component)
            mass = _mass_from(scene, action)
            if mass is not None and mass <= most < mass * scene.factor:
                message = f"{times_text(scene.factor)}: {grams(mass * scene.factor)} in one mixer bowl"
                bowls = int(-(-mass * scene.factor // most))
                hint = f"it turns about {grams(most)} (common practice): mix in {bowls} bowlfuls"
                yield Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)


def _mass_from(scene: Scene, action: Action) -> Fraction | None:
    """What the component's batch weighs in the end; None if that is not known."""
    product = scene.recipe.components[action.component].product
    if product is None:
        return None
    mass = scene.recipe.products[product].mass
    return mass.hi if mass.known else None
