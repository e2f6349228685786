"""Cooked food that is to cool in a stated time, in a recipe that is scaled up.

Three times the rice on one tray lies three times as deep, and stays lukewarm for hours: that is where food spoils.

Spread it on so many trays more, or in shallow dishes, so that it is in the fridge within two hours of cooking (USDA
FSIS). From how much on it is told is common practice and stands in `grammar/scaling.toml`; cakes and loaves are not
meant.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action

RULE = "scale-cooling"
LEVEL: Severity = "warning"
FACTOR = Fraction(3)
BAD = """\
title: Cold rice
serves: 4

# Rice

Bring [300 g long-grain rice] and [600 ml water] [to the boil] [in a large pan].
Cover and [simmer for 15 min] [over low heat] [until tender].
Spread out [on a tray] and [cool for 30 min] [until no longer steaming].
Cover and [chill for at least 1 h, up to 1 day].
"""
GOOD = """\
title: Warm rice
serves: 4

# Rice

Bring [300 g long-grain rice] and [600 ml water] [to the boil] [in a large pan].
Cover and [simmer for 15 min] [over low heat] [until tender].
Spread out [on a tray] and serve [at once].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """What spoils while it is warm and cools where it lies, each told once."""
    from tamis.checks.scaling._scene import practice, times_text

    if scene.factor < practice().limits["unsized"]:
        return
    told: frozenset[int] = frozenset()
    for action in scene.recipe.actions:
        uses = scene.hands[action.number].uses
        much = _weight(scene, action) * scene.factor > practice().amounts["cools"]
        if not much or not _cools(action) or uses <= told or not _spoils(scene, action):
            continue
        told = uses
        message = f"{times_text(scene.factor)}: so much cools more slowly than stated"
        hint = "spread it on more trays or in shallow dishes: it has to be in the fridge within two hours"
        yield Diagnostic(RULE, LEVEL, action.time_span, message, hint)


def _weight(scene: Scene, action: Action) -> Fraction:
    """What lies there, without the liquid that it may have been lifted out of."""
    from tamis.checks.scaling._hand import grams, liquid

    hand = scene.hands[action.number]
    return grams(scene.recipe, hand.uses) - (liquid(scene.recipe, hand.uses) if hand.parted else 0)


def _cools(action: Action) -> bool:
    """Whether a line lets it cool for a good while, in no cold water."""
    from tamis.checks.scaling._scene import practice

    wait = action.work.wait
    long = wait is not None and (wait.hi or wait.lo) >= practice().amounts["cooling"]
    bath = any(tool.contains or tool.equipment.id in practice().baths for tool in action.tools)
    return long and not bath and action.work.verb in practice().verbs["cooling"]


def _spoils(scene: Scene, action: Action) -> bool:
    """Whether it was cooked, and is of what spoils while it is warm; what is baked of flour does not."""
    from tamis.checks.scaling._scene import practice

    uses = scene.hands[action.number].uses
    foods = [goods for index in uses if (goods := scene.recipe.uses[index].ingredient.goods) is not None]
    before = [line for line in scene.recipe.actions[: action.number] if scene.hands[line.number].uses & uses]
    stations = {scene.recipe.places.lines[line.number].station for line in before}
    baked = "oven" in stations and any(food.role == "flour" for food in foods)
    cooked = any((verb := scene.kitchen.verbs.of_base(line.work.verb)) is not None and verb.cooks for line in before)
    return cooked and not baked and any(food.hazard in practice().spoiling for food in foods)
