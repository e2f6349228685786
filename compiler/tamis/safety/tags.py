"""Tags that promise something (vegan, gluten-free), held against what is in the dish."""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.records import Contradiction
from tamis.safety.words import safety_words
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.recipe import Recipe
    from tamis.safety.allergens import Source


def contradictions(recipe: Recipe, foods: list[Source]) -> Iterator[Contradiction]:
    """Each food that breaks a tag's promise, once. What stands as an alternative breaks nothing."""
    promises = safety_words(recipe.language).tags
    for tag in recipe.header.tags:
        promised = rules().tags.get(promises.get("-".join(tag.lower().split()), ""))
        if promised is None:
            continue
        told: set[str] = set()
        for food in foods:
            why = _why(food, *promised)
            if why and not food.instead and food.name not in told:
                told.add(food.name)
                yield Contradiction(tag, food.name, why, _span(recipe, food), food.optional)


def _why(food: Source, animal: frozenset[str], allergens: frozenset[str]) -> str:
    if food.animal in animal:
        return food.animal
    return next((word for word in food.allergens if word in allergens), "")


def _span(recipe: Recipe, food: Source) -> Span:
    return recipe.uses[food.use].ingredient.name_span if food.use >= 0 else recipe.header.span("tags")
