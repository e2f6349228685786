"""Food that a plan leaves standing in the room, because nobody works at night.

Counted back, the work before a night may end with a shaped loaf or raw meat in the room, and go on in the morning. The
planner may not invent a fridge, so the cook is told: another hour of serving, or a line that chills, puts it right.
"""

from __future__ import annotations

from tamis.kitchen.equipment import COLD
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.food import Hazard
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verbs
    from tamis.model.recipe import Action, Recipe
    from tamis.timeline.network import Network, Plan, Task

AT_ROOM = 2 * 3600
"""Seconds that food may stand in the room (USDA FSIS: the two hours of raw and cooked food; a shaped dough has no
longer)."""

_SPOILS: tuple[Hazard, ...] = (
    "poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "egg", "rice", "raw-milk",
)  # fmt: skip
"""Food that does not keep in the room when it is cooked, either."""


class Standing(NamedTuple):
    """The line that leaves food standing, the line of the same component that takes it up, and the seconds between."""

    action: int
    next_action: int
    seconds: int


def standings(recipe: Recipe, network: Network, plan: Plan, kitchen: Kitchen) -> tuple[Standing, ...]:
    """Where food stands for longer than it may: after a wait in the room, in the midst of a component's work, or done
    and out of the pan, with nobody to eat it yet."""
    found: dict[int, Standing] = {}
    spoils = _made_of_what_spoils(recipe, kitchen)
    for link in network.links:
        a, b = network.tasks[link.a], network.tasks[link.b]
        gap = plan.starts[link.b] - plan.end(link.a)
        if gap <= AT_ROOM or link.from_start or a.action == b.action:
            continue
        one, other = recipe.actions[a.action], recipe.actions[b.action]
        inside = a.part == "handle" and one.component == other.component
        done = one.number in spoils and a.kind != "window" and a.station not in COLD
        if inside or done or _waits_in_the_room(one, a, kitchen.verbs):
            found.setdefault(a.action, Standing(a.action, b.action, gap))
    return tuple(found[action] for action in sorted(found))


def _made_of_what_spoils(recipe: Recipe, kitchen: Kitchen) -> set[int]:
    """The lines with which something is done that does not keep in the room."""
    made = set()
    for product in recipe.products:
        goods = [kitchen.larder.get(food.goods) for food in product.foods if food.goods]
        if product.made_by is not None and any(one is not None and one.hazard in _SPOILS for one in goods):
            made.add(product.made_by)
    return made


def _waits_in_the_room(action: Action, task: Task, verbs: Verbs) -> bool:
    verb = verbs.of_base(action.work.verb)
    stands = verb is not None and verb.stands
    return stands and task.part == "wait" and task.kind != "window" and not task.station
