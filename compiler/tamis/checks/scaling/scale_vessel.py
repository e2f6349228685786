"""A vessel of no said size that no longer holds its food once a recipe is scaled, and what is used by the piece.

Twice the batter in "a loaf tin" runs over, three litres of stock do not go into a small saucepan, and eight cocktail
sticks fasten half of the rolls.

Take more of the same, or a larger one; what is used by the piece grows with its pieces. What a bowl, a pan or a plate
usually holds is a rule of thumb in `grammar/scaling.toml`; what is weighed against it is all that comes together in it,
whichever line puts it there, and without what was taken out, poured off or strained away before.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import SWELLS, practice, times_text
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._oven import Room
    from tamis.checks.scaling._scene import Scene, Vessel
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool
    from tamis.source import Span

RULE = "scale-vessel"
LEVEL: Severity = "warning"
ABOUT = ("equipment",)
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
Press into a loaf [on a sheet of baking paper].
[Bake for 30–35 min] [until golden].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Vessels for a dish without size or number, and tools of which there are several; each told once."""
    from tamis.checks.scaling._oven import room_for

    if scene.factor < practice().limits["unsized"]:
        return
    seen: set[str] = set()
    for action, tool in _brought_out(scene):
        if not tool.equipment.grows or tool.size or tool.equipment.name in seen or _is_weighed(scene, tool):
            continue
        seen.add(tool.equipment.name)
        said = _said(tool, scene.factor, room_for(scene, action, tool))
        if said:
            yield Diagnostic(RULE, LEVEL, tool.clause.span, f"{times_text(scene.factor)}: {said[0]}", said[1])
    pots = list(_in_pots(scene))
    yield from pots
    yield from _overflowing(scene, {finding.span for finding in pots})


def _brought_out(scene: Scene) -> Iterator[tuple[Action, Tool]]:
    """Every tool where it is first brought out, with vessels of plain words in which food lies: *on to a dish*."""
    yield from scene.tools()
    known = {id(tool) for action in scene.recipe.actions for tool in action.tools}
    for vessel in scene.vessels:
        start = vessel.tool.clause.span.start
        action = next((one for one in scene.recipe.actions if one.span.start <= start < one.span.end), None)
        if vessel.fullest and id(vessel.tool) not in known and action is not None and not vessel.tool.definite:
            yield action, vessel.tool


def _is_weighed(scene: Scene, tool: Tool) -> bool:
    """Whether what lies in a vessel tells how many it takes: a rule of thumb says what it holds, or it is so little
    that any dish, mould or jar holds it, as eggs beaten up to dip things in."""
    vessel = scene.vessel(tool)
    if vessel is None or not vessel.fullest:
        return False
    little = not tool.equipment.station and vessel.fullest * scene.factor <= practice().amounts["little"]
    fuller = bool(vessel.holds) and vessel.wanted(scene.factor) > 1
    return fuller or (vessel.sure and (little or bool(vessel.holds)))


def _in_pots(scene: Scene) -> Iterator[Diagnostic]:
    """Pots in whose water a tin or a basin stands; each told once."""
    from tamis.checks.scaling._standing import standing
    from tamis.quantity.nouns import nouns

    known, seen = nouns(scene.recipe.language), set[int]()
    for pot, inside in standing(scene):
        wanted = int(-(-inside.number * scene.factor // 1))
        if wanted == inside.number or pot.clause.span.start in seen:
            continue
        seen.add(pot.clause.span.start)
        name = known.one(pot.name)
        message = f"{times_text(scene.factor)}: {wanted} {inside.equipment.plural} do not fit in one {name}"
        hint = f"take more {known.plural(name)}, each with its own water, or cook them one after another"
        yield Diagnostic(RULE, LEVEL, pot.clause.span, message, hint)


def _overflowing(scene: Scene, told: set[Span]) -> Iterator[Diagnostic]:
    """Vessels in which more comes together than they hold; those of a name once, none that was `told` of."""
    from tamis.quantity.nouns import nouns

    known = nouns(scene.recipe.language)
    fuller: dict[str, list[Vessel]] = {}
    for vessel in scene.vessels:
        span = vessel.tool.clause.span
        known_already = span in told or span.start in scene.exchanged
        if vessel.holds and vessel.wanted(scene.factor) > 1 and not known_already:
            fuller.setdefault(known.one(vessel.tool.name), []).append(vessel)
    for name, alike in fuller.items():
        yield _told(scene, name, known.plural(name), alike)


def _told(scene: Scene, name: str, plural: str, alike: list[Vessel]) -> Diagnostic:
    """How much comes together in vessels of a name, and what to take."""
    from tamis.quantity.display import grams, millilitres

    fullest = max(alike, key=lambda vessel: vessel.bulk)
    tool, heaped = fullest.tool, fullest.tool.equipment.id in practice().heaped
    shown, where = (grams, "on") if heaped else (millilitres, "in")
    much = [(vessel, f"about {shown(_round(vessel.fullest * scene.factor))}") for vessel in alike]
    more = tuple(
        Label(vessel.tool.clause.span, f"and {so_much} here") for vessel, so_much in much if vessel is not fullest
    )
    message = f"{times_text(scene.factor)}: {dict(much)[fullest]} come together {where} one {name}, which is too much"
    holds = f"{shown(Fraction(fullest.holds))}{SWELLS[fullest.swells]}"
    usual = f"it holds {holds}" if tool.size else f"{plural} hold about {holds} (common practice)"
    if fullest.bulk > fullest.holds:  # it is fuller than usual before
        usual = "one is full with the recipe as written"
    wanted = fullest.wanted(scene.factor)
    hint = f"{usual}: take a larger one, or {wanted} of them, or work in {wanted} batches"
    return Diagnostic(RULE, LEVEL, tool.clause.span, message, hint, more)


def _round(size: Fraction) -> Fraction:
    """As a cook would say it: to a tenth of a litre, or ten millilitres."""
    return Fraction(round(size, -2 if size >= 1000 else -1))


def _said(tool: Tool, factor: Fraction, room: Room) -> tuple[str, str] | None:
    """What no longer does, and what to take; None for a vessel whose number is told with its size."""
    from tamis.quantity.numerals import decimal

    wanted = -(-tool.number * factor // 1)
    if tool.several:
        message = f"“{tool.clause.text.strip()}” does not say how many: the scaled recipe needs a different number"
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
