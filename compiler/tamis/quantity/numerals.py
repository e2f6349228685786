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

# Fractions beyond the signs are still readable as 1/16 or 3/32; past that a decimal is easier.
LARGEST_BOTTOM = 64


def number(value: Fraction) -> str:
    """A number with its kitchen fraction: "1⅜", "⅔", "12"; without such a sign "0.05", "1/16" or decimals."""
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    if rest in SIGNS:
        return (str(whole) if whole else "") + SIGNS[rest]
    if _places(rest) is not None:
        return decimal(value)
    if rest.denominator <= LARGEST_BOTTOM:
        return f"{whole} {rest}" if whole else str(rest)
    return decimal(value)


def decimal(value: Fraction) -> str:
    """A number in decimals: exact where three places can say it, else rounded to three digits that count."""
    places = _places(value)
    if places is None:
        places = 2
        small = abs(value)
        while small and small < 1 and places < MOST_PLACES:
            small, places = small * 10, places + 1
        while small >= 10 and places:
            small, places = small / 10, places - 1
    return fixed(value, places)


MOST_PLACES = 9


def fixed(value: Fraction, places: int) -> str:
    """A number rounded half up to so many places, without closing noughts."""
    scaled = rounded(value, Fraction(1, 10**places)) * 10**places
    whole, rest = divmod(int(scaled), 10**places)
    return f"{whole}.{rest:0{places}}".rstrip("0").rstrip(".") if rest else str(whole)


def rounded(value: Fraction, step: Fraction | int) -> Fraction:
    """The multiple of a step nearest to a number; half-way goes up."""
    return (value / step + Fraction(1, 2)).__floor__() * Fraction(step)


def amount(value: Amount) -> str:
    """A number or a range, in kitchen fractions: "1½", "2–3"."""
    return number(value.lo) if value.single else f"{number(value.lo)}–{number(value.hi)}"


def decimals(value: Amount) -> str:
    """A number or a range, in decimals: "1.5", "60–90"."""
    return decimal(value.lo) if value.single else f"{decimal(value.lo)}–{decimal(value.hi)}"


def _places(value: Fraction) -> int | None:
    """How many decimal places say a number exactly, if three do."""
    for places in range(4):
        if 10**places % value.denominator == 0:
            return places
    return None
