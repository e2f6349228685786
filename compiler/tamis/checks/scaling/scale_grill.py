"""More than lies side by side under the grill or on it when a recipe is scaled.

What lies in a second layer stays raw, and what waits for its turn gets cold.

Grill in batches, each for the time that is stated, and keep warm what is done.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import in_pieces
from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.source import Span

RULE = "scale-grill"
LEVEL: Severity = "warning"
ABOUT = ("grill",)
FACTOR = Fraction(2)
BAD = """\
title: Grilled mackerel
serves: 2

# Mackerel

Heat [the grill] [to high].
Lay [2 mackerel (300 g each), gutted] [on a wire rack].
[Grill for 4–5 min on each side] [until 63 °C in the middle].
"""
GOOD = """\
title: Baked mackerel
serves: 2

# Mackerel

Heat [the oven] [to 200 °C].
Lay [2 mackerel (300 g each), gutted] [on a baking tray].
[Bake for 15–20 min] [until 63 °C in the middle].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """What is grilled all at once, told once in a component."""
    if scene.factor < practice().limits["frying"]:
        return
    told: set[int] = set()
    for action in scene.recipe.actions:
        if action.component not in told and action.batches == 1 and _is_grilled(scene, action):
            told.add(action.component)
            wanted = int(-(-scene.factor // 1))
            times, hint = times_text(scene.factor), "grill each for the time stated; keep warm what is done"
            message = f"{times}: the food does not fit side by side on the grill: grill in {wanted} batches"
            yield Diagnostic(RULE, LEVEL, _place(action), message, hint)


def _is_grilled(scene: Scene, action: Action) -> bool:
    """Whether more than a little lies in pieces under the grill or on it for a time."""
    here = scene.recipe.places.lines[action.number]
    if here.station != "grill" or here.heats or action.work.wait is None:
        return False
    uses = [use for index in scene.hands[action.number].uses if in_pieces(use := scene.recipe.uses[index])]
    weight = sum((use.mass.hi for use in uses), Fraction(0))
    return any(not use.mass.known for use in uses) or weight * scene.factor > practice().amounts["layer"]


def _place(action: Action) -> Span:
    """The time at the grill."""
    times = [read.clause.span for read in action.reads if isinstance(read, Time)]
    return (times or [read.clause.span for read in action.reads] or [action.span])[0]
