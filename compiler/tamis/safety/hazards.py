"""Which hazard an ingredient brings, as it is written: raw, tinned, cooked, minced, whole."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.safety.data import rules
from tamis.safety.records import Form, Item

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Use
    from tamis.reading.clauses import Ingredient

FLESH = frozenset(("poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "cured-pork", "stuffing"))
"""What a board or a knife can carry over from."""


def item_of(use: Use, index: int, goods: Goods | None) -> Item | None:
    """The hazard of a use as it goes in; `goods` is the part of it that does (an egg's yolk)."""
    if goods is None or not goods.hazard:
        return None
    food = use.ingredient
    said = _said(food)
    if _ready(food, said):
        return None
    cured = goods.id in rules().words["cured"]
    hazard = "cured-pork" if cured else goods.hazard
    if hazard in ("whole-meat", "pork") and not said.isdisjoint(("minced", "ground")):
        hazard = "minced-meat"
    span = food.name_span
    return Item(hazard, food.name or goods.name, index, span, _form(said, goods), cured=cured)


def _ready(food: Ingredient, said: set[str]) -> bool:
    """Whether it comes cooked, tinned or pasteurised: no longer raw."""
    words = rules().words
    if any(measure.unit in words["cans"] for measure in food.measures) and not food.part:
        return True
    return not said.isdisjoint(words["ready"])


def _form(said: set[str], goods: Goods) -> Form:
    """How it goes in: an egg as it is or beaten, a bird whole, meat in one piece or small. Time at a simmer and a
    cue mean something else for each."""
    words = rules().words
    if not said.isdisjoint(words["small"]) or not said.isdisjoint(("cut", "jointed")):
        return "small"
    if goods.id in words["large"]:
        return "large"
    if goods.id in words["birds"]:
        return "whole"
    if goods.hazard != "egg" or goods.id in ("egg-yolk", "egg-white"):
        return "piece"
    return "whole" if said.isdisjoint(("beaten", "whisked", "separated", "mixed")) else "piece"


def _said(food: Ingredient) -> set[str]:
    """The words that tell in which state it goes in."""
    return {*food.states, *food.preparation.replace(",", " ").split()}
