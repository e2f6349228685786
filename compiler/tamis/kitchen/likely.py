"""How much of a food a hint may speak of: an example that could stand in a recipe.

20 g of butter is a piece to fry in; 20 g of nutmeg is poison.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import exactly
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.food import Show
    from tamis.kitchen.goods import Goods

_BY_KIND: dict[Show, Measure] = {
    "spice": Measure(exactly(Fraction(1, 4)), "tsp"),
    "herb": Measure(exactly(1), "tbsp"),
    "liquid": Measure(exactly(2), "tbsp"),
}
_SALT = Measure(exactly(Fraction(1, 2)), "tsp")
_WATER, _OTHER = Measure(exactly(100), "ml"), Measure(exactly(20), "g")


def likely(goods: Goods | None, name: str, language: str) -> str:
    """A small measure as cooks write it for food of this kind (common practice); of what is counted, one or two."""
    from tamis.quantity.display import written

    return written(_likely(goods, name, language), language)


def _likely(goods: Goods | None, name: str, language: str) -> Measure:
    if goods is None:
        return _OTHER
    if goods.salt:
        return _SALT
    if goods.show in ("spice", "herb"):
        return _BY_KIND[goods.show]
    if not goods.liquid and any(not piece.word for piece in goods.pieces):
        return Measure(exactly(2 if is_plural(name, language) else 1), "")
    if goods.role == "water":
        return _WATER
    return _BY_KIND["liquid"] if goods.liquid else _BY_KIND.get(goods.show, _OTHER)


def is_plural(name: str, language: str) -> bool:
    """Whether a food is called by its plural: eggs, spring onions."""
    last = name.lower().split(" ")[-1]
    return nouns(language).singular(last) != last
