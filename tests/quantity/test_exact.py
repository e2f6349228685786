"""Our exact numbers are those of the standard library."""

from __future__ import annotations

import fractions
import math
import operator
import pickle
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.exact import Fraction

NUMBERS = st.fractions(min_value=-40, max_value=40, max_denominator=12)
SIDES = NUMBERS | st.integers(-9, 9) | st.sampled_from([0.5, -1.25, 2.0])
EXACT = (operator.floordiv, operator.mod, divmod)
BOTH = (operator.add, operator.sub, operator.mul, operator.truediv, operator.eq, operator.lt, operator.le)
ONE = (round, math.floor, math.ceil, math.trunc, int, float, bool, abs, operator.neg, str, repr, hash)


def ours(number: Any) -> Any:
    return Fraction(number) if isinstance(number, fractions.Fraction) else number


def told(work: Any, *numbers: Any) -> Any:
    try:
        found = work(*numbers)
    except ZeroDivisionError:
        return "divides by nothing"
    return found if isinstance(found, tuple | str) else (str(found), found)


@given(NUMBERS, SIDES)
def test_they_reckon_alike(one: fractions.Fraction, other: Any) -> None:
    for work in (*BOTH, operator.ne, operator.gt, operator.ge, *(() if isinstance(other, float) else EXACT)):
        assert told(work, ours(one), ours(other)) == told(work, one, other)
        assert told(work, ours(other), ours(one)) == told(work, other, one)
    for work in BOTH:
        assert told(work, ours(one), one) == told(work, one, ours(one)) == told(work, one, one)


@given(NUMBERS, st.integers(-3, 3))
def test_they_are_asked_alike(number: fractions.Fraction, power: int) -> None:
    for work in ONE:
        assert work(ours(number)) == work(number)
    assert told(operator.pow, ours(number), power) == told(operator.pow, number, power)
    assert ours(number).limit_denominator(5) == number.limit_denominator(5)
    assert ours(number) == number == pickle.loads(pickle.dumps(ours(number)))


@pytest.mark.parametrize(
    "text",
    ["0", "3", "007", "0.25", "12.50", "1/2", "10/4", "-18", "-1/3", "-0.5", "1e3", ".5", " 7 ", "1_000", "٣"],
)
def test_a_text_is_read_alike(text: str) -> None:
    assert Fraction(text) == fractions.Fraction(text)


@pytest.mark.parametrize("text", ["", "½", "²", "1/0", "1/", "/2", "1.2.3", "1/2/3", "a", "1 /2", "0.5/2", "--1"])
def test_what_is_no_number_raises(text: str) -> None:
    for read in (Fraction, fractions.Fraction):
        with pytest.raises((ValueError, ZeroDivisionError)):
            read(text)


def test_what_is_no_number_at_all() -> None:
    assert Fraction(1) != "1"
    for work in (operator.add, operator.mul, operator.lt, operator.truediv):
        with pytest.raises(TypeError):
            work(Fraction(1), "1")
