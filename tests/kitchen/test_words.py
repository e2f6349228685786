"""Singular forms."""

from __future__ import annotations

import pytest

from tamis.quantity.nouns import nouns

singular = nouns("en").singular

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
