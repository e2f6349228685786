"""Near misses: how far names are apart, and which one was meant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.quantity.near import distance, nearest


@pytest.mark.parametrize(
    ("one", "other", "slips"),
    [
        ("", "", 0),
        ("cup", "cup", 0),
        ("cup", "cups", 1),
        ("form", "from", 1),
        ("milk", "silk", 1),
        ("flour", "flower", 2),
        ("", "ab", 2),
        ("tsp", "oz", 3),
    ],
)
def test_distance(one: str, other: str, slips: int) -> None:
    assert distance(one, other) == distance(other, one) == slips


@given(st.text("abc", max_size=8), st.text("abc", max_size=8), st.integers(0, 4))
def test_the_limit_only_cuts_off(left: str, right: str, limit: int) -> None:
    assert distance(left, right, limit) == min(distance(left, right), limit + 1)


@pytest.mark.parametrize(
    ("name", "known", "meant"),
    [
        ("cot", ["cat", "cut"], "cat"),
        ("oven", ["whisk", "spoon"], None),
        ("tabelspoon", ["teaspoon", "tablespoon"], "tablespoon"),
        ("handful", ["half"], None),
        ("ml", ["mll"], None),
        # Word by word: as one word only a sixth of it differs, but one of its words is another.
        ("almond meal", ["almond milk"], None),
        ("almnod mikl", ["almond meal", "almond milk"], "almond milk"),
        ("almondmilk", ["almond milk"], "almond milk"),
        (
            "smoked mackerel fillets, rapeseed oli",
            ["smoked mackerel fillets, rapeseed oil"],
            "smoked mackerel fillets, rapeseed oil",
        ),
        ("x" * 61, ["x" * 61], None),
    ],
)
def test_nearest(name: str, known: list[str], meant: str | None) -> None:
    assert nearest(name, known) == meant
