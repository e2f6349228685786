"""How much of a food a hint may speak of: an example that could stand in a recipe.

20 g of butter is a piece to fry in; 20 g of nutmeg is poison.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.food import Show
    from tamis.kitchen.goods import Goods

_BY_KIND: dict[Show, str] = {"spice": "¼ tsp", "herb": "1 tbsp", "liquid": "2 tbsp"}


def likely(goods: Goods | None) -> str:
    """A small measure as cooks write it for food of this kind (common practice)."""
    if goods is None:
        return "20 g"
    if goods.salt:
        return "½ tsp"
    if goods.hazard == "egg" and goods.pieces:
        return "1"
    if goods.role == "water":
        return "100 ml"
    return "2 tbsp" if goods.liquid else _BY_KIND.get(goods.show, "20 g")
