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
from tamis.quantity.temperature import c_from_f, f_from_c, f_from_gas
from tamis.quantity.temperature_text import oven_c, oven_f
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.syntax.document import Clause
from tamis.syntax.items import Quantity

OVEN_FROM_C = 100
SAME_F = Fraction(1, 4)
SAME_C = SAME_F * Fraction(5, 9)


class Twin(NamedTuple):
    """The words, and where in the clause's text they go."""

    text: str
    at: int


def twins(clause: Clause, oven: bool) -> list[Twin]:
    """The other scale's degrees for each temperature of a clause; none where both are written."""
    items = [item for item in clause.items.items if isinstance(item, Quantity)]
    found = [item for item in items if item.kind == "temperature"]
    gas = next((item for item in items if item.kind == "gas"), None)
    if gas is not None and not found:
        return _of_gas(gas)
    if not found or len({degrees.scale for degrees in degrees_in(clause.text, clause.language)}) > 1:
        return []
    if "/" in clause.text[found[0].span.end : found[-1].span.start]:
        found = found[:1]  # 200 °C/180 °C fan: the same heat twice
    return [Twin(_shown(item.amount, "f" in item.unit.lower(), oven), item.span.end) for item in found]


def with_twins(text: str, twins: list[Twin]) -> str:
    """A text that begins where its clause does, with the other scale's degrees put in."""
    for twin in reversed(twins):
        if twin.at <= len(text):
            text = f"{text[: twin.at]} ({twin.text}){text[twin.at :]}"
    return text


def _of_gas(item: Quantity) -> list[Twin]:
    """A gas mark in both scales, as the knobs of other ovens show it."""
    fahrenheit = f_from_gas(item.amount.lo)
    if fahrenheit is None:
        return []
    return [Twin(f"{oven_c(c_from_f(fahrenheit))}, {oven_f(fahrenheit)}", item.span.end)]


def _shown(amount: Amount, fahrenheit: bool, oven: bool) -> str:
    written = amount[:1] if amount.single else amount
    ends = [c_from_f(end) if fahrenheit else f_from_c(end) for end in written]
    if oven and (ends[0] if fahrenheit else amount.lo) >= OVEN_FROM_C:
        said = [oven_c(end) if fahrenheit else oven_f(end) for end in ends]
    else:
        said = [_read(at, end, fahrenheit) for at, end in zip(written, ends, strict=True)]
    return said[0] if amount.single else f"{said[0].split()[0]}–{said[1]}"


def _read(written: Fraction, other: Fraction, fahrenheit: bool) -> str:
    """What a thermometer reads: a published limit as its chart prints it, else no less than was written."""
    pairs = rules().pairs
    limits = pairs if fahrenheit else {Fraction(c): int(f) for f, c in pairs.items()}
    slack = SAME_C if fahrenheit else SAME_F
    degree = limits[written] if written in limits else ceil(other - slack)
    return f"{_signed(degree)} °{'C' if fahrenheit else 'F'}"


def _signed(degree: int) -> str:
    return str(degree) if degree >= 0 else f"−{-degree}"
