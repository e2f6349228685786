"""What lies in the pan at a line: its weight, its pieces and its liquid."""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.scaling._scene import practice
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Use


def in_pieces(use: Use) -> bool:
    """Whether it lies in the pan as pieces: no fat, no liquid, no spoon of flour or spice."""
    goods = use.ingredient.goods
    return use.in_batch and (goods is None or (goods.show not in ("liquid", "powder", "spice") and goods.role != "fat"))


def _liquid(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.wet


def grams(recipe: Recipe, uses: Iterable[int]) -> Fraction:
    """What these uses weigh together, as far as that is known."""
    return sum((recipe.uses[index].mass.hi for index in uses), Fraction(0))


def liquid(recipe: Recipe, uses: Iterable[int]) -> Fraction:
    """How much of these is liquid, in grams."""
    return grams(recipe, (index for index in uses if _liquid(recipe.uses[index])))


def sweet(recipe: Recipe, uses: Iterable[int]) -> bool:
    """Whether so much of these is sugar that it boils up, and keeps."""
    found = list(uses)
    foods = ((index, recipe.uses[index].ingredient.goods) for index in found)
    sugar = grams(recipe, (index for index, goods in foods if goods is not None and goods.role == "sugar"))
    return bool(sugar) and sugar >= grams(recipe, found) * practice().amounts["rises"]


def whole(size: Fraction) -> int:
    """Whole grams or millilitres, of a little one: this is done often, and fractions take their time."""
    return -(-size.numerator // size.denominator)


def tended(action: Action, verbs: frozenset[str], kitchen: Kitchen) -> bool:
    """Whether a line's tending is one of these works: `stirring often`."""
    for tending in action.tending:
        words = tending.text.lower().split()
        phrases = (" ".join(words[:size]) for size in range(len(words), 0, -1))
        verb = next((verb for phrase in phrases if (verb := kitchen.verbs.present(phrase)) is not None), None)
        if verb is not None and verb.base in verbs:
            return True
    return False
