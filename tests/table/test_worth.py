"""Which spoons stay spoons in a metric table."""

from __future__ import annotations

import pytest

from tamis.table.wording import measure_text
from tamis.table.worth import to_metric

from .bench import KITCHEN, food


@pytest.mark.parametrize(
    ("said", "name", "metric"),
    [
        ("1 tsp", "vanilla extract", "1 tsp"),
        ("1/2 tsp", "vanilla extract", "½ tsp"),
        ("3 tbsp", "olive oil", "3 tbsp"),
        ("4 tbsp", "whole milk", "4 tbsp"),
        ("2–3 tbsp", "whole milk", "2–3 tbsp"),
        ("5 tbsp", "whole milk", "74 ml"),
        ("1 cup", "whole milk", "237 ml"),
        ("2 australian_tbsp", "whole milk", "40 ml"),
        ("2 imp_tbsp", "whole milk", "36 ml"),
        ("1 fl_oz", "whole milk", "30 ml"),
        ("1 tbsp", "moon juice", "1 tbsp"),
        ("2 tsp", "fine salt", "12 g"),
    ],
)
def test_metric(said: str, name: str, metric: str) -> None:
    item = food(said, name)
    worth = to_metric(item.measures[0], item, KITCHEN)
    assert measure_text(worth.measure, name, KITCHEN.units) == metric
