"""What food is cooked in: whether it grows with the food, or is decided by the pot.

One pot of water serves batch after batch, and so does a deep panful of fat; a film of fat is used up by each. What is
deep is told by the words, by a thermometer, or by the amount; between a film and a panful nobody knows.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.scaling._scene import Medium, practice
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from tamis.checks.scaling._scene import Why
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Use


def staying(recipe: Recipe, kitchen: Kitchen) -> tuple[Medium, ...]:
    """The foods for a purpose whose amount does not grow with a recipe, in order of the text."""
    return tuple(_staying(recipe, kitchen))


def _staying(recipe: Recipe, kitchen: Kitchen) -> Iterator[Medium]:
    from tamis.words import word_lists

    aside = [use for use in recipe.uses if use.ingredient.purpose and not use.in_batch]
    purposes = word_lists(recipe.language, "scaling")["purposes"] if aside else {}
    again = _pots(recipe) if aside else frozenset()
    for use in aside:
        purpose, goods = use.ingredient.purpose, use.ingredient.goods
        fat = goods is not None and goods.role == "fat"
        if purpose.startswith(purposes["steam"]):
            yield Medium(use.ingredient, "steam")
        elif purpose.startswith(purposes["frying"]):
            why = _depth(recipe, use, purposes, kitchen)
            if why:
                yield Medium(use.ingredient, why)
        elif use.action in again and not fat and purpose.startswith(purposes["boiling"]):
            yield Medium(use.ingredient, "batches")


def _depth(recipe: Recipe, use: Use, purposes: Mapping[str, tuple[str, ...]], kitchen: Kitchen) -> Why | None:
    """Whether fat for frying is deep; None for a film, which each batch uses up."""
    amounts, action = practice().amounts, recipe.actions[use.action]
    deep = purposes["deep"]
    if use.ingredient.purpose.endswith(deep) or _fries_deep(recipe, action):
        return "deep"
    if any(not set(deep).isdisjoint(tool.clause.text.lower().split()) for tool in action.tools):
        return "deep"
    size, food = use_size(use, kitchen), _fried(recipe, action)
    if not size or not food or food * amounts["film"] < size < food * amounts["deep"]:
        return "unclear"
    return "deep" if size >= food * amounts["deep"] else None


def _fried(recipe: Recipe, action: Action) -> Fraction:
    """The most that lies in the fat at once, in grams: of what is fried in batches, one of them."""
    from tamis.checks.scaling._hand import grams

    hands = recipe.history.hands(len(recipe.actions))
    lines = [line for line in recipe.actions[action.number :] if line.component == action.component]
    return max(grams(recipe, hands[line.number].uses) / line.batches for line in lines)


def use_size(use: Use, kitchen: Kitchen) -> Fraction:
    """Its weight, or what its measures come to in grams or millilitres where nothing tells the weight."""
    from tamis.quantity.measure import grams, millilitres

    if use.mass.hi:
        return use.mass.hi
    units = kitchen.units
    found = (grams(measure, units) or millilitres(measure, units) for measure in use.ingredient.measures)
    known = [amount.hi for amount in found if amount is not None]
    return sum(known, Fraction(0)) * use.times * use.fraction


def _fries_deep(recipe: Recipe, action: Action) -> bool:
    """Whether a later line says so by its verb, or a thermometer stands in the fat: it is brought to its degrees where
    it goes in, or in the line after."""
    lines = [line for line in recipe.actions[action.number :] if line.component == action.component]
    if any(line.work.verb in practice().verbs["deep-frying"] for line in lines):
        return True
    degrees = [target.celsius for line in lines[:2] for target in line.targets]
    return any(celsius is not None and celsius.lo > practice().amounts["hot fat"] for celsius in degrees)


def _pots(recipe: Recipe) -> frozenset[int]:
    """The lines that fill a pot in which a later one boils in batches."""
    verbs, found = practice().verbs["poaching"], set[int]()
    for line in recipe.actions:
        if line.batches > 1 and line.work.verb in verbs:
            own = (action.number for action in recipe.actions[: line.number] if action.component == line.component)
            found.update((line.number, *line.after, *own))
    return frozenset(found)
