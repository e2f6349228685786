"""What lies in the pan at a line: the uses in its batch, what goes in there, and the liquid."""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Use


class Hand(NamedTuple):
    """The uses in a line's batch once it is done, by index; `medium` tells that they lie in water or the like that is
    there for boiling, and no part of the dish."""

    uses: frozenset[int] = frozenset()
    medium: bool = False


def hands(recipe: Recipe) -> list[Hand]:
    """What each line has in hand."""
    batches: dict[int, set[int]] = {}
    found = [frozenset[int]()] * len(recipe.actions)
    for kind, action, number, other, use, _, _ in recipe.history.happenings:
        batch = batches.setdefault(number, set())
        if kind == "food":
            batch.add(use)
        elif kind in ("batch", "by-product"):
            batch |= batches.get(other, set())
        found[action] = frozenset(batch)
    return [Hand(uses, medium) for uses, medium in zip(found, _media(recipe), strict=True)]


def _media(recipe: Recipe) -> list[bool]:
    """Of each line whether its food lies in something for boiling: of its own component, or of one that it names. What
    was drained lies there no more."""
    water: dict[str, bool] = {}
    named = {component.number: component.name.casefold() for component in recipe.components}
    found = []
    for action in recipe.actions:
        own = named[action.component]
        foods = (recipe.uses[index] for index in action.uses)
        poured = any(not use.in_batch and _liquid(use) for use in foods)
        held = any(tool.contains for tool in action.tools)
        called = (getattr(read, "name", "").casefold() for read in action.reads)
        water[own] = water.get(own, False) or poured or any(water.get(name) for name in called)
        found.append(water[own] or held)
        if any(use.verb.separates for use in action.verbs):
            water[own] = False
    return found


def _liquid(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.liquid and goods.role != "fat"


def grams(recipe: Recipe, uses: Iterable[int]) -> Fraction:
    """What these uses weigh together, as far as that is known."""
    return sum((recipe.uses[index].mass.hi for index in uses), Fraction(0))


def liquid(recipe: Recipe, uses: Iterable[int]) -> Fraction:
    """How much of these is liquid, in grams."""
    return grams(recipe, (index for index in uses if _liquid(recipe.uses[index])))


def tended(action: Action, verbs: frozenset[str], kitchen: Kitchen) -> bool:
    """Whether a line's tending is one of these works: `stirring often`."""
    for tending in action.tending:
        words = tending.text.lower().split()
        phrases = (" ".join(words[:size]) for size in range(len(words), 0, -1))
        verb = next((verb for phrase in phrases if (verb := kitchen.verbs.present(phrase)) is not None), None)
        if verb is not None and verb.base in verbs:
            return True
    return False
