"""Weights and millilitres without false precision.

A cup of flour that comes out at 136.9372 g is "137 g": what a test kitchen prints and a kitchen scale
shows. But a figure that is whole was written so by somebody, and is left alone: 502 g stay 502 g.
Everything printed lies within 1 % of the exact figure, or within half of the scale's last digit where that
is more (under 10 g: 0.05 g; under 50 g: ½ g).
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.numerals import decimal, fixed, number, rounded

POUND = Fraction(45359237, 100000)  # g, exact: the international pound of 1959 (UCUM [lb_av])
OUNCE = POUND / 16
TENTH = Fraction(1, 10)
WRITTEN = 1000
"""What is written in ounces, and multiplied, has no longer denominator; what is turned from grams has."""
# Ounces under so many are weighed in such steps.
OUNCE_STEPS = ((2, Fraction(1, 8)), (16, Fraction(1, 4)), (64, Fraction(1, 2)), (160, Fraction(1)))


def grams(g: Fraction) -> str:
    """A mass in g for a cook: "0.4 g", "7.5 g", "510 g", "1.2 kg"."""
    return _metric(g, "g", "kg")


def millilitres(ml: Fraction) -> str:
    """A volume in ml for a cook: "2.5 ml", "237 ml", "1.2 l"."""
    return _metric(ml, "ml", "l")


def _metric(value: Fraction, small: str, large: str) -> str:
    shown = _sensible(value)
    if shown.numerator < 1000 * shown.denominator:
        return f"{decimal(shown)} {small}"
    # Two places up to 10 kg: the worst slip is 5 g in a kilogram.
    return f"{fixed(value / 1000, 2 if value < 10_000 else 1)} {large}"


def _sensible(value: Fraction) -> Fraction:
    top, bottom = value.numerator, value.denominator
    if bottom == 1:
        return value
    if top * 10 < bottom:
        return _one_digit(value)
    if top < 10 * bottom:
        return rounded(value, TENTH)
    if bottom == 2 and top < 100 * bottom:
        return value
    return rounded(value, 1 if top <= 500 * bottom else 5)


def _one_digit(value: Fraction) -> Fraction:
    """Saffron and the like: some digit must remain, or a thing that is there would print as nothing."""
    step = Fraction(1, 100)
    while 0 < value < step and step.denominator < 10**9:
        step /= 10
    return rounded(value, step)


def half_pounds(ounces: Fraction) -> Fraction | None:
    """The half pounds that a weight in grams is within 1 % of: 900 g are 2 lb; None where it is of none, or was
    written in ounces."""
    if ounces.denominator <= WRITTEN:
        return None
    half = rounded(ounces, 8)
    return half if half and abs(half - ounces) * 100 <= ounces else None


def pounds_ounces(g: Fraction) -> str:
    """A mass in g as US and old British cooks weigh: "¾ oz", "8½ oz", "1 lb 8 oz", "12 lb".

    Ounces to the eighth under 2 oz, to the quarter under a pound, to the half under 4 lb, whole up to 10 lb,
    then quarter pounds; half pounds that are near enough before all of these. What rounds to no ounces at all is given
    in grams.
    """
    exact = g / OUNCE
    ounces = half_pounds(exact) or rounded(exact, _ounce_step(exact))
    if not ounces and g:
        return grams(g)
    pounds = ounces.numerator // (16 * ounces.denominator)
    if pounds >= 10:
        return f"{number(ounces / 16)} lb"
    if not pounds:
        return f"{number(ounces)} oz"
    rest = ounces - 16 * pounds
    return f"{pounds} lb {number(rest)} oz" if rest else f"{pounds} lb"


def _ounce_step(ounces: Fraction) -> Fraction:
    for under, step in OUNCE_STEPS:
        if ounces.numerator < under * ounces.denominator:
            return step
    return Fraction(4)
