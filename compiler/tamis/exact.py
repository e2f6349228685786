"""Exact numbers: the `Fraction` of the standard library, as far as the compiler asks it, in a third of the time.

The module of the standard library brings decimals, abstract numbers and a regular expression with it, more than reading
a header takes, and its arithmetic asks at each step of which of many kinds both sides are. Here a side is exact if it
has a numerator, as an `int` and the other `Fraction` have; beside anything else the number is a `float`. A type checker
sees the class of the standard library, whose rules hold.
"""

from __future__ import annotations

from math import gcd

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction as Fraction
else:
    _new = object.__new__

    class Fraction:
        """`Fraction(1, 3)`, `Fraction("0.25")`, in lowest terms."""

        __slots__ = ("denominator", "numerator")

        def __new__(cls, top=0, bottom=1):
            if type(top) is not int or type(bottom) is not int:
                (above, below), (times, by) = _ratio(top), _ratio(bottom)
                top, bottom = above * by, below * times
            return _lowest(top, bottom)

        def as_integer_ratio(self):
            return self.numerator, self.denominator

        def limit_denominator(self, most):
            return Fraction(_other()(*self.as_integer_ratio()).limit_denominator(most))

        def __repr__(self):
            return f"Fraction({self.numerator}, {self.denominator})"

        def __str__(self):
            return str(self.numerator) if self.denominator == 1 else f"{self.numerator}/{self.denominator}"

        def __hash__(self):
            return hash(self.numerator if self.denominator == 1 else (self.numerator, self.denominator))

        def __getnewargs__(self):
            return self.numerator, self.denominator

        def __add__(self, other):
            try:
                top, bottom = other.numerator, other.denominator
            except AttributeError:
                return float(self) + other
            return _lowest(self.numerator * bottom + top * self.denominator, self.denominator * bottom)

        __radd__ = __add__

        def __sub__(self, other):
            try:
                top, bottom = other.numerator, other.denominator
            except AttributeError:
                return float(self) - other
            return _lowest(self.numerator * bottom - top * self.denominator, self.denominator * bottom)

        def __rsub__(self, other):
            return -self + other

        def __mul__(self, other):
            try:
                return _lowest(self.numerator * other.numerator, self.denominator * other.denominator)
            except AttributeError:
                return float(self) * other

        __rmul__ = __mul__

        def __truediv__(self, other):
            try:
                return _lowest(self.numerator * other.denominator, self.denominator * other.numerator)
            except AttributeError:
                return float(self) / other

        def __rtruediv__(self, other):
            try:
                return _lowest(other.numerator * self.denominator, other.denominator * self.numerator)
            except AttributeError:
                return other / float(self)

        def __floordiv__(self, other):
            return (self / other).__floor__()

        def __rfloordiv__(self, other):
            return (other / self).__floor__()

        def __mod__(self, other):
            return self - other * (self // other)

        def __rmod__(self, other):
            return other - self * (other // self)

        def __divmod__(self, other):
            return self // other, self % other

        def __rdivmod__(self, other):
            return other // self, other % self

        def __pow__(self, power):
            top, bottom = (self.numerator, self.denominator) if power >= 0 else (self.denominator, self.numerator)
            return _lowest(top ** abs(power), bottom ** abs(power))

        def __neg__(self):
            return _lowest(-self.numerator, self.denominator)

        def __abs__(self):
            return _lowest(abs(self.numerator), self.denominator)

        def __bool__(self):
            return self.numerator != 0

        def __int__(self):
            return self.__floor__() if self.numerator > 0 else self.__ceil__()

        __trunc__ = __int__

        def __float__(self):
            return self.numerator / self.denominator

        def __floor__(self):
            return self.numerator // self.denominator

        def __ceil__(self):
            return -(-self.numerator // self.denominator)

        def __round__(self):
            whole, rest = divmod(2 * self.numerator + self.denominator, 2 * self.denominator)
            return whole if rest else whole - whole % 2  # of two as near, the even one

        def __eq__(self, other):
            try:
                return self.numerator == other.numerator and self.denominator == other.denominator
            except AttributeError:
                return float(self) == other

        def __lt__(self, other):
            try:
                return self.numerator * other.denominator < other.numerator * self.denominator
            except AttributeError:
                return float(self) < other

        def __le__(self, other):
            try:
                return self.numerator * other.denominator <= other.numerator * self.denominator
            except AttributeError:
                return float(self) <= other

        def __gt__(self, other):
            return not self <= other

        def __ge__(self, other):
            return not self < other

    def _lowest(top, bottom):
        number = _new(Fraction)
        if bottom != 1:
            common = gcd(top, bottom)
            if common == 0 or bottom == 0:
                raise ZeroDivisionError(f"Fraction({top}, 0)")
            if bottom < 0:
                common = -common
            if common != 1:
                top, bottom = top // common, bottom // common
        number.numerator, number.denominator = top, bottom
        return number

    def _ratio(number):
        """The two numbers of a number or of a text that says one: `3`, `-0.25`, `1/2`; another as `fractions` does."""
        if isinstance(number, str):
            digits = number.removeprefix("-")
            whole, point, part = digits.partition(".")
            if point and whole.isdigit() and part.isdigit():
                return int(number.replace(".", "")), 10 ** len(part)
            top, stroke, bottom = digits.partition("/")
            if stroke and top.isdigit() and bottom.isdigit():
                return int(number[: -len(bottom) - 1]), int(bottom)
            number = int(number) if digits.isdigit() else _other()(number)
        return number.as_integer_ratio()

    def _other():
        from fractions import Fraction as Other

        return Other
