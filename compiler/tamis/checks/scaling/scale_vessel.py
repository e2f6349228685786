"""A vessel of no said size that no longer holds its food once a recipe is scaled, and what is used by the piece.

Twice the batter in "a loaf tin" runs over, three litres of stock do not go into a small saucepan, and eight cocktail
sticks fasten half of the rolls.

Take more of the same, or a larger one; what is used by the piece grows with its pieces. What a bowl, a pan or a plate
holds is a rule of thumb in `grammar/scaling.toml`.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._contents import Filled
    from tamis.checks.scaling._oven import Room
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool

RULE = "scale-vessel"
LEVEL: Severity = "warning"
FACTOR = Fraction(2)
BAD = """\
title: Oat loaf
makes: 1 loaf

# Loaf

Heat [the oven] [to 180 °C].
Stir [300 g rolled oats] with [200 g melted butter] and [150 g honey] [in a bowl].
Press [into a loaf tin].
[Bake for 30–35 min] [until golden].
"""
GOOD = """\
title: Oat loaf
makes: 1 loaf

# Loaf

Heat [the oven] [to 180 °C].
Stir [300 g rolled oats] with [200 g melted butter] and [150 g honey] [in a bowl].
Press into a loaf [on a baking tray].
[Bake for 30–35 min] [until golden].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Vessels for a dish without size or number, and tools of which there are several; each told once."""
    from tamis.checks.scaling._oven import room_for
    from tamis.checks.scaling._scene import practice, times_text

    if scene.factor < practice().limits["unsized"]:
        return
    seen: set[str] = set()
    for action, tool in scene.tools():
        if not tool.equipment.grows or tool.size or tool.equipment.name in seen:
            continue
        if _holds_little(scene, action, tool):
            continue
        seen.add(tool.equipment.name)
        said = _said(tool, scene.factor, room_for(scene, action, tool))
        if said:
            yield Diagnostic(RULE, LEVEL, tool.clause.span, f"{times_text(scene.factor)}: {said[0]}", said[1])
    yield from _overflowing(scene)
    yield from _in_pots(scene)


def _holds_little(scene: Scene, action: Action, tool: Tool) -> bool:
    """Whether so little goes into a dish, a mould or a jar that one holds it as well: eggs beaten up to dip things in.
    Of what swells, as rice, nobody knows."""
    from tamis.checks.scaling._contents import fullest
    from tamis.checks.scaling._scene import practice

    if tool.equipment.kind != "vessel" or tool.equipment.station:
        return False
    uses = [scene.recipe.uses[index] for index in scene.hands[action.number].uses]
    if any(not use.mass.known or (use.ingredient.goods and use.ingredient.goods.show == "grain") for use in uses):
        return False
    lies = max(fullest(scene, action)[0], sum(use.mass.hi for use in uses))
    return 0 < lies * scene.factor <= practice().amounts["little"]


def _in_pots(scene: Scene) -> Iterator[Diagnostic]:
    """Pots in whose water a tin or a basin stands; each told once."""
    from tamis.checks.scaling._scene import times_text
    from tamis.checks.scaling._standing import standing
    from tamis.quantity.nouns import nouns

    known, seen = nouns(scene.recipe.language), set[int]()
    for pot, inside in standing(scene):
        wanted = int(-(-inside.number * scene.factor // 1))
        if wanted == inside.number or pot.clause.span.start in seen:
            continue
        seen.add(pot.clause.span.start)
        name = known.one(pot.name)
        message = f"{times_text(scene.factor)}: {wanted} {inside.equipment.plural} do not stand in one {name}"
        hint = f"take more {known.plural(name)}, each with its own water, or cook them one after another"
        yield Diagnostic(RULE, LEVEL, pot.clause.span, message, hint)


def _overflowing(scene: Scene) -> Iterator[Diagnostic]:
    """Bowls, pans and plates in which more lies than they hold."""
    from tamis.checks.scaling._contents import SWELLS, filled
    from tamis.checks.scaling._scene import practice, times_text
    from tamis.quantity.display import grams, millilitres
    from tamis.quantity.nouns import nouns

    known, rules = nouns(scene.recipe.language), practice()
    for vessel in filled(scene):
        wanted, name = vessel.wanted(scene.factor), known.one(vessel.tool.name)
        if wanted > 1:
            said = vessel.tool.clause.text.strip()
            goes = said if vessel.tool.preposition else f"into {said}"
            message = f"{times_text(scene.factor)}: what goes {goes} is too much for one"
            holds = grams(vessel.holds) if vessel.tool.equipment.id in rules.heaped else millilitres(vessel.holds)
            room = f"it holds about {holds}{SWELLS[vessel.swells]} (common practice)"
            hint = f"take {wanted} {known.plural(name)}, or a larger one: {room}"
            yield Diagnostic(RULE, LEVEL, vessel.tool.clause.span, message, hint)
        elif vessel.small and _is_more(vessel, scene.factor):
            message = f"{times_text(scene.factor)}: a {name} was chosen for less"
            yield Diagnostic(RULE, LEVEL, vessel.tool.clause.span, message, "take a larger one")


def _is_more(vessel: Filled, factor: Fraction) -> bool:
    """Whether it is so much more, and so much, that nobody takes a small vessel for it."""
    from tamis.checks.scaling._scene import practice

    return factor >= practice().limits["small"] and vessel.bulk * factor > practice().amounts["noticed"]


def _said(tool: Tool, factor: Fraction, room: Room) -> tuple[str, str] | None:
    """What no longer does, and what to take; None for a vessel whose number is told with its size."""
    from tamis.quantity.numerals import decimal

    wanted = -(-tool.number * factor // 1)
    if tool.several:
        message = f"“{tool.clause.text.strip()}” does not say how many: another number of them is wanted"
        return message, "count those that the recipe takes now, and write their number"
    if tool.equipment.kind != "vessel":
        return (f"this takes {wanted} {tool.equipment.plural}, not {tool.number}", "") if tool.number > 1 else None
    if tool.number != 1:
        return None
    message = f"what fills a {tool.equipment.name} no longer fits into one"
    more = f"take {wanted} {tool.equipment.plural}"
    if 0 < room.number < wanted:
        more = f"{more}, which is {-(-wanted // room.number)} loads of the oven"
        if room.number == 1:
            return message, f"{more}: {room.why}"
    return message, f"{more}, or one that holds {decimal(factor)} times as much"
