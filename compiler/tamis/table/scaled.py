"""Scaled measures as a cook can measure them.

Seven eighths of 1½ tsp is an exact number and no spoon. A measure that was multiplied is therefore never printed as it
stands: weights lose false precision, volumes become the cups and spoons of the drawer, and pieces come in halves,
thirds and quarters.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.display import kitchen_volume, number, pounds_ounces, written
from tamis.quantity.measure import Measure, base, plus
from tamis.quantity.measure_words import measure_words
from tamis.quantity.numerals import rounded
from tamis.quantity.units import Units
from tamis.quantity.weights import OUNCE, half_pounds
from tamis.table.wording import measure_text, together, written_text
from tamis.table.worth import SMALL_SPOONS, SPOON_UNITS

PIECE_PARTS = (1, 2, 3, 4, 8)
MANY = 10
"""From here on pieces are whole: nobody takes 23⅓ prawns."""
MOST_TBSP = 8
"""More tablespoons than this are measured with a cup."""


def scaled_text(measures: tuple[Measure, ...], name: str, units: Units) -> str:
    """Measures of one food, added where they can be: "1 lb 3 oz", "½ cup", "2⅔", "about 1¾ cloves".

    `name` is the food's: where it holds the count noun, the number is enough.
    """
    sums: list[Measure] = []
    for measure in measures:
        added = plus(sums[-1], measure, units) if sums else None
        sums[-1:] = [added] if added is not None else [*sums[-1:], measure]
    return together([_one(measure, name, units) for measure in sums], units.language)


def _one(measure: Measure, name: str, units: Units) -> str:
    unit = units.get(measure.unit)
    if unit is not None and unit.kind == "nominal":
        return written_text(Measure(pinches(measure.amount), measure.unit), name, units.language)
    if unit is None:
        return _pieces(measure, name, units.language)
    if measure.unit in SPOON_UNITS and not _drawer_spoons(measure):
        worth = base(measure, units)
        if worth is not None and worth.single:
            return kitchen_volume(worth.lo, units)
        if measure.unit in SMALL_SPOONS:
            # Two ends in cups and spoons each would be a sentence of their own.
            return written(measure._replace(amount=Amount(*map(countable, measure.amount))), units.language)
    if unit.kind == "mass" and unit.system != "metric" and measure.amount.single:
        return pounds_quarters(measure.amount.lo * unit.factor)
    return measure_text(measure, name, units)


def pinches(amount: Amount) -> Amount:
    """So many pinches, to the half: nobody weighs one, so nobody takes three quarters of it."""
    half = Fraction(1, 2)
    return Amount(*[max(rounded(end, half), half) for end in amount])


def pounds_quarters(g: Fraction) -> str:
    """A scaled weight in pounds and ounces to the quarter ounce, as quantity cooks round: "4 lb 5½ oz".

    .00-.12 is none, .13-.37 a quarter, .38-.62 a half, .63-.87 three quarters (US Armed Forces Recipe Service,
    guideline card A-1). Under a pound and from ten pounds on, where that would be too coarse or too fine, as any
    weight.
    """
    pounds, rest = divmod(half_pounds(g / OUNCE) or rounded(g / OUNCE, Fraction(1, 4)), 16)
    if not 1 <= pounds < MANY:
        return pounds_ounces(g)
    return f"{pounds} lb {number(rest)} oz" if rest else f"{pounds} lb"


def _drawer_spoons(measure: Measure) -> bool:
    """Whether this is so many tablespoons, whole or with a half, that one would count them out."""
    few = measure.unit == "tbsp" and 1 <= measure.amount.lo <= measure.amount.hi <= MOST_TBSP
    return few and all(end.denominator in (1, 2) for end in measure.amount)


def _pieces(measure: Measure, name: str, language: str) -> str:
    """A count as near as a cook can cut: exact in halves, thirds, quarters and eighths, else about."""
    lo, hi = countable(measure.amount.lo), countable(measure.amount.hi)
    shown = written_text(Measure(Amount(lo, hi), measure.unit), name, language)
    return shown if (lo, hi) == measure.amount else measure_words(language).about.format(measure=shown)


def countable(value: Fraction) -> Fraction:
    """The count that can be cut: as it is, the nearest quarter, from ten on the nearest whole; never nothing."""
    if value >= MANY:
        return rounded(value, 1)
    if value.denominator in PIECE_PARTS:
        return value
    return max(rounded(value, Fraction(1, 4)), Fraction(1, 4))
