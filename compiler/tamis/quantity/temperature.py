"""Temperatures: Celsius, Fahrenheit, gas marks, and ovens with a fan.

The scales are exact (°F = °C × 9/5 + 32: UCUM [degF]); gas marks are a convention that printed tables round
as they like in Celsius but agree on in Fahrenheit. So marks are exact in Fahrenheit here, and everything
else follows from that.
"""

from __future__ import annotations

from fractions import Fraction

# A fan oven is set this much lower: 20 °C (conversion chart of NSW Health).
FAN_C = Fraction(20)
_F_IN_C, _C_IN_F = Fraction(5, 9), Fraction(9, 5)

# Below mark 1 the line bends: a quarter is 225 °F, a half 250 °F (gas mark table of sizes.com; GNU units
# 3.15, gasmark).
LOW_MARKS = {Fraction(1, 4): Fraction(225), Fraction(1, 2): Fraction(250)}
TOP_MARK = 10


def f_from_c(c: Fraction) -> Fraction:
    """Degrees Fahrenheit of degrees Celsius, exact."""
    return c * _C_IN_F + 32


def c_from_f(f: Fraction) -> Fraction:
    """Degrees Celsius of degrees Fahrenheit, exact."""
    return (f - 32) * _F_IN_C


def f_from_gas(mark: Fraction) -> Fraction | None:
    """Degrees Fahrenheit of a gas mark: 275 at mark 1 and 25 more for each (GNU units 3.15, gasmark).

    None for what no oven has: marks are ¼, ½ and 1 to 10, halves between them included.
    """
    if mark in LOW_MARKS:
        return LOW_MARKS[mark]
    if 1 <= mark <= TOP_MARK and (mark * 2).denominator == 1:
        return 25 * (mark - 1) + 275
    return None


def gas_from_f(f: Fraction) -> Fraction | None:
    """The gas mark nearest to degrees Fahrenheit (the lower of two as near): ¼, ½, 1, 2 … 10.

    None where no mark is within half a step, 12.5 °F.
    """
    marks = [*LOW_MARKS, *(Fraction(mark) for mark in range(1, TOP_MARK + 1))]
    best = min(marks, key=lambda mark: abs((f_from_gas(mark) or 0) - f))
    found = f_from_gas(best)
    return best if found is not None and abs(found - f) <= Fraction(25, 2) else None


def c_from_gas(mark: Fraction) -> Fraction | None:
    """Degrees Celsius of a gas mark, exact by way of Fahrenheit; None for what no oven has."""
    f = f_from_gas(mark)
    return c_from_f(f) if f is not None else None


def fan_from_c(c: Fraction) -> Fraction:
    """What a fan oven is set to for the work of a conventional one, in °C (chart of NSW Health)."""
    return c - FAN_C


def c_from_fan(c: Fraction) -> Fraction:
    """What a conventional oven is set to for the work of a fan oven, in °C."""
    return c + FAN_C
