"""How much of a food a hint may speak of: an example that could stand in a recipe.

20 g of butter is a piece to fry in; 20 g of nutmeg is poison.
"""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.food import Show
    from tamis.kitchen.goods import Goods

_BY_KIND: dict[Show, str] = {"spice": "¼ tsp", "herb": "1 tbsp", "liquid": "2 tbsp"}


def likely(goods: Goods | None, name: str, language: str) -> str:
    """A small measure as cooks write it for food of this kind (common practice); of what is counted, one or two."""
    if goods is None:
        return "20 g"
    if goods.salt:
        return "½ tsp"
    if goods.show in ("spice", "herb"):
        return _BY_KIND[goods.show]
    if not goods.liquid and any(not piece.word for piece in goods.pieces):
        return "2" if is_plural(name, language) else "1"
    if goods.role == "water":
        return "100 ml"
    return "2 tbsp" if goods.liquid else _BY_KIND.get(goods.show, "20 g")


def is_plural(name: str, language: str) -> bool:
    """Whether a food is called by its plural: eggs, spring onions."""
    last = name.lower().split(" ")[-1]
    return nouns(language).singular(last) != last
