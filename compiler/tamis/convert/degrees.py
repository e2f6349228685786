"""A temperature on every scale that a kitchen has.

An oven's knob shows every fifth degree and a gas oven only marks, so a setting is rounded to what can be set; a
thermometer is read to the degree. Where the figure is a limit that keeps people well it must not be rounded below
itself, so that reading is told apart.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from tamis.convert.asked import Degrees
from tamis.convert.words import Wanted, degree_words
from tamis.quantity.amount import Amount
from tamis.quantity.display import number, oven_c, oven_f
from tamis.quantity.numerals import fixed
from tamis.quantity.temperature import (
    c_from_f,
    c_from_fan,
    c_from_gas,
    f_from_c,
    fan_from_c,
    gas_from_f,
)
from tamis.record import NamedTuple

# Below this no oven is set, above it no food is (common practice: from a low oven to a pizza oven).
OVEN_C = (Fraction(80), Fraction(320))
# Between what is kept hot and what is well cooked a figure may be a limit (FDA Food Code: 135–165 °F).
LIMITS_C = (Fraction(54), Fraction(80))


class Heat(NamedTuple):
    """A temperature, exact: in °C, the conventional oven's setting where it is one."""

    c: Amount

    @property
    def f(self) -> Amount:
        """The same in °F."""
        return Amount(f_from_c(self.c.lo), f_from_c(self.c.hi))

    @property
    def oven(self) -> bool:
        """Whether an oven may be set to it."""
        return OVEN_C[0] <= self.c.lo and self.c.hi <= OVEN_C[1]


def heat_of(asked: Degrees) -> Heat | None:
    """What was asked, in °C; None for a gas mark that no oven has, or what is colder than cold can be."""
    low, high = _celsius(asked.amount.lo, asked), _celsius(asked.amount.hi, asked)
    if low is None or high is None or low < Fraction("-273.15") or low > high:
        return None
    return Heat(Amount(low, high))


def _celsius(value: Fraction, asked: Degrees) -> Fraction | None:
    if asked.scale == "gas":
        return c_from_gas(value)
    c = c_from_f(value) if asked.scale == "f" else value
    return c_from_fan(c) if asked.fan else c


def heat_lines(heat: Heat, asked: Degrees, language: str) -> list[tuple[str, str]]:
    """Label and words for each scale."""
    lines = [
        ("Celsius", _through(heat.c, lambda c: f"{_tenth(c)} °C")),
        ("Fahrenheit", _through(heat.f, lambda f: f"{_tenth(f)} °F")),
    ]
    if heat.oven:
        lines += _oven(heat, language)
    elif LIMITS_C[0] <= heat.c.lo and heat.c.hi < LIMITS_C[1] and asked.amount.single:
        limit = f"{heat.c.lo.__ceil__()} °C" if asked.scale == "f" else f"{heat.f.lo.__ceil__()} °F"
        lines.append(("rounded up", f"{limit} on a thermometer that shows whole degrees"))
    return lines


def _oven(heat: Heat, language: str) -> list[tuple[str, str]]:
    fan = Amount(fan_from_c(heat.c.lo), fan_from_c(heat.c.hi))
    fan_f = Amount(f_from_c(fan.lo), f_from_c(fan.hi))
    lines = [
        ("oven", f"{_through(heat.c, oven_c)}, {_through(heat.f, oven_f)}"),
        ("fan oven", f"{_through(fan, oven_c)}, {_through(fan_f, oven_f)}: 20 °C lower (NSW Health)"),
    ]
    low, high = gas_from_f(heat.f.lo), gas_from_f(heat.f.hi)
    if low is not None and high is not None:
        lines.append(("gas mark", number(low) if low == high else f"{number(low)}–{number(high)}"))
    words = [word for word, ends in degree_words(language).heats.items() if _near(ends, heat.f)]
    if words:
        lines.append(("old term", f"{' or '.join(words)} oven (NIST)"))
    return lines


def _near(ends: tuple[int, int], f: Amount) -> bool:
    # A span is taken a little wide, a single figure to half the way to its neighbours: nobody set these to the degree.
    slack = 4 if ends[0] < ends[1] else 20
    return ends[0] - slack <= f.lo and f.hi <= ends[1] + slack


def in_scale(heat: Heat, wanted: Wanted) -> str | None:
    """The heat on one scale; None where no oven has such a mark."""
    if wanted == "c":
        return _through(heat.c, lambda c: f"{_tenth(c)} °C")
    if wanted == "f":
        return _through(heat.f, lambda f: f"{_tenth(f)} °F")
    if wanted == "fan":
        return _through(Amount(fan_from_c(heat.c.lo), fan_from_c(heat.c.hi)), lambda c: f"{oven_c(c)} fan")
    marks = (gas_from_f(heat.f.lo), gas_from_f(heat.f.hi))
    return f"gas mark {number(marks[0])}" if marks[0] is not None and marks[0] == marks[1] else None


def _tenth(value: Fraction) -> str:
    return fixed(value, 1) if value >= 0 else f"−{fixed(-value, 1)}"


def _through(amount: Amount, show: Callable[[Fraction], str]) -> str:
    low, high = show(amount.lo), show(amount.hi)
    return low if low == high else f"{low.partition(' ')[0]}–{high}"
