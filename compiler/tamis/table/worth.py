"""One measure said in another kind: spoons in grams, grams in cups, pieces by weight.

Within a kind the units layer converts exactly. Between kinds it takes a fact about the food, and a fact
may be missing or lent by a neighbour; so every answer tells what it rests on, and no answer is an answer
too.
"""

from __future__ import annotations

from typing import NamedTuple

from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient

SPOON_UNITS = frozenset(
    f"{system}{unit}"
    for system in ("", "us_", "metric_", "label_", "imp_", "australian_", "japanese_")
    for unit in ("cup", "tbsp", "tsp")
) | {"dessertspoon"}
# Goods that US cooks weigh; the rest goes in cups and spoons where the density is known (common practice).
US_WEIGHED = frozenset({"meat", "fish", "vegetable", "fruit", "cheese", "piece"})


class Worth(NamedTuple):
    """A measure in another unit; `estimated` by a piece's weight, `by_analogy` by a neighbour's figure."""

    measure: Measure
    estimated: bool = False
    by_analogy: bool = False


def in_grams(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth | None:
    """The measure of this food in grams; None where no density or piece weight is known."""
    unit = kitchen.units.get(measure.unit)
    if unit is None:
        return _pieces_in_grams(measure, item, kitchen)
    if unit.kind == "mass":
        return Worth(Measure(measure.amount.times(unit.factor), "g"))
    density = kitchen.larder.density(item.goods, item.states) if item.goods else None
    if density is None or unit.kind != "volume":
        return None
    grams = measure.amount.times(unit.factor * density.usual)
    return Worth(Measure(grams, "g"), by_analogy=density.analogy)


def _pieces_in_grams(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth | None:
    if item.each is not None:
        each = in_grams(item.each, item._replace(each=None), kitchen)
        if each is None:
            return None
        weight, count = each.measure.amount, measure.amount
        return each._replace(measure=Measure(Amount(weight.lo * count.lo, weight.hi * count.hi), "g"))
    piece = kitchen.larder.piece(item.goods, measure.unit, item.states) if item.goods else None
    if piece is None:
        return None
    return Worth(Measure(measure.amount.times(piece.usual), "g"), True, piece.analogy)


def across(measure: Measure, unit: str, item: Ingredient, kitchen: Kitchen) -> Worth | None:
    """The measure of this food in a unit of another kind (or in pieces); None where facts are missing."""
    worth = in_grams(measure, item, kitchen)
    if worth is None or item.goods is None:
        return None
    grams = worth.measure.amount
    target = kitchen.units.get(unit)
    if target is None:
        piece = kitchen.larder.piece(item.goods, unit, item.states)
        if piece is None:
            return None
        return Worth(Measure(grams.times(1 / piece.usual), unit), True, worth.by_analogy or piece.analogy)
    if target.kind == "mass":
        return worth._replace(measure=Measure(grams.times(1 / target.factor), unit))
    density = kitchen.larder.density(item.goods, item.states)
    if density is None or target.kind != "volume":
        return None
    amount = grams.times(1 / (density.usual * target.factor))
    return Worth(Measure(amount, unit), worth.estimated, worth.by_analogy or density.analogy)


def to_metric(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth:
    """Grams for solids, millilitres for liquids (grams stay); pieces and pinches stay."""
    unit = kitchen.units.get(measure.unit)
    if unit is None or unit.kind not in ("mass", "volume"):
        return Worth(measure)
    plain = unit.system == "metric" and measure.unit not in SPOON_UNITS
    if unit.kind == "mass":
        return Worth(measure if plain else Measure(measure.amount.times(unit.factor), "g"))
    weighed = None if item.goods is None or item.goods.liquid else in_grams(measure, item, kitchen)
    if weighed is not None:
        return weighed
    return Worth(measure if plain else Measure(measure.amount.times(unit.factor), "ml"))


def to_us(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth:
    """Cups and spoons for what US cooks measure, pounds and ounces for the rest; pieces stay."""
    unit = kitchen.units.get(measure.unit)
    if unit is None or unit.kind not in ("mass", "volume"):
        return Worth(measure)
    if unit.system == "us" or measure.unit in SPOON_UNITS:
        return Worth(measure)
    if unit.kind == "mass" and item.goods is not None and item.goods.show not in US_WEIGHED:
        measured = across(measure, "cup", item, kitchen)
        if measured is not None:
            return measured
    target = kitchen.units.get("oz" if unit.kind == "mass" else "cup")
    assert target is not None, "units.txt defines both"
    return Worth(Measure(measure.amount.times(unit.factor / target.factor), target.id))
