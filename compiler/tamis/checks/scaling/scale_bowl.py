"""More in the mixer's bowl than it can turn when a recipe is scaled.

A dough that climbs over the hook is not kneaded, and the motor gets hot.

Knead in two bowlfuls, or by hand. The bowl of a domestic mixer turns about 2 kg, and beats up half
of that (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action

RULE = "scale-bowl"
LEVEL: Severity = "warning"
ABOUT = ("view mixers",)
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
    from tamis.checks.scaling._room import beats_up
    from tamis.quantity.display import grams

    told: set[int] = set()
    for action, tool in scene.mixers:
        if action.component in told or tool.size:
            continue
        told.add(action.component)
        lines = [line for line in scene.recipe.actions if line.component == action.component]
        airy = any(beats_up(scene, line) for line in lines) and not _has_flour(scene, lines)
        most, mass = practice().bowls[tool.equipment.id] / (2 if airy else 1), _mass_from(scene, lines)
        if mass <= most < mass * scene.factor:
            message = f"{times_text(scene.factor)}: {grams(mass * scene.factor)} in one mixer bowl"
            bowls = int(-(-mass * scene.factor // most))
            does = "beats up" if airy else "turns"
            hint = f"it {does} about {grams(most)} (common practice): mix in {bowls} bowlfuls"
            yield Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)


def _has_flour(scene: Scene, lines: list[Action]) -> bool:
    """Whether it becomes a dough or a batter, which is no foam."""
    uses = {index for line in lines for index in scene.hands[line.number].uses}
    foods = (scene.recipe.uses[index].ingredient.goods for index in uses)
    return any(food is not None and food.role == "flour" for food in foods)


def _mass_from(scene: Scene, lines: list[Action]) -> Fraction:
    """What the component's batch weighs in the end; if that is not known, the most that is known of it."""
    from tamis.checks.scaling._hand import grams

    product = scene.recipe.components[lines[0].component].product
    if product is not None and scene.recipe.products[product].mass.known:
        return scene.recipe.products[product].mass.hi
    return max(grams(scene.recipe, scene.hands[line.number].uses) for line in lines)
