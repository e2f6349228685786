"""More in the pan than lies side by side when a recipe is scaled.

Crowded food cools the fat and steams in its own juice instead of browning.

Fry in more batches, each for the time that is stated, and let the pan get hot again between them.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.source import Span

RULE = "scale-frying"
LEVEL: Severity = "warning"
FACTOR = Fraction(2)
BAD = """\
title: Fried mushrooms
serves: 2

# Mushrooms

Heat [20 g butter] [in a frying pan] [over high heat] [until it foams].
Add [250 g mushrooms, sliced] and [fry for 5–6 min] [until brown].
"""
GOOD = """\
title: Baked mushrooms
serves: 2

# Mushrooms

Heat [the oven] [to 200 °C].
Spread [250 g mushrooms, sliced] [on a baking tray].
[Bake for 15–20 min] [until brown].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Frying, and what is done in a stated number of batches."""
    from tamis.checks.scaling._scene import practice, times_text

    limit = practice().limits["frying"]
    for action in scene.recipe.actions:
        place = _batches(action)
        if place is not None and scene.factor > 1:
            wanted = int(-(-action.batches * scene.factor // 1))
            if wanted > action.batches:
                message = f"{times_text(scene.factor)} takes about {wanted} batches, not {action.batches}"
                hint = "each for the time stated; the plan counts those of the recipe"
                yield Diagnostic(RULE, LEVEL, place, message, hint)
        elif place is None and action.batches == 1 and scene.factor >= limit:
            fried = _fried(action, practice().verbs["frying"])
            if fried is not None:
                wanted = int(-(-scene.factor // 1))
                message = f"{times_text(scene.factor)} crowds the pan: fry in {wanted} batches, or in {wanted} pans"
                yield Diagnostic(RULE, LEVEL, fried, message, "each for the time stated")


def _batches(action: Action) -> Span | None:
    from tamis.reading.clauses import Repeat

    repeats = (read for read in action.reads if isinstance(read, Repeat) and read.kind in ("batches", "loads"))
    return next((read.clause.span for read in repeats), None)


def _fried(action: Action, verbs: frozenset[str]) -> Span | None:
    """Where an action fries on the hob: its time's clause, or its first clause."""
    from tamis.reading.clauses import Time

    if action.work.verb not in verbs or action.work.station not in ("ring", ""):
        return None
    times = [read.clause.span for read in action.reads if isinstance(read, Time)]
    return (times or [read.clause.span for read in action.reads] or [action.span])[0]
