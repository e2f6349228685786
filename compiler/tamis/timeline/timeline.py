"""From a recipe to its timeline: the phase's two functions.

The same work can be told from its beginning (*how long does it take?*) and from its end (*when do I start?*).
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from tamis.timeline.records import Timeline
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Supply

NO_DISHES: Mapping[str, Supply] = MappingProxyType({})

__all__ = ["Timeline", "build_timeline", "counted_back"]


def build_timeline(recipe: Recipe, kitchen: Kitchen, used: Mapping[str, Supply] = NO_DISHES) -> Timeline:
    """The timeline of a recipe, counted from zero; `used` are the dishes of the recipes that it uses, by stem."""
    return Timeline(recipe, kitchen, used)


def counted_back(timeline: Timeline, ready: datetime) -> Timeline:
    """The same work with the latest starts that have all done at `ready`, estimates at their longest, and
    nobody working at night where the recipe allows it."""
    return Timeline(timeline.recipe, timeline.kitchen, timeline.used, ready)
