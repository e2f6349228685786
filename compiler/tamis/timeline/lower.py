"""From a recipe to work that can be planned.

A planner never looks at the recipe, so everything that the text means for time must be in the network: what
becomes a task (`tasks`), what must follow what (`flow`), and what is done again after that (`rounds`).
"""

from __future__ import annotations

from tamis.model.recipe import Recipe
from tamis.timeline.flow import flow_links
from tamis.timeline.network import COOK, Network, Resource
from tamis.timeline.rounds import in_rounds, one_round, together_of
from tamis.timeline.tasks import Tasks
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen


def lower(recipe: Recipe, kitchen: Kitchen) -> Network:
    """All tasks of a recipe in the order of its text, and the links between them."""
    together = together_of(recipe)
    recipe = one_round(recipe, together)
    tasks = Tasks(recipe, kitchen)
    for action in recipe.actions:
        tasks.add(action)
    cooks = Resource(COOK, max(1, kitchen.settings.kitchen.cooks))
    laid, links = in_rounds(tasks.tasks, (*tasks.links, *flow_links(recipe, tasks)), together)
    return Network(laid, links, (cooks,))
