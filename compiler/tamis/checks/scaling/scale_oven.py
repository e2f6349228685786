"""More trays than go into the oven at once when a recipe is scaled.

What waits for the second load goes on rising or melting on the worktop, and the whole takes longer than the plan says.

Bake in loads and keep what waits cold, or choose a smaller factor. How many racks there are, `kitchen.toml` tells.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene

RULE = "scale-oven"
LEVEL: Severity = "warning"
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
Set [8 apples, cored] [on a baking tray].
[Bake for 30–40 min] [until soft].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Trays, and tins or dishes, whose loads of the oven grow in number."""
    from tamis.checks.scaling._scene import practice, times_text

    house = scene.kitchen.settings.kitchen
    ovens = max(1, house.ovens)
    for _, tool in scene.tools():
        tray = tool.equipment.id in practice().trays
        room = max(1, house.racks * ovens) if tray else tool.equipment.oven_holds * ovens
        either = not tray and tool.number == 1 and not tool.size  # or a larger one: told with the vessel
        if not room or (tray and tool.size) or tool.several or either:
            continue
        wanted = int(-(-tool.number * scene.factor // 1))
        before, after = -(-tool.number // room), -(-wanted // room)
        if after > before:
            pieces = f"{wanted} {tool.equipment.plural}"
            message = f"{times_text(scene.factor)} takes {pieces}, which is {after} loads of the oven"
            there = f"there are {room} racks" if tray else f"about {room} go in at once"
            hint = f"{there}; keep cold what waits for its turn"
            yield Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)
