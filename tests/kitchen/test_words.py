"""Singular forms and near misses."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.kitchen.words import distance, nearest, singular

PLURALS = """
eggs egg · loaves loaf · leaves leaf · cloves clove · olives olive · chives chive · berries berry · pies pie
tomatoes tomato · peaches peach · radishes radish · boxes box · glasses glass · cheeses cheese · chillies chilli
molasses molasses · couscous couscous · asparagus asparagus · watercress watercress · knives knife · geese goose
dishes dish · gas gas · quiches quiche · batches batch · halves half · peas pea · anchovies anchovy
"""


@pytest.mark.parametrize(
    "pair", [tuple(p.split()) for line in PLURALS.split("\n") for p in line.split("·") if p.strip()]
)
def test_singular(pair: tuple[str, str]) -> None:
    plural, single = pair
    assert singular(plural) == single
    assert singular(single) == single


@pytest.mark.parametrize(
    ("left", "right", "far"),
    [("", "", 0), ("milk", "mlik", 1), ("milk", "silk", 1), ("flour", "flower", 2), ("pea", "peas", 1)],
)
def test_distance(left: str, right: str, far: int) -> None:
    assert distance(left, right, 5) == distance(right, left, 5) == far


@given(st.text("abc", max_size=8), st.text("abc", max_size=8), st.integers(0, 4))
def test_the_limit_only_cuts_off(left: str, right: str, limit: int) -> None:
    assert distance(left, right, limit) == min(distance(left, right, 99), limit + 1)


def test_nearest_prefers_the_first_of_equals() -> None:
    assert nearest("cot", ["cat", "cut"]) == "cat"


def test_nothing_near_is_nothing() -> None:
    assert nearest("oven", ["whisk", "spoon"]) is None
