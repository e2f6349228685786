"""A measure: so much of a unit.

A recipe gives some things by weight, some by volume, some by the clove, and some by the piece. What they
have in common is an amount and a unit; whether one can be turned into another depends on the unit. Within a
kind (mass, volume, time, length) the turn is exact; between kinds it needs a food's density, which this
layer does not know; and a clove or a pinch stays what it is.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.units import Unit, UnitKind, Units
from tamis.record import NamedTuple
from tamis.typed import Literal

# The unit each kind is counted in.
BASES: dict[UnitKind, str] = {"mass": "g", "volume": "ml", "time": "s", "length": "mm"}


class Measure(NamedTuple):
    """So much of a unit: `unit` is a unit's id, a count word ("clove", "sprig", "can"), or "" for pieces."""

    amount: Amount
    unit: str

    def times(self, factor: Fraction | int) -> Measure:
        """The measure scaled by a number that is not negative."""
        return Measure(self.amount.times(factor), self.unit)


def known(measure: Measure, units: Units) -> Unit | None:
    """The unit of a measure if it has a standard size, else None (pieces, count words, pinches)."""
    unit = units.get(measure.unit)
    return unit if unit is not None and unit.kind in BASES else None


def kind(measure: Measure, units: Units) -> UnitKind | Literal["count"]:
    """mass, volume, time or length; nominal for a pinch and its like; count for pieces and count words."""
    unit = units.get(measure.unit)
    return unit.kind if unit is not None else "count"


def base(measure: Measure, units: Units) -> Amount | None:
    """The amount in g, ml, s or mm, exact; None if the unit has no standard size."""
    unit = known(measure, units)
    return measure.amount.times(unit.factor) if unit is not None else None


def grams(measure: Measure, units: Units) -> Amount | None:
    """The amount in grams, exact; None if the measure is no mass."""
    return base(measure, units) if kind(measure, units) == "mass" else None


def millilitres(measure: Measure, units: Units) -> Amount | None:
    """The amount in millilitres, exact; None if the measure is no volume."""
    return base(measure, units) if kind(measure, units) == "volume" else None


def convert(measure: Measure, unit: str, units: Units) -> Measure | None:
    """The same measure in another unit of its kind, exact; None between kinds and without standard size."""
    here, there = known(measure, units), units.get(unit)
    if here is None or there is None or here.kind != there.kind:
        return None
    return Measure(measure.amount.times(here.factor / there.factor), there.id)


def plus(one: Measure, other: Measure, units: Units) -> Measure | None:
    """The sum in the first measure's unit, exact; None if the second cannot be said in it."""
    same = other if one.unit == other.unit else convert(other, one.unit, units)
    return Measure(one.amount.plus(same.amount), one.unit) if same is not None else None
