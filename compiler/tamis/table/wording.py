"""A single measure in words, as it stands in a table.

What a cook wrote is printed as written; what came out of a sum or a conversion is said in measures that a
kitchen has: 1 tbsp and 1 tsp are not 1⅓ tbsp, and 1000 g are a kilogram.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from functools import reduce

from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.display import (
    decimals,
    grams,
    kitchen_volume,
    millilitres,
    pounds_ounces,
    quarts,
    rounded,
    single_spoon,
    spoons,
    written,
)
from tamis.quantity.measure import Measure
from tamis.quantity.measure_words import MeasureWords, measure_words
from tamis.quantity.nouns import nouns
from tamis.quantity.units import Unit, Units
from tamis.reading.clauses import Ingredient
from tamis.table.adding import scaled
from tamis.table.words import AmountWords, amount_words
from tamis.table.worth import SPOON_UNITS

# The spoons in the drawer, by the parts of one; other volumes are said with several of them.
TSP_TO_TBSP = 3
SPOON_PARTS = {"tsp": (1, 2, 3, 4, 8), "tbsp": (1, 2), "cup": (1, 2, 3, 4)}


def measure_text(measure: Measure, name: str, units: Units) -> str:
    """A sum in its own units. `name` is the food's: where it holds the count noun, the number is enough."""
    unit = units.get(measure.unit)
    if unit is None:
        return written_text(measure, name, units.language)
    if unit.kind == "mass":
        show = grams if unit.system == "metric" else pounds_ounces
        return ends(measure.amount.times(unit.factor), show, units.language)
    return _volume(measure, unit, units) if unit.kind == "volume" else written(measure, units.language)


def written_text(measure: Measure, name: str, language: str) -> str:
    """A measure as the cook wrote it: `4` before `garlic cloves`, `4 cloves` before `garlic`."""
    if measure.unit and nouns(language).singular(name.lower().rpartition(" ")[2]) == measure.unit:
        measure = measure._replace(unit="")
    return written(measure, language)


def written_all(measures: tuple[Measure, ...], name: str, language: str) -> str:
    """Measures of one food that the cook wrote together: "1 cup plus 2 tbsp", "1 lb 8 oz"."""
    compound = [measure.unit for measure in measures] == ["lb", "oz"]
    said = [written_text(measure, name, language) for measure in measures]
    return " ".join(said) if compound else together(said, language)


def amount_text(measures: tuple[Measure, ...], item: Ingredient, kitchen: Kitchen) -> str:
    """What goes in at one place: "100 g", "1 cup plus 2 tbsp", "72 % of the flour"; empty for no measure."""
    if not measures:
        return item.vague or percent_text(item, kitchen.language)
    if [measure.unit for measure in measures] == ["lb", "oz"]:
        return written_all(measures, item.name, kitchen.language)
    return together([measure_text(measure, item.name, kitchen.units) for measure in measures], kitchen.language)


def together(said: Sequence[str], language: str) -> str:
    """Several measures of one food: "1 cup plus 2 tbsp"; empty for none."""
    plus = measure_words(language).plus
    return reduce(lambda first, second: plus.format(first=first, second=second), said) if said else ""


def alternative_text(item: Ingredient, kitchen: Kitchen) -> str:
    """What may be taken instead: "5 g instant yeast"."""
    return f"{amount_text(scaled(item, Fraction(1)), item, kitchen)} {item.name}".lstrip()


def percent_text(item: Ingredient, language: str, of_flour: bool = True) -> str:
    """A measure that hangs on another weight: "2 % of its weight", "18 g per kg of the duck". That it hangs on the
    flour need not be said where it is plain."""
    if item.percent is None:
        return ""
    words, parts, of = amount_words(language), measure_words(language), item.percent.of
    unsaid = of in words.flour and not of_flour
    if item.percent.per_kg is not None:
        each, base = written(item.percent.per_kg, language), _rate_text(item, language)
        said = parts.per if of in words.own or unsaid else parts.per_of
        return said.format(measure=each, base=base, food=of)
    percent = f"{decimals(item.percent.amount)} %"
    return percent if unsaid else parts.percent.format(percent=percent, base=_base_text(of, words, parts))


