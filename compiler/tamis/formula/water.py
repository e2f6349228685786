"""How warm the water must be for a dough of the wanted temperature.

Of all that goes into a dough only the water's temperature is easily chosen, so it has to make up for a cold room, warm
flour and the heat of the mixing. The trade takes all parts as equal: with n temperatures that count (flour, room, water
and, if there is one, the preferment), n times the wanted dough is their sum and the friction. Published by baking
schools and in the US Navy baking manual. The sum holds in °C and in °F alike, as long as all figures and the friction
are in one scale.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple
from tamis.typed import Literal

Scale = Literal["C", "F"]

# Common practice: bread yeast is weakened from about 43 °C (110 °F) on; water below freezing is ice.
FREEZING: dict[Scale, Fraction] = {"C": Fraction(0), "F": Fraction(32)}
TOO_WARM: dict[Scale, Fraction] = {"C": Fraction(43), "F": Fraction(110)}


class Bench(NamedTuple):
    """What is measured before mixing, in degrees of one scale; `preferment` None where there is none."""

    flour: Fraction
    room: Fraction
    preferment: Fraction | None = None

    @property
    def sum(self) -> Fraction:
        """All of them together."""
        return self.flour + self.room + (self.preferment or 0)

    @property
    def factor(self) -> int:
        """How many temperatures count, the water's included: 3, or 4 with a preferment."""
        return 3 if self.preferment is None else 4


def water_for(dough: Fraction, bench: Bench, friction: Fraction = Fraction(0)) -> Fraction:
    """The water's temperature for a dough of a wanted one; `friction` in degrees of the same scale."""
    return bench.factor * dough - bench.sum - friction


def dough_with(water: Fraction, bench: Bench, friction: Fraction = Fraction(0)) -> Fraction:
    """The dough that water of a temperature gives."""
    return (bench.sum + water + friction) / bench.factor


def friction_of(dough: Fraction, water: Fraction, bench: Bench) -> Fraction:
    """The friction of a mixer, from a dough that was mixed and measured."""
    return bench.factor * dough - bench.sum - water


def in_other(value: Fraction, scale: Scale) -> Fraction:
    """A temperature of one scale in the other."""
    return value * 9 / 5 + 32 if scale == "C" else (value - 32) * 5 / 9


def advice(water: Fraction, scale: Scale) -> str:
    """What to do where tap water cannot be that warm or cold, or should not; else empty."""
    if water < FREEZING[scale]:
        return "colder than water can be: use ice for a part of it, and chill the flour"
    if water > TOO_WARM[scale]:
        wrong = "too warm: it weakens the yeast, or cannot be reached at all"
        return f"{wrong}; warm the flour or the room, or let the dough take its time"
    return ""
