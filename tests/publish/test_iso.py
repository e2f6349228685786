"""ISO 8601 durations by the grammar of RFC 3339, appendix A: "PT2H30M" is 150 min, and days stand before the T."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.publish.iso import iso_duration, least
from tamis.quantity.duration import OVERNIGHT, at_least, between, up_to


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (20 * 60, "PT20M"),  # the search engines' own sample
        (150 * 60, "PT2H30M"),
        (45, "PT45S"),
        (86400, "P1D"),
        (14 * 86400, "P14D"),  # weeks may not stand beside days
        (28 * 3600, "P1DT4H"),
        (0, "PT0S"),  # "P" and "PT" alone are invalid
        (Fraction(181, 2), "PT1M30S"),
    ],
)
def test_a_duration(seconds: int, text: str) -> None:
    assert iso_duration(seconds) == text


def test_one_length_stands_for_a_duration() -> None:
    assert least(between(1320, 1560)) == 1320
    assert least(at_least(7200)) == 7200
    assert least(up_to(259200)) == 259200
    assert least(OVERNIGHT) == 8 * 3600
