"""Tags that promise something (vegan, gluten-free), held against what is in the dish."""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.records import Claim, Contradiction
from tamis.safety.words import safety_words
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.recipe import Recipe
    from tamis.safety.allergens import Source
    from tamis.safety.data import Promise


def contradictions(recipe: Recipe, foods: list[Source]) -> Iterator[Contradiction]:
    """Each food that breaks a tag's promise, once. What stands as an alternative breaks nothing."""
    for tag in recipe.header.tags:
        promise = rules().tags.get(_name(tag, recipe.language))
        if promise is None:
            continue
        told: set[str] = set()
        for food in foods:
            why = _why(food, promise)
            if why and not food.instead and food.name not in told:
                told.add(food.name)
                yield Contradiction(tag, food.name, why, _span(recipe, food), food.optional)


def claims(
    recipe: Recipe, foods: list[Source], broken: tuple[Contradiction, ...], missing: tuple[str, ...]
) -> Iterator[Claim]:
    """What comes of each tag that promises something; of foods that are not known or `missing` nobody can
    tell."""
    unknown = [food.name for food in foods if not food.known]
    for tag in recipe.header.tags:
        name = _name(tag, recipe.language)
        promise = rules().tags.get(name)
        against = tuple([one.food for one in broken if one.tag == tag])
        if against:
            yield Claim(tag, "contradicted", against, name)
        elif promise is None:
            if _is_claim(_key(tag), recipe.language):
                yield Claim(tag, "unchecked")
        elif not promise.provable:
            yield Claim(tag, "unchecked", promise=name)
        else:
            # Of what another recipe makes the allergens are known, and not each of the foods.
            doubtful = [food.name for food in foods if food.id in promise.makes or (food.dish and promise.foods)]
            nobody_knows = tuple(dict.fromkeys((*unknown, *missing, *doubtful)))
            yield Claim(tag, "unknown" if nobody_knows else "agrees", nobody_knows, name)


def _key(tag: str) -> str:
    return "-".join(tag.lower().split())


def _name(tag: str, language: str) -> str:
    """What the data call the promise of a tag; "" if they have none."""
    return safety_words(language).tags.get(_key(tag), "")


def _is_claim(tag: str, language: str) -> bool:
    """Whether another tag promises something: what ends in *-free*, and what the words of the language name."""
    words = safety_words(language).claims
    return tag not in words.but and (tag in words.also or tag.endswith(words.ends) or tag.startswith(words.begins))


def _why(food: Source, promise: Promise) -> str:
    if food.animal in promise.animal:
        return food.animal
    return next((word for word in food.allergens if word in promise.allergens), promise.foods.get(food.id, ""))


def _span(recipe: Recipe, food: Source) -> Span:
    return recipe.uses[food.use].ingredient.name_span if food.use >= 0 else recipe.header.span("tags")
