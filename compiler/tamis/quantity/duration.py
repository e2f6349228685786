"""How long something takes: an estimate that the food decides, or a window that the cook decides.

"Bake for 25–30 min" and "rest for 4–18 h" are both ranges, and mean different things: the oven will be
needed for up to 30 minutes whatever one wishes, while the dough may be taken at any of 14 hours. A
plan must hold for every value of the first and may choose within the second, so a duration carries which of
the two it is. Seconds, exact.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple

MINUTE, HOUR, DAY = Fraction(60), Fraction(3600), Fraction(86400)


class Duration(NamedTuple):
    """From `lo` to `hi` seconds.

    `hi` is None for an open end ("at least 2 h"). `window`: the cook chooses within
    it, else the food decides.
    """

    lo: Fraction
    hi: Fraction | None
    window: bool = False

    @property
    def single(self) -> bool:
        """Whether this is one length and no range."""
        return self.lo is self.hi or self.lo == self.hi

    def plus(self, other: Duration) -> Duration:
        """One after the other. An open end stays open; the whole is a window only if both are."""
        hi = None if self.hi is None or other.hi is None else self.hi + other.hi
        return Duration(self.lo + other.lo, hi, self.window and other.window)

    def times(self, factor: Fraction | int) -> Duration:
        """So many times over; the number is not negative."""
        return Duration(self.lo * factor, None if self.hi is None else self.hi * factor, self.window)


def exactly(seconds: Fraction | int) -> Duration:
    """One length, no range."""
    return Duration(Fraction(seconds), Fraction(seconds))


def between(lo: Fraction | int, hi: Fraction | int) -> Duration:
    """A range that the food decides ("for 25–30 min")."""
    return Duration(Fraction(lo), Fraction(hi))


def at_least(lo: Fraction | int) -> Duration:
    """A window with an open end ("at least 2 h")."""
    return Duration(Fraction(lo), None, window=True)


def up_to(hi: Fraction | int) -> Duration:
    """A window from nothing ("up to 3 days")."""
    return Duration(Fraction(0), Fraction(hi), window=True)


def window(lo: Fraction | int, hi: Fraction | int) -> Duration:
    """A window with both ends ("at least 4 h, up to 18 h")."""
    return Duration(Fraction(lo), Fraction(hi), window=True)


# "Overnight" is the cook's evening to the cook's morning: common practice, a window.
OVERNIGHT = window(8 * HOUR, 12 * HOUR)
