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


_SPOILS_COOKED: frozenset[HazardKind] = FLESH | {"rice"}


def item_of(use: Use, index: int, goods: Goods | None, states: States) -> Item | None:
    """The hazard of a use as it goes in; `goods` is the part of it that does (an egg's yolk)."""
    if goods is None or not goods.hazard:
        return None
    food = use.ingredient
    said = _said(food)
    cured = goods.id in rules().goods["cured"]
    if comes_ready(food, states, said):
        again = goods.hazard in _SPOILS_COOKED and not cured and not states.cooked.isdisjoint(said)
        return Item("leftover", food.name or goods.name, index, food.name_span) if again else None
    hazard: HazardKind = "cured-pork" if cured else goods.hazard
    if hazard in ("whole-meat", "pork") and not said.isdisjoint(states.minced):
        hazard = "minced-meat"
    span = food.name_span
    form = _form(said, goods, states)
    if hazard in FLESH and _fine(food, said, states):
        form = "fine"
    return Item(hazard, food.name or goods.name, index, span, form, cured=cured)


def cut_in_line(item: Item, line: set[str], states: States) -> Item:
    """Flesh that its own line cuts: *chop [1 chicken liver] finely*, *cut [500 g stewing beef] into cubes*."""
    if item.form != "piece" or item.hazard not in FLESH or item.hazard == "minced-meat":
        return item
    if not line.isdisjoint(states.fine):
        return item._replace(form="fine")
    return item if line.isdisjoint(states.small) else item._replace(form="small")


def shaped(item: Item) -> Item:
    """Fine pieces that were pressed together: as thick as what was made of them."""
    return item._replace(form="small") if item.form == "fine" else item


def comes_ready(food: Ingredient, states: States, said: set[str] | None = None) -> bool:
    """Whether it comes cooked, tinned or pasteurised: no longer raw. Fish *in oil* is a tin's or a jar's."""
    cans = rules().goods["cans"]
    if not food.part and any([measure.unit in cans for measure in food.measures]):
        return True
    if food.goods and food.goods.show == "fish" and food.preparation.split(",")[0].lower() in states.packed:
        return True
    return not states.ready.isdisjoint(_said(food) if said is None else said)


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
    if goods.id in ids["whites"]:
        return "white"
    if goods.hazard != "egg" or goods.id in ids["part-eggs"]:
        return "piece"
    return "whole" if said.isdisjoint(states.mixed) else "piece"


def _fine(food: Ingredient, said: set[str], states: States) -> bool:
    """Whether it goes in chopped or sliced to a few millimetres. A spoon measures no larger bits."""
    if food.measures and all(measure.unit in rules().goods["spoons"] for measure in food.measures):
        return True
    if food.goods and food.goods.hazard == "minced-meat":
        return False
    return not states.fine.isdisjoint(said | set(food.name.lower().split()))


def _said(food: Ingredient) -> set[str]:
    """The words that tell in which state it goes in."""
    said = set(food.states)
    if food.preparation:
        said.update(food.preparation.replace(",", " ").split())
    return said
