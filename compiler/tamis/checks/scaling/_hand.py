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
    """The uses in a line's batch once it is done, by index. `parted`: some of it was parted from another batch, and
    nobody knows how much of each use that was."""

    uses: frozenset[int] = frozenset()
    parted: bool = False


def hands(recipe: Recipe) -> list[Hand]:
    """What each line has in hand."""
    batches: dict[int, set[int]] = {}
    parts: set[int] = set()
    found = [Hand()] * len(recipe.actions)
    for kind, action, number, other, use, _, _ in recipe.history.happenings:
        batch = batches.setdefault(number, set())
        if kind == "food":
            batch.add(use)
        elif kind in ("batch", "by-product"):
            batch |= batches.get(other, set())
        if kind in ("by-product", "lifted") or other in parts:
            parts.add(number)
        found[action] = Hand(frozenset(batch), number in parts)
    return found


def in_pieces(use: Use) -> bool:
    """Whether it lies in the pan as pieces: no fat, no liquid, no spoon of flour or spice."""
    goods = use.ingredient.goods
    return use.in_batch and (goods is None or (goods.show not in ("liquid", "powder", "spice") and goods.role != "fat"))


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
