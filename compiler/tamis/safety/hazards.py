"""Which hazard an ingredient brings, as it is written: raw, tinned, cooked, minced, whole."""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.records import Form, HazardKind, Item
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Use
    from tamis.reading.clauses import Ingredient
    from tamis.safety.words import States

FLESH: frozenset[HazardKind] = frozenset(
    ("poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "cured-pork", "stuffing")
)
"""What a board or a knife can carry over from."""


def item_of(use: Use, index: int, goods: Goods | None, states: States) -> Item | None:
    """The hazard of a use as it goes in; `goods` is the part of it that does (an egg's yolk)."""
    if goods is None or not goods.hazard:
        return None
    food = use.ingredient
    said = _said(food)
    if comes_ready(food, states):
        return None
    cured = goods.id in rules().goods["cured"]
    hazard: HazardKind = "cured-pork" if cured else goods.hazard
    if hazard in ("whole-meat", "pork") and not said.isdisjoint(states.minced):
        hazard = "minced-meat"
    span = food.name_span
    return Item(hazard, food.name or goods.name, index, span, _form(said, goods, states), cured=cured)


def comes_ready(food: Ingredient, states: States) -> bool:
    """Whether it comes cooked, tinned or pasteurised: no longer raw."""
    cans = rules().goods["cans"]
    if any(measure.unit in cans for measure in food.measures) and not food.part:
        return True
    return not states.ready.isdisjoint(_said(food))


def _form(said: set[str], goods: Goods, states: States) -> Form:
    """How it goes in: an egg as it is or beaten, a bird whole, meat in one piece or small. Time at a simmer and a
    cue mean something else for each."""
    ids = rules().goods
    if not said.isdisjoint(states.small):
        return "small"
    if goods.id in ids["large"]:
        return "large"
    if goods.id in ids["birds"]:
        return "whole"
    if goods.hazard != "egg" or goods.id in ids["part-eggs"]:
        return "piece"
    return "whole" if said.isdisjoint(states.mixed) else "piece"


def _said(food: Ingredient) -> set[str]:
    """The words that tell in which state it goes in."""
    return {*food.states, *food.preparation.replace(",", " ").split()}
