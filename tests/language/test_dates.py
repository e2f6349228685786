"""A date in the header is one that the calendar has."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

DAYS = [(date(2023, 12, 20) + timedelta(days)).isoformat() for days in range(0, 500, 3)]
ODD = ["2023-02-29", "2024-02-30", "2026-04-31", "2026-13-01", "2026-00-10", "2026-10-00", "0000-01-01", "2026-1-1"]


def findings(day: str) -> list[str]:
    text = f"title: Salt water\nserves: 1\ntested: {day}\n\n# Water\n\nStir [10 g fine salt] into [1 l water].\n"
    return [finding.rule for finding in compile(Source("salt.tamis", text), default_kitchen("en"), {}).findings]


def test_every_day_is_a_date() -> None:
    assert [day for day in DAYS if findings(day)] == []


@pytest.mark.parametrize("day", ODD)
def test_a_day_that_never_comes_is_none(day: str) -> None:
    assert findings(day) == ["header-value"]
