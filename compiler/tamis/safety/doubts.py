"""Unknown foods that are called like raw meat, fish or egg: nothing is known of them, so nothing makes them safe."""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Cue, Target
from tamis.safety.degrees import core_temperature
from tamis.safety.hazards import FLESH
from tamis.safety.records import Doubt
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Use
    from tamis.reading.clauses import Ingredient
    from tamis.safety.records import HazardKind

_CALLED: frozenset[HazardKind] = FLESH | {"egg", "kidney-beans", "raw-milk"}


def doubts(recipe: Recipe, kitchen: Kitchen) -> Iterator[Doubt]:
    """Each use of an unknown food whose last words are a known, raw one."""
    for use in recipe.uses:
        food = use.ingredient
        goods = called_like(food, kitchen)
        if goods is not None:
            # A steak is known as one of beef: of an ostrich that would be no help.
            said = set(nouns(recipe.language).key(food.name.lower().replace("-", " ").split()))
            like = goods.name if said.issuperset(nouns(recipe.language).key(goods.name.split())) else ""
            yield Doubt(food.name, goods.hazard, like, food.name_span, _heat(recipe, use))


def called_like(food: Ingredient, kitchen: Kitchen) -> Goods | None:
    """The raw food that the last words of an unknown one are: a trout for a moonlight trout."""
    if food.goods is not None:
        return None
    words = food.name.lower().replace("-", " ").split()
    if not safety_words(kitchen.language).states.harmless.isdisjoint(words):
        return None
    found = next((f for at in range(1, len(words)) if (f := kitchen.larder.find(words[at:]))), None)
    return found.goods if found and found.goods.hazard in _CALLED else None


def _heat(recipe: Recipe, use: Use) -> str:
    """The degrees that the lines of its component ask for of a food, in their words; "" if they ask for none."""
    for action in recipe.actions[use.action :]:
        if action.component != use.component or recipe.places.lines[action.number].heats:
            continue
        for read in action.reads:
            if isinstance(read, Cue | Target) and core_temperature(read.clause.text, recipe.language) is not None:
                return read.clause.text.strip()
    return ""
