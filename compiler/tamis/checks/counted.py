"""Foods with a bare number before them: whether such food is counted at all, or a unit was lost.

The food's own data answer: what is poured, sifted or ground has no pieces; of what is counted, the weight of one is
known. Where the data are silent, the number and the noun speak: five hundred of a noun in the singular are grams.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.food import Goods, Show
    from tamis.kitchen.house import Kitchen
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Ingredient

Count = Literal["pieces", "measured", "unweighed"]
"""What a bare number counts: pieces; nothing, for such food is measured; pieces of which nobody knows the weight, if
pieces they are."""

_LOOSE: tuple[Show, ...] = ("liquid", "powder", "grain")
_SMALL: tuple[Show, ...] = ("spice", "herb")
"""Taken by the spoon, unless the word is that for one of them: peppercorns, sage leaves."""
_FISH: Show = "fish"
_BIRD, _FAT = "poultry", "fat"
_FLOCK = 20
"""So many fish or birds may stand in the singular: 12 trout, 6 grouse."""
MANY = 50
"""So many of a noun in the singular are grams; of fewer, pieces may be meant."""


def bare(food: Ingredient) -> Amount | None:
    """The number of a food without a unit; None where there is one, or where it counts things of a said size."""
    sized = food.each or food.part or food.size
    if sized or len(food.measures) != 1 or food.measures[0].unit or food.goods is None:
        return None
    return food.measures[0].amount


def counted(food: Ingredient, goods: Goods, number: Amount, kitchen: Kitchen) -> Count:
    """What a bare number before a food counts."""
    larder = kitchen.larder
    if goods.liquid or goods.flour or larder.is_minced(goods, food.states):
        return "measured"
    if larder.piece(goods, "", food.states):
        return "pieces"
    if goods.show in _LOOSE:
        return "measured"
    if food.also or food.prepared or any(larder.is_piece(word, goods) for word in food.name.lower().split(" ")):
        return "pieces"
    if is_several(food, goods, kitchen.language):
        return "unweighed" if goods.show == "spice" else "pieces"
    if is_small(goods) or goods.role == _FAT or number.lo >= MANY:
        return "measured"
    least = _FLOCK if goods.show == _FISH or goods.hazard == _BIRD else 1
    return "unweighed" if number.hi > least else "pieces"


def is_small(goods: Goods) -> bool:
    """Whether a food is taken by the spoon."""
    return goods.salt or goods.leavener or goods.show in _SMALL


def is_several(food: Ingredient, goods: Goods, language: str) -> bool:
    """Whether a food is called by its plural, and is known by its singular: carrots, but no oats."""
    return _several(food.name, language) and not _several(goods.name, language)


def _several(name: str, language: str) -> bool:
    """Whether a word of a name is a plural: *legs of lamb*, *carrots*."""
    from tamis.kitchen.likely import is_plural

    return any(is_plural(word, language) for word in name.lower().split(" "))


def with_unit(food: Ingredient, unit: str) -> str:
    """The food's bracket with a unit behind its number, as code."""
    text, number = food.clause.text, food.measure_text
    return f"`[{text.replace(number, f'{number} {unit}', 1)}]`"
