"""Single rows from a recipe's text: the amount as written, in metric and in US measures."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.table.showing import shown


@pytest.mark.parametrize(
    ("clause", "written", "metric", "us"),
    [
        ("[40–60 g butter]", "40–60 g", "40–60 g", "3 tbsp to ¼ cup"),  # USDA SR28 01145: 227 g a cup
        ("[1–2 tbsp plain flour]", "1–2 tbsp", "7.8–16 g", "1–2 tbsp"),  # 20081: 125 g a cup
        ("[1 can (28 oz) tomatoes]", "1 can (28 oz)", "1 can (795 g)", "1 can (28 oz)"),
        ("[2 14-ounce cans tomatoes]", "2 cans (14 oz each)", "2 cans (397 g each)", "2 cans (14 oz each)"),
        ("[a 28-ounce can tomatoes]", "1 can (28 oz)", "1 can (795 g)", "1 can (28 oz)"),
    ],
)
def test_ranges_and_cans_in_other_units(clause: str, written: str, metric: str, us: str) -> None:
    text = f"title: Pot\nserves: 2\n\nStir {clause} [in a pan].\n"
    table = compile(Source("pot.tamis", text), default_kitchen("en"), {}).table
    assert tuple(shown(table.rows[0], default_kitchen("en"))) == (written, metric, us)
