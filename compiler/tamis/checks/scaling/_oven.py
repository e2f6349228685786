"""Which tins and trays lie in the oven, and how many go in there at once."""

from __future__ import annotations

import math
from fractions import Fraction

from tamis.checks.scaling._pans import by_the_piece
from tamis.checks.scaling._scene import practice
from tamis.checks.words import check_words
from tamis.kitchen.equipment import COLD
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool


class Room(NamedTuple):
    """So many go in at once, and why it is no more; 0 where nobody knows. `tray`: on racks, side by side."""

    number: int
    why: str = ""
    tray: bool = False


def room_for(scene: Scene, action: Action, tool: Tool) -> Room:
    """How many of a tool go into the oven at once: none where it never lies there with its food."""
    from tamis.quantity.display import grams

    house = scene.kitchen.settings.kitchen
    ovens = max(1, house.ovens)
    tray = tool.equipment.id in practice().trays
    if not (tray or tool.equipment.oven_holds) or _catches(scene, action, tool):
        return Room(0)
    if oven_line(scene, action, tool) is None:
        return Room(0)
    joint = _joint(scene, action)
    if joint >= practice().amounts["fills"]:
        return Room(ovens, f"a joint of {grams(joint)} fills an oven (common practice)", tray)
    if tray:
        number = max(1, house.racks * ovens)
        return Room(number, f"there are {number} racks" if number > 1 else "there is one rack", True)
    beside, wide = _side_by_side(scene, tool)
    number = max(beside * max(1, house.racks), 0 if wide else tool.equipment.oven_holds) * ovens
    return Room(number, f"about {number} go in at once")


def _side_by_side(scene: Scene, tool: Tool) -> tuple[int, bool]:
    """How many of its size stand on one rack, with air between them; 0 where its size is not known. And whether it is
    so wide that no two do, however close."""
    from tamis.checks.scaling._pans import pan_of

    amounts, pan = practice().amounts, pan_of(tool, scene.kitchen)
    if pan is None:
        return 0, False
    if pan.sides:
        sides = [float(side / 10 + amounts["lip"]) for side in (pan.sides[0], pan.sides[-1])]
    elif pan.holds:
        short = (float(pan.holds / amounts["dish"]) * 2 / 3) ** 0.5  # three by two, as dishes are
        sides = [short + float(amounts["rim"]), short * 3 / 2 + float(amounts["rim"])]
    else:
        return 0, False
    one, other = (side + float(amounts["air"]) for side in sides)
    wide, deep = float(amounts["rack"]), float(amounts["rack depth"])
    number = int(max(wide // one * (deep // other), wide // other * (deep // one)))
    return number, number == 1 and min(sides) > wide / 2


def trays_of_empties(scene: Scene, action: Action, tool: Tool) -> int:
    """How many trays the scaled recipe takes for empty jars and the like, which stand there side by side: no fewer to
    one than the recipe puts there."""
    lines = (line for line in scene.recipe.actions[: action.number + 1] if line.component == action.component)
    empties = [one for line in lines for one in line.tools if by_the_piece(one, scene.kitchen) and one.number > 1]
    if not empties:
        return int(tool.number)
    jar, amounts = empties[-1], practice().amounts
    each = _wide(jar, scene.kitchen) + float(amounts["between"])
    most = int(float(amounts["rack"]) // each * (float(amounts["rack depth"]) // each))
    return int(-(-jar.number * scene.factor // max(Fraction(most), jar.number / tool.number)))


def _wide(jar: Tool, kitchen: Kitchen) -> float:
    """How wide a jar is, in cm: it is a quarter higher than wide, and its size says what it holds."""
    from tamis.syntax.clause import parse_clause
    from tamis.syntax.items import Quantity

    said = (item for item in parse_clause(jar.size, kitchen.language).items if isinstance(item, Quantity))
    size = next((item for item in said if item.kind in ("mass", "volume")), None)
    unit = kitchen.units.get(size.unit) if size else None
    holds = size.amount.lo * unit.factor if size and unit else practice().amounts["jar"]
    return math.pow(holds, 1 / 3)  # π/4 · 5/4 is near to 1


def _catches(scene: Scene, action: Action, tool: Tool) -> bool:
    """Whether nothing lies on it but what drips from above: words behind it say so."""
    end = tool.clause.span.end
    behind = " ".join(part.text for part in action.parts if part.span.start >= end).lower()
    return any(words in behind for words in check_words(scene.recipe.language).scaling.catches)


def oven_line(scene: Scene, action: Action, tool: Tool) -> Action | None:
    """The line that has in the oven what this one puts into a tool, or what its component makes where it only gets the
    tool ready; None where it never lies there. What chills on it and is put into another tin does not count, nor what
    cools on a tray and is in a dish when it bakes."""
    recipe, hands, tray = scene.recipe, scene.hands, tool.equipment.id in practice().trays
    food = hands[action.number].uses
    for line in recipe.actions[action.number :]:
        here = recipe.places.lines[line.number]
        if here.station in COLD and food & hands[line.number].uses and _other(scene, line, tool):
            return None
        if tray and line is not action and _in_a_dish(line):
            return None
        if here.station != "oven" or here.heats:
            continue
        if food & hands[line.number].uses or (not food and _alike(scene, action, line)):
            return line
    return None


def _in_a_dish(line: Action) -> bool:
    """Whether a line brings out what bakes in the oven and is no tray."""
    found = (tool.equipment for tool in line.tools if not tool.definite)
    return any(one.kind == "vessel" and one.station == "oven" and one.id not in practice().trays for one in found)


def _other(scene: Scene, chilled: Action, tool: Tool) -> bool:
    """Whether the food of a chilled line goes into another tin before it is in the oven."""
    hands = scene.hands
    food = hands[chilled.number].uses
    for line in scene.recipe.actions[chilled.number + 1 :]:
        if not food & hands[line.number].uses:
            continue
        vessels = [found for found in line.tools if found.equipment.station == "oven" and not found.definite]
        if any(found.equipment.kind == "vessel" and found.name != tool.name for found in vessels):
            return True
        if scene.recipe.places.lines[line.number].station == "oven":
            return False
    return False


def _alike(scene: Scene, action: Action, line: Action) -> bool:
    """Whether an oven's line is that of a tool made ready without food: of its component, or of another if that has
    none."""
    places, number = scene.recipe.places.lines, action.number
    own = [
        later
        for later in scene.recipe.actions[number:]
        if later.component == action.component and later.number > number
    ]
    inside = any(places[later.number].station == "oven" and not places[later.number].heats for later in own)
    return not inside or line.component == action.component


def _joint(scene: Scene, action: Action) -> Fraction:
    """What the heaviest single piece of meat or fish in hand weighs, in grams."""
    heaviest = Fraction(0)
    for index in scene.hands[action.number].uses:
        use = scene.recipe.uses[index]
        food = use.ingredient
        if food.goods is None or food.goods.show not in ("meat", "fish") or len(food.measures) != 1:
            continue
        if scene.kitchen.units.get(food.measures[0].unit) is None and use.mass.known:
            heaviest = max(heaviest, use.mass.hi / max(Fraction(1), food.measures[0].amount.lo))
    return heaviest
