"""Numbers as a cook reads them.

Spoons and cups come in halves, thirds, quarters and eighths, and are printed so: ⅓ cup, never 0.333 cup.
Metric measures are decimal: 1.5 kg, never 1½ kg. `number` prints the first kind and `decimal` the second;
both print exactly what they are given if their way of writing can.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.number import VULGAR

SIGNS = {Fraction(*parts): sign for sign, parts in VULGAR.items() if parts[0]}

# Worked in whole numbers below: a page prints hundreds of figures, and each step of a `Fraction` is dear.
_SIGNS = {(value.numerator, value.denominator): sign for value, sign in SIGNS.items()}

# Fractions beyond the signs are still readable as 1/16 or 3/32; past that a decimal is easier.
LARGEST_BOTTOM = 64


def number(value: Fraction | int) -> str:
    """A number with its kitchen fraction: "2⅜", "⅔", "12"; without such a sign "0.05", "1/16" or decimals."""
    bottom = value.denominator
    whole, rest = divmod(value.numerator, bottom)
    if not rest:
        return str(whole)
    if (rest, bottom) in _SIGNS:
        return (str(whole) if whole else "") + _SIGNS[rest, bottom]
    if bottom <= LARGEST_BOTTOM and _places(bottom) is None:
        return f"{whole} {rest}/{bottom}" if whole else f"{rest}/{bottom}"
    return decimal(value)


def decimal(value: Fraction | int) -> str:
    """A number in decimals: exact where three places can say it, else rounded to three digits that count."""
    if value.denominator == 1:
        return str(value.numerator)
    places = _places(value.denominator)
    if places is None:
        places = 2
        top, bottom = abs(value.numerator), value.denominator
        while top < bottom and places < MOST_PLACES:
            top, places = top * 10, places + 1
        while top >= bottom * 10 and places:
            bottom, places = bottom * 10, places - 1
    return fixed(value, places)


MOST_PLACES = 9


def fixed(value: Fraction | int, places: int) -> str:
    """A number rounded half up to so many places, without closing noughts."""
    unit, bottom = 10**places, value.denominator
    whole, rest = divmod((2 * value.numerator * unit + bottom) // (2 * bottom), unit)
    return f"{whole}.{rest:0{places}}".rstrip("0").rstrip(".") if rest else str(whole)


def rounded(value: Fraction, step: Fraction | int) -> Fraction:
    """The multiple of a step nearest to a number; half-way goes up."""
    top, bottom = value.numerator * step.denominator, value.denominator * step.numerator
    return Fraction((2 * top + bottom) // (2 * bottom) * step.numerator, step.denominator)


def amount(value: Amount) -> str:
    """A number or a range, in kitchen fractions: "1½", "2–3"."""
    return number(value.lo) if value.single else f"{number(value.lo)}–{number(value.hi)}"


def decimals(value: Amount) -> str:
    """A number or a range, in decimals: "1.5", "60–90"."""
    return decimal(value.lo) if value.single else f"{decimal(value.lo)}–{decimal(value.hi)}"


def _places(bottom: int) -> int | None:
    """How many decimal places say a number with this denominator exactly, if three do."""
    for places in range(4):
        if 10**places % bottom == 0:
            return places
    return None
