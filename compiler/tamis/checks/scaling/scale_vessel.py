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
    from tamis.checks.scaling._oven import Room
    from tamis.checks.scaling._scene import Scene
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
        seen.add(tool.equipment.name)
        said = _said(tool, scene.factor, room_for(scene, action, tool))
        if said:
            yield Diagnostic(RULE, LEVEL, tool.clause.span, f"{times_text(scene.factor)}: {said[0]}", said[1])
    yield from _overflowing(scene)


def _overflowing(scene: Scene) -> Iterator[Diagnostic]:
    """Bowls, pans and plates in which more lies than they hold."""
    from tamis.checks.scaling._contents import filled
    from tamis.checks.scaling._scene import practice, times_text
    from tamis.quantity.display import grams, millilitres
    from tamis.quantity.nouns import nouns

    known = nouns(scene.recipe.language)
    for vessel in filled(scene):
        wanted = vessel.wanted(scene.factor)
        if wanted > 1:
            name = known.one(vessel.tool.name)
            goes = f"what goes {vessel.tool.preposition or 'into'} a {name}"
            message = f"{times_text(scene.factor)}: {goes} is too much for one"
            half = ", half of that where it is beaten up" if vessel.airy else ""
            holds = grams(vessel.holds) if vessel.tool.equipment.id in practice().heaped else millilitres(vessel.holds)
            hint = f"take {wanted} {known.plural(name)}, or a larger one: it holds about {holds}{half}"
            yield Diagnostic(RULE, LEVEL, vessel.tool.clause.span, message, f"{hint} (common practice)")


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