def _rate_text(item: Ingredient, language: str) -> str:
    """What a rate is of: "kg", "litre", "100 g"."""
    base = item.percent.base if item.percent else None
    if base is None:
        return "kg"
    if base.amount.lo != 1:
        return written(base, language)
    return base.unit


def _base_text(of: str, words: AmountWords, parts: MeasureWords) -> str:
    """What a percentage is of: "the flour", "their weight", "the cabbage’s weight"."""
    if of in words.own:
        return parts.own_weight.format(own=of)
    if of in words.flour:
        return parts.flour.format(flour=of)
    return (parts.weight_s if of.endswith(("'", "’")) else parts.weight).format(food=of.rstrip("'’"))


def _volume(measure: Measure, unit: Unit, units: Units) -> str:
    if measure.unit in SPOON_UNITS:
        parts = SPOON_PARTS.get(measure.unit, SPOON_PARTS["cup"])
        at_hand = measure.amount.lo.denominator in parts and measure.amount.hi.denominator in parts
        if at_hand and not (measure.unit == "tsp" and measure.amount.lo >= TSP_TO_TBSP):
            return written(measure, units.language)
        return _spoons(measure.amount.times(unit.factor), units)
    if measure.unit == "quart" and any(end.denominator > 2 for end in measure.amount):
        ml = measure.amount.times(unit.factor)
        if len({quarts(end, units).rpartition(" ")[2] for end in ml}) > 1:
            return _spoons(ml, units)  # both ends in cups
        return ends(ml, lambda end: quarts(end, units), units.language)
    if unit.system == "metric":
        return ends(measure.amount.times(unit.factor), millilitres, units.language)
    return written(_as_a_jug_shows(measure, unit, units), units.language)


_FEW, _MANY = 2, 40


def _as_a_jug_shows(measure: Measure, unit: Unit, units: Units) -> Measure:
    """A sum of pints and spoons to what a jug shows: a quarter of a fluid ounce, from 2 on a half, from two pints on
    a quarter of its own unit. What comes out in halves, thirds, quarters and eighths stays."""
    imperial = unit.system == "imperial"
    ounce = units.get("imp_fl_oz" if imperial else "fl_oz") if imperial or unit.system == "us" else None
    if ounce is None or all(end.denominator in (1, 2, 3, 4, 8) for end in measure.amount):
        return measure
    ounces = measure.amount.times(unit.factor / ounce.factor)
    if ounces.hi >= _MANY:
        lo, hi = (rounded(end, Fraction(1, 4)) for end in measure.amount)
        return Measure(Amount(lo, hi), measure.unit) if lo else measure
    lo, hi = (rounded(end, Fraction(1, 4 if ounces.hi < _FEW else 2)) for end in ounces)
    return Measure(Amount(lo, hi), ounce.id) if lo else measure


def _spoons(ml: Amount, units: Units) -> str:
    """Cups and spoons; for a range one measure at each end, where two of them would be more exact than the cook is."""
    exact = ends(ml, lambda end: kitchen_volume(end, units), units.language)
    if ml.single or not any(spoons(end, units).two for end in ml):
        return exact
    said = [single_spoon(end, units) or kitchen_volume(end, units) for end in ml]
    plainer = dict(zip(ml, said, strict=True))
    return ends(ml, plainer.__getitem__, units.language) if said[0] != said[1] else exact


def ends(amount: Amount, show: Callable[[Fraction], str], language: str) -> str:
    """A number shown, or a range with its unit once: "60–90 g"."""
    if amount.single:
        return show(amount.lo)
    lo, hi = show(amount.lo), show(amount.hi)
    low, _, low_unit = lo.partition(" ")
    high, _, high_unit = hi.partition(" ")
    if " " not in high_unit and nouns(language).singular(low_unit) == nouns(language).singular(high_unit):
        return f"{low}–{high} {high_unit}" if low != high else hi
    return measure_words(language).between.format(low=lo, high=hi)
