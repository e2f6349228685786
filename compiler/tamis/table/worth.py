"""One measure said in another kind: spoons in grams, grams in cups, pieces by weight.

Within a kind the units layer converts exactly. Between kinds it takes a fact about the food, and a fact
may be missing or lent by a neighbour; so every answer tells what it rests on, and no answer is an answer
too.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.food import Goods, Show
from tamis.kitchen.house import Kitchen
from tamis.model.mass import states_as_cut
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.spoons import NEAR
from tamis.quantity.units import Unit
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.words import amount_words
from tamis.typed import Literal

_SYSTEMS = ("", "us_", "metric_", "label_", "imp_", "australian_", "japanese_")
SMALL_SPOONS = frozenset(system + spoon for system in _SYSTEMS for spoon in ("tbsp", "tsp"))
SPOON_UNITS = SMALL_SPOONS.union((f"{system}cup" for system in _SYSTEMS), {"dessertspoon"})
# Goods that US cooks weigh; the rest goes in cups and spoons where the density is known (common practice).
US_WEIGHED: frozenset[Show] = frozenset({"meat", "fish", "vegetable", "fruit", "cheese", "piece"})
DRY: Literal["dry goods"] = "dry goods"

# Spoons of 15 and 5 ml (GNU units 3.15, britishtablespoon; conversion chart of NSW Health); four to a quarter cup,
# from where on a cook takes a jug (common practice).
METRIC_SPOONS = {"tbsp": 15, "tsp": 5}
MOST_SPOONS = 4
# A US quart in ml, less the tolerance (231 cubic inches to the gallon; NIST Handbook 44).
LEAST_QUARTS = 923


class Worth(NamedTuple):
    """A measure in another unit; `estimated` by a piece's weight, `by_analogy` by a neighbour's figure."""

    measure: Measure
    estimated: bool = False
    by_analogy: bool = False


class _Weight(NamedTuple):
    """Grams of one unit of a food, from `lo` to `hi` where the cook wrote a range for a piece."""

    lo: Fraction
    hi: Fraction
    estimated: bool = False
    by_analogy: bool = False


def in_grams(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth | None:
    """The measure of this food in grams; None where no density or piece weight is known."""
    one = _weight(measure.unit, item, kitchen)
    if one is None:
        return None
    there = measure.amount
    amount = there.times(one.lo) if one.lo is one.hi else Amount(there.lo * one.lo, there.hi * one.hi)
    return Worth(Measure(amount, "g"), one.estimated, one.by_analogy)


def across(measure: Measure, unit: str, item: Ingredient, kitchen: Kitchen) -> Worth | None:
    """The measure of this food in a unit of another kind (or in pieces); None where facts are missing."""
    grams = in_grams(measure, item, kitchen)
    one = _weight(unit, item, kitchen, written=False) if grams else None
    if grams is None or one is None:
        return None
    amount = grams.measure.amount
    lo = amount.lo / one.lo
    turned = Amount(lo, lo if amount.lo is amount.hi else amount.hi / one.hi)
    estimated = grams.estimated or one.estimated
    return Worth(Measure(turned, unit), estimated, grams.by_analogy or one.by_analogy)


def _weight(name: str, item: Ingredient, kitchen: Kitchen, written: bool = True) -> _Weight | None:
    """What one of a unit weighs, or one piece: the cook's own weight of it (if `written` may count), else ours."""
    unit = kitchen.units.get(name)
    if unit is not None and unit.kind == "mass":
        return _Weight(unit.factor, unit.factor)
    if unit is None and written and item.each is not None:
        one = _weight(item.each.unit, item, kitchen, written=False)
        each = item.each.amount
        return one._replace(lo=one.lo * each.lo, hi=one.hi * each.hi) if one else None
    if item.goods is None:
        return None
    if unit is None:
        piece = kitchen.larder.piece(item.goods, name, item.states)
        return _Weight(piece.usual, piece.usual, True, piece.analogy) if piece else None
    density = (
        kitchen.larder.density(item.goods, states_as_cut(item, item.goods, kitchen)) if unit.kind == "volume" else None
    )
    if density is None:
        return None
    grams = unit.factor * density.usual
    return _Weight(grams, grams, False, density.analogy)


def to_metric(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth:
    """Grams for solids, millilitres for liquids (grams stay); pieces and pinches stay, but for sticks of butter."""
    unit = kitchen.units.get(measure.unit)
    if measure.unit in amount_words(kitchen.language).stick and item.goods is not None and item.goods.role == "fat":
        weighed = in_grams(measure, item, kitchen)
        return Worth(weighed.measure) if weighed else Worth(measure)
    if unit is None or unit.kind not in ("mass", "volume"):
        return Worth(measure)
    plain = unit.system == "metric" and measure.unit not in SPOON_UNITS
    if unit.kind == "mass":
        return Worth(measure if plain else Measure(measure.amount.times(unit.factor), "g"))
    weighed = None if item.goods is None or item.goods.liquid else in_grams(measure, item, kitchen)
    if weighed is not None:
        return weighed
    solid = item.goods is not None and not item.goods.liquid
    if plain or (measure.unit in SMALL_SPOONS and solid) or _metric_spoons(measure, unit):
        # Nobody measures juniper berries or a teaspoon of vanilla in millilitres; a metric kitchen has spoons.
        return Worth(measure)
    return Worth(Measure(measure.amount.times(unit.factor), "ml"))


def _metric_spoons(measure: Measure, unit: Unit) -> bool:
    """Whether a metric cook's own spoons say it as well: 1 US tbsp is 14.8 ml, and the spoon in the drawer holds 15."""
    spoon = next((ml for ending, ml in METRIC_SPOONS.items() if measure.unit.endswith(ending)), None)
    if spoon is None or abs(unit.factor - spoon) > NEAR * spoon:
        return False
    return measure.amount.hi * unit.factor <= MOST_SPOONS * METRIC_SPOONS["tbsp"]


def to_us(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worth:
    """Cups and spoons for what US cooks measure, pounds and ounces for the rest; pieces stay."""
    unit = kitchen.units.get(measure.unit)
    if unit is None or unit.kind not in ("mass", "volume"):
        return Worth(measure)
    if unit.system == "us" or measure.unit in SPOON_UNITS:
        return Worth(measure)
    if unit.kind == "mass" and item.goods is not None and not _is_weighed(item.goods):
        measured = across(measure, "cup", item, kitchen)
        if measured is not None:
            return measured
    target = kitchen.units.get("oz" if unit.kind == "mass" else _us_volume(measure, unit, item))
    assert target is not None, "units.txt defines them"
    return Worth(Measure(measure.amount.times(unit.factor / target.factor), target.id))


def _is_weighed(goods: Goods) -> bool:
    """Whether US cooks put it on the scale: fruit, but no dried fruit, which they measure as they do nuts."""
    return goods.show in US_WEIGHED and not (goods.show == "fruit" and goods.merchant == DRY)


def _us_volume(measure: Measure, unit: Unit, item: Ingredient) -> str:
    """Quarts from a litre's worth of a liquid on, else cups: nobody counts twelve of them (common practice)."""
    liquid = item.goods is None or item.goods.liquid
    return "quart" if liquid and measure.amount.lo * unit.factor >= LEAST_QUARTS else "cup"
