"""How a row's measures read: as written, metric, and US.

A reader wants the amount in the units of the own kitchen, and the cook's own figure wherever it is in
them: `420 g (3 cups)` is 420 g here and 3 cups there, whatever a density table says. Only what was not
written is converted. A figure lent by a neighbour is marked ≈, a sum that rests on the usual weight of a
piece says *about*.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import NamedTuple

from tamis.kitchen.house import Kitchen
from tamis.kitchen.words import singular
from tamis.quantity.amount import Amount
from tamis.quantity.display import decimal, grams, kitchen_volume, millilitres, pounds_ounces, written
from tamis.quantity.measure import Measure, plus
from tamis.quantity.units import Unit, Units
from tamis.reading.clauses import Ingredient
from tamis.table.adding import scale, scaled
from tamis.table.rows import Row
from tamis.table.worth import SPOON_UNITS, Worth, to_metric, to_us

Turn = Callable[[Measure, Ingredient, Kitchen], Worth]
# What a cook reads off the spoons in the drawer; other sums go by cups and spoons together.
SPOON_PARTS = {"tsp": (1, 2, 3, 4, 8), "tbsp": (1, 2), "cup": (1, 2, 3, 4)}


class Shown(NamedTuple):
    """A row's amount in three ways; empty where the cook gave no measure."""

    written: str
    metric: str
    us: str


def shown(row: Row, kitchen: Kitchen) -> Shown:
    """How a row's amount reads as written, in metric and in US units."""
    if not row.total:
        return Shown(_percent(row.first), "", "")
    return Shown(_as_written(row, kitchen), _turned(row, to_metric, kitchen), _turned(row, to_us, kitchen))


def amount_text(measures: tuple[Measure, ...], item: Ingredient, kitchen: Kitchen) -> str:
    """What goes in at one place: "100 g", "1 cup plus 2 tbsp"; empty for no measure."""
    if not measures:
        return _percent(item)
    return " plus ".join(measure_text(measure, item.name, kitchen.units) for measure in measures)


def alternative_text(item: Ingredient, kitchen: Kitchen) -> str:
    """What may be taken instead: "5 g instant yeast"."""
    words = [amount_text(scaled(item, Fraction(1)), item, kitchen), *item.states, item.name]
    return " ".join(word for word in words if word)


def measure_text(measure: Measure, name: str, units: Units) -> str:
    """A sum in its own units, as a cook would write it. `name` may hold the count noun already."""
    unit = units.get(measure.unit)
    if unit is None:
        return _pieces(measure, name)
    if unit.kind == "mass":
        show = grams if unit.system == "metric" else pounds_ounces
        return _ends(measure.amount.times(unit.factor), show)
    return _volume(measure, unit, units) if unit.kind == "volume" else written(measure)


def _volume(measure: Measure, unit: Unit, units: Units) -> str:
    amount = measure.amount.times(unit.factor)
    if measure.unit in SPOON_UNITS:
        parts = SPOON_PARTS.get(measure.unit, (1, 2, 3, 4))
        if measure.amount.lo.denominator in parts and measure.amount.hi.denominator in parts:
            return written(measure)
        return _ends(amount, lambda ml: kitchen_volume(ml, units))
    return _ends(amount, millilitres) if unit.system == "metric" else written(measure)


def _pieces(measure: Measure, name: str) -> str:
    if measure.unit and singular(name.lower().rpartition(" ")[2]) == measure.unit:
        measure = measure._replace(unit="")
    return written(measure)


def _ends(amount: Amount, show: Callable[[Fraction], str]) -> str:
    """A number shown, or a range with its unit once: "60–90 g"."""
    if amount.single:
        return show(amount.lo)
    lo, hi = show(amount.lo), show(amount.hi)
    low, _, low_unit = lo.partition(" ")
    high, _, high_unit = hi.partition(" ")
    if low_unit.removesuffix("s") == high_unit.removesuffix("s") and " " not in high_unit:
        return f"{low}–{high} {high_unit}"
    return lo if lo == hi else f"{lo} to {hi}"


