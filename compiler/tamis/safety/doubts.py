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

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Use
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
            # A steak is known as one of beef: of an ostrich that would be no help.
            said = set(nouns(recipe.language).key(words))
            like = found.goods.name if said.issuperset(nouns(recipe.language).key(found.goods.name.split())) else ""
            yield Doubt(food.name, found.goods.hazard, like, food.name_span, _heat(recipe, use))


def _heat(recipe: Recipe, use: Use) -> str:
    """The degrees that the lines of its component ask for of a food, in their words; "" if they ask for none."""
    for action in recipe.actions[use.action :]:
        if action.component != use.component or recipe.places.lines[action.number].heats:
            continue
        for read in action.reads:
            if isinstance(read, Cue | Target) and core_temperature(read.clause.text, recipe.language) is not None:
                return read.clause.text.strip()
    return ""
