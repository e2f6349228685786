"""Egg that other food is dipped in, brushed or rolled in: a film on its outside, which a fried crust proves done.

A filling, a custard that bread soaks up, and egg that is stirred in are none: their middle is what must get hot.
"""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.heatings import HOT
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.model.recipe import Action, Recipe, Use
    from tamis.safety.records import Item


def coats(recipe: Recipe, action: Action, at: int) -> bool:
    """Whether a line puts what it names at an offset on the outside of other food, or that into it."""
    verb = next((use.verb.base for use in reversed(action.verbs) if use.span.start < at), "")
    in_a_pan = recipe.places.lines[action.number].came_from in HOT  # *coat [the potatoes] with [3 eggs]*: an omelette
    return verb in rules().verbs["dips"] or (verb in rules().verbs["paints"] and not in_a_pan)


def is_thin(recipe: Recipe, egg: Iterable[int], foods: Iterable[int]) -> bool:
    """Whether egg is little beside foods (the uses of both). What soaks it up, or weighs nobody knows how much, is not
    known to be coated."""
    egg = set(egg)
    coated = [recipe.uses[use] for use in foods if use not in egg]
    firm = sum(use.mass.lo for use in coated if not _soaks_up(use))
    return 0 < sum(recipe.uses[use].mass.hi for use in egg) <= firm * rules().keeping["film"]


def filmed(item: Item) -> Item:
    """Egg that lies on the outside from now on."""
    return item._replace(form="film") if item.hazard == "egg" and not item.cleared else item


def _soaks_up(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.merchant in rules().goods["soaks_up"]