def _percent(item: Ingredient) -> str:
    if item.percent is None:
        return ""
    if item.percent.per_kg is not None:
        return f"{written(item.percent.per_kg)} per kg of the {item.percent.of}"
    low, high = decimal(item.percent.amount.lo), decimal(item.percent.amount.hi)
    share = low if low == high else f"{low}–{high}"
    return f"{share} % of its weight" if item.percent.of == "its" else f"{share} % of the {item.percent.of}"


def _as_written(row: Row, kitchen: Kitchen) -> str:
    """The cook's own figures where one measure makes up the row; else the sum."""
    if row.once is None:
        text = _joined(row.total, row, kitchen.units)
        also = _joined(row.also, row, kitchen.units)
        hedge = "about " if row.estimated or any(use.item.about for use in row.uses) else ""
        return ("≈ " if row.by_analogy else hedge) + (f"{text} ({also})" if also else text)
    item = row.first
    text = " plus ".join(_pieces(measure, row.name) for measure in scaled(item, row.once))
    also = " plus ".join(written(measure) for measure in scale(item.also, row.once))
    each = f"{written(item.each)} each" if item.each else ""
    left = f"{written(item.prepared.times(row.once))} {item.prepared_word}".rstrip() if item.prepared else ""
    aside = ", ".join(word for word in (item.size, also, each, left) if word)
    return ("about " if item.about else "") + (f"{text} ({aside})" if aside else text)


def _joined(measures: tuple[Measure, ...], row: Row, units: Units) -> str:
    return " and ".join(measure_text(measure, row.name, units) for measure in measures)


def _turned(row: Row, turn: Turn, kitchen: Kitchen) -> str:
    """The row's amount in other units: pieces stay, with their weight turned where the cook gave one."""
    if row.also and kitchen.units.get(row.total[0].unit) is not None:
        own = all(turn(measure, row.first, kitchen).measure == measure for measure in row.total)
        fits = all(turn(measure, row.first, kitchen).measure == measure for measure in row.also)
        if fits and not own:
            return _joined(row.also, row, kitchen.units)
    worths = _worths(row, turn, kitchen)
    text = _joined(tuple(worth.measure for worth in worths), row, kitchen.units)
    if kitchen.units.get(row.total[0].unit) is None:
        text += _aside(row, turn, kitchen)
    if row.by_analogy or any(worth.by_analogy for worth in worths):
        return f"≈ {text}"
    return f"about {text}" if row.estimated or any(use.item.about for use in row.uses) else text


def _worths(row: Row, turn: Turn, kitchen: Kitchen) -> list[Worth]:
    """The sum turned; where the food is in several states, each use by its own density."""
    if row.parts or len({use.item.states for use in row.uses if use.buys}) == 1:
        return [turn(measure, row.first, kitchen) for measure in row.total]
    sums: list[Worth] = []
    for use in row.uses:
        for measure in use.amount:
            worth = turn(measure, use.item, kitchen)
            _put(sums, worth, kitchen.units)
    return sums


def _put(sums: list[Worth], worth: Worth, units: Units) -> None:
    for at, there in enumerate(sums):
        added = plus(there.measure, worth.measure, units)
        if added is not None:
            sums[at] = Worth(added, False, there.by_analogy or worth.by_analogy)
            return
    sums.append(worth)


def _aside(row: Row, turn: Turn, kitchen: Kitchen) -> str:
    """The written weight of pieces, in other units: " (140–200 g each)"."""
    also = [turn(measure, row.first, kitchen).measure for measure in row.also]
    words = [_joined(tuple(also), row, kitchen.units)] if also else []
    if row.once is not None and row.first.each is not None:
        each = turn(row.first.each, row.first, kitchen).measure
        words.append(measure_text(each, row.name, kitchen.units) + " each")
    return f" ({', '.join(words)})" if words else ""
