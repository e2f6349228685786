"""Temperatures as a cook reads them: of food, of ovens, and limits that keep people well."""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.quantity.numerals import decimal, rounded
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction


def temperature_c(value: Fraction | Amount) -> str:
    """Degrees Celsius as written, converted ones to the degree: "180 °C", "97–99 °C", "62.8 °C"."""
    return f"{_degrees(value)} °C"


def temperature_f(value: Fraction | Amount) -> str:
    """Degrees Fahrenheit as written, converted ones to the degree: "350 °F"."""
    return f"{_degrees(value)} °F"


NEAR_OVEN_F = 8
"""180 °C is 356 °F and set as 350, 200 °C is 392 and set as 400 (common practice): no oven is nearer to its mark."""


def oven_c(c: Fraction) -> str:
    """An oven setting in °C to the 5 degrees that its knob shows."""
    return f"{rounded(c, 5)} °C"


def oven_f(f: Fraction) -> str:
    """An oven setting in °F as cooks give it: to the 25 degrees that recipes use where one is near, else to the 5 that
    the knob shows."""
    usual = rounded(f, 25)
    return f"{usual if abs(usual - f) <= NEAR_OVEN_F else rounded(f, 5)} °F"


def limit_c(c: Fraction) -> str:
    """A limit that keeps people well, in °C: as written, or the degree above it, never below."""
    return f"{_up(c)} °C"


def limit_f(f: Fraction) -> str:
    """A limit that keeps people well, in °F: as written, or the degree above it, never below."""
    return f"{_up(f)} °F"


def _degrees(value: Fraction | Amount) -> str:
    if isinstance(value, Amount):
        return _degree(value.lo) if value.single else f"{_degree(value.lo)}–{_degree(value.hi)}"
    return _degree(value)


def _degree(value: Fraction) -> str:
    # A tenth of a degree was written by somebody; anything finer came out of a conversion. Below nought the
    # minus sign.
    shown = value if _tenths(value) else rounded(value, 1)
    return decimal(shown) if shown >= 0 else f"−{decimal(-shown)}"


def _up(value: Fraction) -> str:
    return _degree(value) if _tenths(value) else str(value.__ceil__())


def _tenths(value: Fraction) -> bool:
    return 10 % value.denominator == 0
