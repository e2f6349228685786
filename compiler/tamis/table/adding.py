"""Adding up the measures of one food.

`300 g` and `210 g` are 510 g; `3/4 tsp` and `1 1/2 tsp` are 2¼ tsp; `1 cup` and `50 g` need the food's
density, and without one the honest sum is "1 cup plus 50 g". The first measure decides the unit, but what is spooned
here and weighed there is weighed; ranges add end by end.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from tamis.kitchen.house import Kitchen
from tamis.model.recipe import Use
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, plus
from tamis.quantity.units import Units
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.worth import SMALL_SPOONS, SPOON_UNITS, across, in_grams


class Sums(NamedTuple):
    """What a food's uses add up to; the fields are as in a table's row."""

    total: tuple[Measure, ...]
    also: tuple[Measure, ...] = ()
    estimated: bool = False
    by_analogy: bool = False


def add_up(uses: Sequence[Use], kitchen: Kitchen) -> Sums:
    """The sum of one food's uses, repeats counted.

    Zest here and juice there come off one lemon, so of what parts are taken off only the largest counts.
    """
    item, times = uses[0].ingredient, uses[0].times
    if len(uses) == 1 and len(item.measures) < 2 and len(item.also) < 2:
        return Sums(scaled(item, times), scale(item.also, times))
    whole, parts = _Adder(kitchen), dict[str, _Adder]()
    for use in _weighed_first(uses, kitchen):
        part = use.ingredient.part
        adder = parts.setdefault(part, _Adder(kitchen)) if part else whole
        adder.add(use.ingredient, use.times)
    if parts:
        whole.add_largest(parts.values())
    return Sums(tuple(whole.total), tuple(whole.also or ()), whole.estimated, whole.by_analogy)


def _weighed_first(uses: Sequence[Use], kitchen: Kitchen) -> Sequence[Use]:
    """The uses with those that are weighed before those in spoons, where these can be said in grams."""
    if not any(_weighed(use.ingredient, kitchen) for use in uses):
        return uses
    spooned = [use for use in uses if use.ingredient.measures and use.ingredient.measures[0].unit in SMALL_SPOONS]
    if any(in_grams(use.ingredient.measures[0], use.ingredient, kitchen) is None for use in spooned):
        return uses
    return sorted(uses, key=lambda use: use in spooned)


def _weighed(item: Ingredient, kitchen: Kitchen) -> bool:
    return bool(item.measures) and is_mass(item.measures[0], kitchen.units)


class _Adder:
    """A running sum of a food's measures. `also` is None once a use came without a second measure."""

    __slots__ = ("also", "by_analogy", "estimated", "kitchen", "total")

    def __init__(self, kitchen: Kitchen) -> None:
        self.kitchen = kitchen
        self.total: list[Measure] = []
        self.also: list[Measure] | None = []
        self.estimated = False
        self.by_analogy = False

    def add(self, item: Ingredient, times: Fraction) -> None:
        """Add an ingredient's measures, so many times. Of two measures the one that fits the sum counts."""
        measures, also = scaled(item, times), scale(item.also, times)
        if also and self.total and self._fits(also) and not self._fits(measures):
            measures, also = also, measures
        for measure in measures:
            if not self._put(self.total, measure):
                self._convert(measure, item)
        if not also:
            self.also = None
        for measure in also:
            if self.also is not None and not self._put(self.also, measure):
                self.also.append(measure)

    def add_largest(self, parts: Iterable[_Adder]) -> None:
        """Add what the parts need, unit by unit the largest, end by end."""
        largest: dict[str, Amount] = {}
        for part in parts:
            self.estimated |= part.estimated
            self.by_analogy |= part.by_analogy
            self.also = None
            for measure in part.total:
                old = largest.get(measure.unit, measure.amount)
                hi = max(old.hi, measure.amount.hi)
                largest[measure.unit] = Amount(max(old.lo, measure.amount.lo), hi)
        for unit, amount in largest.items():
            if not self._put(self.total, Measure(amount, unit)):
                self.total.append(Measure(amount, unit))

    def _fits(self, measures: tuple[Measure, ...]) -> bool:
        """Whether all of these can be said exactly in the sum's unit."""
        return all(plus(self.total[0], measure, self.kitchen.units) is not None for measure in measures)

    def _put(self, sums: list[Measure], measure: Measure) -> bool:
        """Add to the first sum of the same kind, exactly."""
        for at, there in enumerate(sums):
            first, second = (measure, there) if self._by_ml(there, measure) else (there, measure)
            added = plus(first, second, self.kitchen.units)
            if added is not None:
                sums[at] = added
                return True
        return False

    def _by_ml(self, there: Measure, measure: Measure) -> bool:
        """Whether a sum of spoons goes over to millilitres, because another use is written in them."""
        if there.unit == measure.unit or there.unit not in SMALL_SPOONS:
            return False
        unit = self.kitchen.units.get(measure.unit)
        metric = unit is not None and unit.kind == "volume" and unit.system == "metric"
        return metric and measure.unit not in SPOON_UNITS

    def _convert(self, measure: Measure, item: Ingredient) -> None:
        """Add by way of the food's density or the weight of a piece; else open a sum of its own. What is bought by the
        tin is no part of what is bought fresh, nor the other way round."""
        is_tin = self.kitchen.cupboard.is_tin
        alike = bool(self.total) and is_tin(measure.unit) == is_tin(self.total[0].unit)
        worth = across(measure, self.total[0].unit, item, self.kitchen) if alike else None
        if worth is None:
            self.total.append(measure)
            return
        self._put(self.total, worth.measure)
        self.estimated |= worth.estimated
        self.by_analogy |= worth.by_analogy


def scaled(item: Ingredient, times: Fraction) -> tuple[Measure, ...]:
    """Its measures, so many times. A count noun (`4 garlic cloves`) is their unit; a percentage may have none."""
    if item.piece_word:
        return tuple(m if m.unit else m._replace(unit=item.piece_word) for m in scale(item.measures, times))
    return scale(item.measures, times)


def scale(measures: tuple[Measure, ...], times: Fraction) -> tuple[Measure, ...]:
    """Measures, so many times over."""
    if not measures or times == 1:
        return measures
    return tuple(measure.times(times) for measure in measures)


def is_mass(measure: Measure, units: Units) -> bool:
    """Whether a measure is a weight."""
    unit = units.get(measure.unit)
    return unit is not None and unit.kind == "mass"
