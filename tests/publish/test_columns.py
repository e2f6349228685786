"""The two columns of amounts on a page."""

from __future__ import annotations

import pytest

from tamis.publish.columns import cells_of
from tamis.table.ingredients import build_table
from tests.table.bench import KITCHEN, food, recipe

ROWS = [
    # spoons belong to both columns, whatever they weigh
    ("1 tbsp", "olive oil", ("1 tbsp", True), ("1 tbsp", True)),
    ("2 tsp", "fine salt", ("2 tsp (12 g)", True), ("2 tsp", True)),
    # more than a few are weighed
    ("6 tbsp", "fine salt", ("108 g", False), ("6 tbsp", True)),
    ("1 cup", "whole milk", ("237 ml", False), ("1 cup", True)),
    # what is the same in both is said once
    ("4", "large eggs", ("4", True), ("", False)),
]


@pytest.mark.parametrize(("said", "name", "metric", "us"), ROWS)
def test_columns(said: str, name: str, metric: tuple[str, bool], us: tuple[str, bool]) -> None:
    table = build_table(recipe(Mix=[[food(said, name)]]), KITCHEN)
    (cells,) = cells_of(table.rows, table, KITCHEN)
    said_first, said_second = [(cell.text.replace("\u00a0", " "), cell.own) for cell in (cells.first, cells.second)]
    assert said_first == metric
    assert said_second == us
