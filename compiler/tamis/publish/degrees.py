"""A temperature's twin in the other scale.

A reader with a dial in Fahrenheit should not have to count. An oven's knob shows every fifth degree, and recipes in
Fahrenheit use every twenty-fifth, so a setting is given to those; what a thermometer must read is given to the degree,
and never below what was written. There a quarter of a degree Fahrenheit counts as equal: 74 °C is the 165 °F of the
charts (165.2), and no probe tells the two apart.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from tamis.quantity.amount import Amount
from tamis.quantity.degrees import degrees_in
from tamis.quantity.display import oven_c, oven_f
from tamis.quantity.temperature import c_from_f, f_from_c, f_from_gas
from tamis.record import NamedTuple
from tamis.syntax.document import Clause
from tamis.syntax.items import Quantity

OVEN_FROM_C = 100
SAME_F = Fraction(1, 4)
SAME_C = SAME_F * Fraction(5, 9)


class Twin(NamedTuple):
    """The words, and where in the clause's text they go."""

    text: str
    at: int


def twin(clause: Clause, oven: bool) -> Twin | None:
    """The other scale's degrees for the first temperature of a clause; None where both are written, or none is."""
    items = [item for item in clause.items.items if isinstance(item, Quantity)]
    found = [item for item in items if item.kind == "temperature"]
    gas = next((item for item in items if item.kind == "gas"), None)
    if gas is not None and not found:
        return _of_gas(gas)
    if not found or len({degrees.scale for degrees in degrees_in(clause.text, clause.language)}) > 1:
        return None
    amount, fahrenheit = found[0].amount, "f" in found[0].unit.lower()
    return Twin(_shown(amount, fahrenheit, oven), found[0].span.end)


def _of_gas(item: Quantity) -> Twin | None:
    """A gas mark in both scales, as the knobs of other ovens show it."""
    fahrenheit = f_from_gas(item.amount.lo)
    if fahrenheit is None:
        return None
    return Twin(f"{oven_c(c_from_f(fahrenheit))}, {oven_f(fahrenheit)}", item.span.end)


def _shown(amount: Amount, fahrenheit: bool, oven: bool) -> str:
    written = amount[:1] if amount.single else amount
    ends = [c_from_f(end) if fahrenheit else f_from_c(end) for end in written]
    if oven and (ends[0] if fahrenheit else amount.lo) >= OVEN_FROM_C:
        said = [oven_c(end) if fahrenheit else oven_f(end) for end in ends]
    else:
        slack = SAME_C if fahrenheit else SAME_F
        said = [f"{_signed(ceil(end - slack))} °{'C' if fahrenheit else 'F'}" for end in ends]
    return said[0] if amount.single else f"{said[0].split()[0]}–{said[1]}"


def _signed(degree: int) -> str:
    return str(degree) if degree >= 0 else f"−{-degree}"
