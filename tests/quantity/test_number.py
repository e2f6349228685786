"""Numbers as cooks write them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.quantity.number import VULGAR, parse, problem

WRITTEN = [
    ("2", "2"), ("0", "0"), ("012", "12"), ("0.5", "1/2"), ("1.25", "5/4"), (".5", "1/2"),
    ("1/2", "1/2"), ("3/2", "3/2"), ("1 1/2", "3/2"), ("1-1/2", "3/2"), ("1\u00a01/2", "3/2"), ("1⁄2", "1/2"),
    ("½", "1/2"), ("1½", "3/2"), ("1 ½", "3/2"), ("1-½", "3/2"), ("↉", "0"), (" 2 ", "2"),
    ("one", "1"), ("Twelve", "12"), ("a dozen", "12"), ("dozen", "12"), ("half a dozen", "6"),
    ("two dozen", "24"),
    ("half", "1/2"), ("a half", "1/2"), ("a quarter", "1/4"), ("a third", "1/3"), ("two thirds", "2/3"),
    ("three quarters", "3/4"), ("three-quarters", "3/4"), ("123456789012", "123456789012"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "value"), WRITTEN)
def test_read(text: str, value: str) -> None:
    assert parse(text, "en") == Fraction(value)


REFUSED = [
    "", " ", "-1", "1/0", "1 1/0", "1 3/2", "1.", ".", "1,5", "1,000", "1/2/3", "1 2", "1½½", "½ 1",
    "a", "thirteen",
    "dozen dozen", "half half", "1e3", "٣", "²", "1_000", "0x10", "inf", "nan", "1234567890123",
    "1.123456789012", "9" * 5000, "1" * 20 + "/" + "1" * 20,
]  # fmt: skip


@pytest.mark.parametrize("text", REFUSED)
def test_refused(text: str) -> None:
    assert parse(text, "en") is None


@pytest.mark.parametrize("sign", VULGAR)
def test_signs_mean_what_unicode_says(sign: str) -> None:
    import unicodedata

    assert float(Fraction(*VULGAR[sign])) == pytest.approx(unicodedata.numeric(sign))
    assert parse(sign, "en") == Fraction(*VULGAR[sign])


PROBLEMS = [
    ("1,5", ["1.5", "1 and 5"]),
    ("12,25", ["12.25", "12 and 25"]),
    ("1,000", ["1000", "1.000"]),
    ("1,000,000", ["1000000"]),
    ("1/0", ["divides by nothing"]),
    ("2 3/2", ["less than one"]),
    ("9" * 5000, ["12 digits"]),
    ("1," * 2000 + "5", ["12 digits"]),
]


@pytest.mark.parametrize(("text", "said"), PROBLEMS)
def test_problem_says_every_reading(text: str, said: list[str]) -> None:
    message = problem(text)
    assert message is not None
    assert all(words in message for words in said)


@pytest.mark.parametrize(("text", "value"), WRITTEN)
def test_no_problem_with_what_can_be_read(text: str, value: str) -> None:
    assert problem(text) is None
