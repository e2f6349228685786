"""Cooked food that is to cool in a stated time, in a recipe that is scaled up.

Three times the rice on one tray lies three times as deep, and stays lukewarm for hours: that is where food spoils.

Spread it on so many trays more, or in shallow dishes, so that it is in the fridge within two hours of cooking (USDA
FSIS). From how much on it is told is common practice and stands in `grammar/scaling.toml`; cakes and loaves are not
meant.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import grams, in_pieces, liquid, sweet
from tamis.checks.scaling._scene import practice, times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.equipment import COLD
from tamis.reading.clauses import Cue
from tamis.reading.plain_tools import tools_in
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool

RULE = "scale-cooling"
LEVEL: Severity = "warning"
ABOUT = ("view spoils",)
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
    if scene.factor < practice().limits["unsized"]:
        return
    told: frozenset[int] = frozenset()
    for action in scene.recipe.actions:
        uses = scene.hands[action.number].uses
        if uses <= told or not _cools(scene, action) or not _spoils(scene, action) or _apart(scene, action):
            continue
        if _weight(scene, action) * scene.factor <= practice().amounts["cools"]:
            continue
        told = uses
        message = f"{times_text(scene.factor)}: so much cools more slowly than stated"
        vessel = _vessel(scene, action)
        in_pan = vessel is not None and vessel.equipment.station == "ring"
        hint = f"spread it {'in' if in_pan else 'on more trays or in'} shallow dishes"
        hint += ", or stand the pan in cold water" if in_pan else ""
        if not _is_heated(scene, action):
            hint = f"{hint}: it has to be in the fridge within two hours"
        yield Diagnostic(RULE, LEVEL, action.time_span, message, hint)


def _weight(scene: Scene, action: Action) -> Fraction:
    """What lies there, without the liquid that it may have been lifted out of."""
    hand = scene.hands[action.number]
    return grams(scene.recipe, hand.uses) - (liquid(scene.recipe, hand.uses) if hand.parted else 0)


def _cools(scene: Scene, action: Action) -> bool:
    """Whether a line lets it cool for a good while, in no cold water: it says so, or leaves it until it is cold."""
    wait, verbs = action.work.wait, practice().verbs
    if wait is None or (wait.hi or wait.lo) < practice().amounts["cooling"]:
        return False
    cold = check_words(scene.recipe.language).scaling.cold
    until = any(isinstance(read, Cue) and not set(cold).isdisjoint(read.text.split()) for read in action.reads)
    cools = action.work.verb in verbs["cooling"] or (until and action.work.verb in verbs["leaving"])
    return cools and not _in_a_bath(scene, action)


def _in_a_bath(scene: Scene, action: Action) -> bool:
    """Whether it stands in ice or cold water, by the words of its line or of the line before."""
    before = scene.recipe.actions[action.number - 1] if action.number else action
    lines = [action, before] if before.component == action.component else [action]
    texts = (part for line in lines for part in line.parts if isinstance(part, Text))
    plain = [placed.tool for text in texts for placed in tools_in(text, scene.kitchen)]
    tools = [*(tool for line in lines for tool in line.tools), *plain]
    ice = any(_is_bath(tool, scene.kitchen) for tool in tools)
    return ice or any(tool.contains for tool in (*action.tools, *plain))


def _is_bath(tool: Tool, kitchen: Kitchen) -> bool:
    """Whether it is an ice bath, by its id or by its words: *a bowl of ice*."""
    words = tool.clause.text.lower().split()
    found = (kitchen.cupboard.get(" ".join(words[at:])) for at in range(len(words)))
    return any(one is not None and one.id in practice().baths for one in (tool.equipment, *found))


def _apart(scene: Scene, action: Action) -> bool:
    """Whether it cools in pieces beside each other, or in dishes of which there are more then: whole fish and joints,
    and what lies in a tin, a mould or a dish. Each cools as the one did."""
    vessel = _vessel(scene, action)
    in_dish = vessel is not None and vessel.equipment.grows and vessel.equipment.station != "ring"
    return in_dish or _whole(scene, action)


def _vessel(scene: Scene, action: Action) -> Tool | None:
    """The last vessel of its component that its food was put into."""
    uses = scene.hands[action.number].uses
    for line in reversed(scene.recipe.actions[: action.number + 1]):
        if scene.hands[line.number].uses & uses and line.component == action.component:
            vessels = [tool for tool in line.tools if tool.equipment.kind == "vessel"]
            if vessels:
                return vessels[-1]
    return None


def _whole(scene: Scene, action: Action) -> bool:
    """Whether it is nothing but fish, birds and joints that nobody cut up, with what seasons them."""
    from tamis.safety.words import safety_words

    hand, states = scene.hands[action.number], safety_words(scene.recipe.language).states
    uses = hand.uses
    if not hand.parted and 4 * liquid(scene.recipe, uses) > grams(scene.recipe, uses):
        return False
    found = [use.ingredient for index in uses if in_pieces(use := scene.recipe.uses[index])]
    said = " ".join(" ".join((food.preparation, *food.states)) for food in found).replace(",", " ").split()
    flesh = all(food.goods is not None and food.goods.show in ("meat", "fish") for food in found)
    return flesh and bool(found) and (states.cut | states.small | states.minced).isdisjoint(said)


def _is_heated(scene: Scene, action: Action) -> bool:
    """Whether it is cooked on, and lies in no fridge before."""
    uses = scene.hands[action.number].uses
    for line in scene.recipe.actions[action.number + 1 :]:
        here = scene.recipe.places.lines[line.number]
        if here.heats or not uses & scene.hands[line.number].uses:
            continue
        if here.station in COLD:
            return False
        if here.station in ("ring", "oven", "grill") and line.work.wait is not None:
            return True
    return False


def _spoils(scene: Scene, action: Action) -> bool:
    """Whether it was cooked, and is of what spoils while it is warm; what is baked of flour does not, nor
    what keeps by its sugar."""
    uses = scene.hands[action.number].uses
    foods = [goods for index in uses if (goods := scene.recipe.uses[index].ingredient.goods) is not None]
    before = [line for line in scene.recipe.actions[: action.number] if scene.hands[line.number].uses & uses]
    stations = {scene.recipe.places.lines[line.number].station for line in before}
    baked = "oven" in stations and any(food.role == "flour" for food in foods)
    cooked = any((verb := scene.kitchen.verbs.of_base(line.work.verb)) is not None and verb.cooks for line in before)
    syrup = sweet(scene.recipe, uses)
    return cooked and not baked and not syrup and any(food.hazard in practice().spoiling for food in foods)
