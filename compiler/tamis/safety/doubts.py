"""Unknown foods that are called like raw meat, fish or egg: nothing is known of them, so nothing makes them safe."""

from __future__ import annotations

from tamis.safety.hazards import FLESH
from tamis.safety.records import Doubt
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe
    from tamis.safety.records import HazardKind

_CALLED: frozenset[HazardKind] = FLESH | {"egg", "kidney-beans", "raw-milk"}


def doubts(recipe: Recipe, kitchen: Kitchen) -> Iterator[Doubt]:
    """Each use of an unknown food whose last words are a known, raw one."""
    harmless = safety_words(recipe.language).states.harmless
    for use in recipe.uses:
        food = use.ingredient
        if food.goods is not None:
            continue
        words = food.name.lower().replace("-", " ").split()
        if not harmless.isdisjoint(words):
            continue
        found = next((f for at in range(1, len(words)) if (f := kitchen.larder.find(words[at:]))), None)
        if found and found.goods.hazard in _CALLED:
            yield Doubt(food.name, found.goods.hazard, found.goods.name, food.name_span)
