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
    """Trays whose loads of the oven grow in number."""
    from tamis.checks.scaling._scene import practice, times_text

    house = scene.kitchen.settings.kitchen
    room = max(1, house.racks * max(1, house.ovens))
    for _, tool in scene.tools():
        if tool.equipment.id not in practice().trays or tool.size or tool.several:
            continue
        wanted = int(-(-tool.number * scene.factor // 1))
        before, after = -(-tool.number // room), -(-wanted // room)
        if after > before:
            trays = f"{wanted} {tool.equipment.plural}"
            message = f"{times_text(scene.factor)} takes {trays}, which is {after} loads of the oven"
            hint = f"there are {room} racks; keep cold what waits for its turn"
            yield Diagnostic(RULE, LEVEL, tool.clause.span, message, hint)
