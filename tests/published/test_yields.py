"""The edible part of what is bought: ours is USDA SR28's refuse; others trim otherwise, and none of them is wrong.

The three that other tests hold (broccoli, banana, carrot) stand in test_yield_and_cost.py.
"""

from __future__ import annotations

import pytest

from tamis.kitchen.house import default_kitchen

LARDER = default_kitchen("en").larder

OTHERS = [
    ("courgette", 95, 2, "zucchini: Bakery and business math (open textbook); confirmed"),
    ("strawberry", 87, 8, "strawberries: Bakery and business math (open textbook); confirmed"),
    ("apple", 91, 2, "cored, unpeeled: USDA Food Buying Guide, 1 lb = 0.91 lb ready to cook; secondary, azrefs.org"),
    ("apple", 76, 15, "peeled as well: Bakery and business math (open textbook); confirmed"),
    ("pear", 78, 15, "peeled as well: Bakery and business math (open textbook); confirmed"),
    ("potato", 80, 6, "culinary-course slides; secondary, slideplayer 13321894"),
    ("watermelon", 61, 10, "USDA Food Buying Guide, Appendix B; confirmed"),
]


@pytest.mark.parametrize(("id", "percent", "points", "source"), OTHERS)
def test_yield(id: str, percent: int, points: int, source: str) -> None:
    goods = LARDER.get(id)
    assert goods is not None
    assert goods.refuse is not None
    assert goods.refuse_source.startswith("USDA SR28"), "this would test the source against itself"
    assert abs(100 - goods.refuse - percent) <= points, source
