"""An exact number or a range of them.

"60–90 g" is not 75 g: a table that adds uses must keep both ends. So every amount is a pair of exact
fractions, equal when there is no range.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple


class Amount(NamedTuple):
    """From `lo` to `hi`, both included; equal for a single number. Ends keep the order they were given."""

    lo: Fraction
    hi: Fraction

    @property
    def single(self) -> bool:
        """Whether this is one number and no range."""
        return self.lo is self.hi or self.lo == self.hi

    # Most amounts are one number, kept once: then its arithmetic, which is what takes the time, is done once.

    def plus(self, other: Amount) -> Amount:
        """The sum, end by end."""
        lo = self.lo + other.lo
        return Amount(lo, lo if self.lo is self.hi and other.lo is other.hi else self.hi + other.hi)

    def times(self, factor: Fraction | int) -> Amount:
        """The product with a number that is not negative."""
        if factor == 1:
            return self
        lo = self.lo * factor
        return Amount(lo, lo if self.lo is self.hi else self.hi * factor)

    def within(self, other: Amount) -> bool:
        """Whether this lies wholly inside another."""
        return other.lo <= self.lo and self.hi <= other.hi


def exactly(number: Fraction | int | str) -> Amount:
    """An amount of one number: a fraction, an integer, or text as `Fraction` reads it ("3/2", "0.5")."""
    value = Fraction(number)
    return Amount(value, value)


def between(lo: Fraction | int | str, hi: Fraction | int | str) -> Amount:
    """A range, ends as `exactly` takes them."""
    return Amount(Fraction(lo), Fraction(hi))


ZERO = exactly(0)
