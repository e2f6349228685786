"""Food that a plan leaves standing in the room, because nobody works at night.

Counted back, the work before a night may end with a shaped loaf or raw meat in the room, and go on in the morning. The
planner may not invent a fridge, so the cook is told: another hour of serving, or a line that chills, puts it right.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.verbs import Verbs
    from tamis.model.recipe import Action, Recipe
    from tamis.timeline.network import Network, Plan, Task

AT_ROOM = 2 * 3600
"""Seconds that food may stand in the room (USDA FSIS: the two hours of raw and cooked food; a shaped dough has no
longer)."""


class Standing(NamedTuple):
    """The line that leaves food standing, the line of the same component that takes it up, and the seconds between."""

    action: int
    next_action: int
    seconds: int


def standings(recipe: Recipe, network: Network, plan: Plan, verbs: Verbs) -> tuple[Standing, ...]:
    """Where food stands for longer than it may: after a wait in the room, or in the midst of a component's work."""
    found: dict[int, Standing] = {}
    for link in network.links:
        a, b = network.tasks[link.a], network.tasks[link.b]
        gap = plan.starts[link.b] - plan.end(link.a)
        if gap <= AT_ROOM or link.from_start or a.action == b.action:
            continue
        one, other = recipe.actions[a.action], recipe.actions[b.action]
        if _waits_in_the_room(one, a, verbs) or (a.part == "handle" and one.component == other.component):
            found.setdefault(a.action, Standing(a.action, b.action, gap))
    return tuple(found[action] for action in sorted(found))


def _waits_in_the_room(action: Action, task: Task, verbs: Verbs) -> bool:
    verb = verbs.of_base(action.work.verb)
    stands = verb is not None and verb.stands
    return stands and task.part == "wait" and task.kind != "window" and not task.station
