"""Exact numbers in the words of the markup.

A scaled recipe must be a recipe: its text compiles again, and what it then says must be the exact product and not a
rounded one. So a number is written in decimals where they say it exactly, else as a fraction.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import Amount
from tamis.quantity.number import MOST_DIGITS, is_kitchen_fraction
from tamis.quantity.numerals import SIGNS, fixed

PLACES = 3


def exact(value: Fraction, decimals: bool) -> str:
    """A number that reads back as itself: "1.5" or, without `decimals`, "1 1/2"; "33 1/3".

    Beyond the digits that the markup takes, the nearest number that it can say.
    """
    whole, rest = divmod(value, 1)
    if not rest:
        return str(whole)
    as_decimal = 10**PLACES % rest.denominator == 0
    if as_decimal and (decimals or rest not in SIGNS):
        return fixed(value, PLACES)
    plain = not whole and is_kitchen_fraction(rest.numerator, rest.denominator)
    text = str(rest) if plain else f"{whole} {rest}"  # `0 4/7`, since `4/7` may be a range
    if sum(letter.isdigit() for letter in text) > MOST_DIGITS:
        return fixed(value, max(0, min(6, MOST_DIGITS - len(str(whole)))))
    return text


def exact_amount(value: Amount, decimals: bool) -> str:
    """A number or a range, as `exact` writes them."""
    if value.single:
        return exact(value.lo, decimals)
    return f"{exact(value.lo, decimals)}–{exact(value.hi, decimals)}"


def factor_text(factor: Fraction) -> str:
    """The factor as a cook reads it: "1.5", "⅔", "1.32"."""
    if factor in SIGNS and factor.denominator in (3, 6):
        return SIGNS[factor]
    return fixed(factor, 2) if factor >= 1 else fixed(factor, 3)
