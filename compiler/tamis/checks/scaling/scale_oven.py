"""More trays than go into the oven at once when a recipe is scaled.

What waits for the second load goes on rising or melting on the worktop, and the whole takes longer than the timeline
says.

Bake in loads and keep what waits cold, or choose a smaller factor. How many racks there are, `kitchen.toml` tells; a
joint, a bird or a fish of 4 kg or more fills an oven by itself (common practice). Trays that never lie in the oven do
not count.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import grams
from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.equipment import COLD
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool

RULE = "scale-oven"
LEVEL: Severity = "warning"
ABOUT = ("oven",)
FACTOR = Fraction(2)
BAD = """\
title: Baked apples
serves: 8

# Apples

Heat [the oven] [to 180 °C].
Set [8 apples, cored] [on 2 baking trays].
[Bake for 30–40 min] [until soft].
"""
GOOD = """\
title: Baked apples
serves: 8

# Apples

Heat [the oven] [to 180 °C].
Set [4 apples, cored] [on a baking tray].
[Bake for 30–40 min] [until soft].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Trays, and tins or dishes, whose loads of the oven grow in number."""
    from tamis.checks.scaling._oven import oven_line, room_for

    for action, tool in scene.tools():
        room = room_for(scene, action, tool)
        either = not room.tray and tool.number == 1 and not tool.size  # or a larger one: told with the vessel
        if not room.number or (room.tray and tool.size) or tool.several or either:
            continue
        line = oven_line(scene, action, tool) or action
        if line.batches > 1:
            continue  # its loads are said, and more of them told
        wanted = _wanted(scene, action, tool, line)
        before, after = -(-tool.number // room.number), -(-wanted // room.number)
        message = f"{times_text(scene.factor)} takes {wanted} {tool.equipment.plural}"
        if after > before:
            hint = "; ".join(filter(None, (room.why, _waiting(scene, line, tool), _cooler(scene, line))))
            yield Diagnostic(RULE, LEVEL, tool.clause.span, f"{message}, which is {after} loads of the oven", hint)
        elif room.tray and wanted > tool.number == 1:  # several are written so many times more
            yield Diagnostic(RULE, LEVEL, tool.clause.span, message, "they go into the oven together: make them ready")


def _wanted(scene: Scene, action: Action, tool: Tool, line: Action) -> int:
    """How many of them the scaled recipe takes. Vegetables, fruit, meat and fish on one tray are told by their weight,
    for they lie there as close as they will; what lies on several lies as the recipe has it. Empty jars stand side by
    side."""
    from tamis.checks.scaling._oven import trays_of_empties

    recipe, uses = scene.recipe, scene.hands[line.number].uses
    if not uses and tool.equipment.id in practice().trays:
        return trays_of_empties(scene, action, tool)
    if tool.number == 1 and tool.equipment.id in practice().trays and _are_of(scene, uses, (*_RAW, "meat", "fish")):
        weight = grams(recipe, uses)
        return int(-(-weight * scene.factor // max(weight, practice().amounts["tray"])))
    return int(-(-tool.number * scene.factor // 1))


_RAW = ("vegetable", "fruit", "herb", "spice")


def _are_of(scene: Scene, uses: frozenset[int], kinds: tuple[str, ...]) -> bool:
    """Whether it is nothing but foods of these kinds, and fat."""
    used = [scene.recipe.uses[index] for index in uses]
    goods = [use.ingredient.goods for use in used if use.mass.hi]
    known = all(use.mass.known for use in used)
    return known and bool(goods) and all(one is not None and (one.show in kinds or one.role == "fat") for one in goods)


def _waiting(scene: Scene, line: Action, tool: Tool) -> str:
    """What becomes of the second load: a batter full of air falls, vegetables and fruit wait as they are, and all else
    in the cold."""
    uses = scene.hands[line.number].uses
    foods = [scene.recipe.uses[index].ingredient.goods for index in uses]
    rises = any(food is not None and food.leavener and food.role != "yeast" for food in foods)
    before = scene.recipe.actions[: line.number]
    places = scene.recipe.places.lines
    inside = (one for one in before if places[one.number].station == "oven" and not places[one.number].heats)
    if any(uses <= scene.hands[one.number].uses for one in inside):
        return ""  # it is baked already
    batter = rises and tool.equipment.id not in practice().trays
    if batter or any(whisked(scene, other) and scene.hands[other.number].uses <= uses for other in before):
        return "mix each load only when the oven is free for it: a batter that waits falls"
    return "" if _are_of(scene, uses, _RAW) or _is_hot(scene, line) else "keep cold what waits for its turn"


def _cooler(scene: Scene, line: Action) -> str:
    """What to do between the loads, where the oven is turned off or set anew while its food is in it."""
    for later in scene.recipe.actions[line.number + 1 :]:
        if later.component != line.component or not scene.hands[line.number].uses <= scene.hands[later.number].uses:
            break
        done = {use.verb.base for use in later.verbs}
        if (
            not done.isdisjoint(practice().verbs["setting"])
            and scene.recipe.places.lines[later.number].station != "ring"
        ):
            return "bring the oven back to its first heat for each load"
    return ""


def _is_hot(scene: Scene, line: Action) -> bool:
    """Whether some of it comes from the hob or the oven, and neither was in the fridge nor rose for long since: nobody
    keeps that cold."""
    uses, hot = scene.hands[line.number].uses, False
    for before in scene.recipe.actions[: line.number]:
        here = scene.recipe.places.lines[before.number]
        if here.heats or not scene.hands[before.number].uses & uses:
            continue
        wait = before.work.wait
        long = not here.station and wait is not None and wait.lo >= practice().amounts["cooling"]
        if long or here.station in COLD:
            hot = False
        elif here.station in ("ring", "oven", "grill"):
            hot = True
    return hot


def whisked(scene: Scene, line: Action) -> bool:
    """Whether a line beats air into eggs."""
    from tamis.checks.scaling._room import beats_up

    foods = (scene.recipe.uses[index].ingredient.goods for index in scene.hands[line.number].uses)
    return beats_up(scene, line) and any(food is not None and food.role == "egg" for food in foods)
