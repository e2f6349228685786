"""Parts taken off a food that the recipe has counted already, and how full a measure is."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.table.lines import apart, lines


def listed(body: str) -> list[str]:
    """The lines of a recipe's table, and what stands apart from it."""
    kitchen = default_kitchen("en")
    made = compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{body}\n"), kitchen, {}).table
    rows = [" ".join(filter(None, (line.amount, line.name, line.where))) for line in lines(made.rows, made, kitchen)]
    return [*rows, *apart(made, kitchen)]


PARTS = {
    "Mix [zest of 1 lemon].\nAdd [the juice of the lemon].": ["1 lemon, zest and juice zest of 1 + juice of 1"],
    "Mix [zest of 2 lemons].\nAdd [the juice of the lemon].": ["2 lemons, zest and juice zest of 2 + juice of 1"],
    "Mix [zest of 2 lemons].\nAdd [the juice of the lemons].": ["2 lemons, zest and juice zest of 2 + juice of 2"],
    "Mix [zest of 1 lemon] and [the juice of the lemon].": ["1 lemon, zest and juice"],
    "Slice [1 orange].\nAdd [the zest of the orange].": ["1 orange, divided 1 + zest of 1"],
    "Add [juice of 1 lemon].\nAdd [the juice of the lemon].": ["1 lemon, juice juice of 1 + juice of 1"],
    "Tear [1 bunch mint].\nAdd [the leaves of the mint].": ["1 bunch mint, divided 1 bunch + leaves of 1 bunch"],
    "Whisk [the yolks of 3 eggs].\nAdd [the whites of the eggs].": [
        "3 eggs, yolks and whites yolks of 3 + whites of 3"
    ],
    "Add [the juice of the lemon].\nMix [zest of 1 lemon].": ["1 lemon, juice and zest juice of 1 + zest of 1"],
    "Beat [the yolks of the eggs].\nFold in [the whites of 3 eggs].": [
        "3 eggs, yolks and whites yolks of 3 + whites of 3"
    ],
    "Add [the zest of the orange].\nSlice [2 oranges].": ["2 oranges, divided zest of 1 + 2"],
    "Add [the juice of the lemon] and [the zest of the lemon].\nSlice [1 lemon].": [
        "1 lemon, divided juice of 1 + zest of 1 + 1"
    ],
    "Add [the juice of the lemon].\nMix [zest of 1 lemon].\nSlice [1 lemon].": [
        "2 lemons, juice and zest juice of 1 + zest of 1 + 1"
    ],
    "# Icing\nStir [the juice of the lemon].\n# Cake\nMix [zest of 1 lemon].\nIce with [the icing].": [
        "1 lemon, juice and zest Icing juice of 1; Cake zest of 1"
    ],
    "# Cake\nIce with [the icing].\nMix [zest of 1 lemon].\n# Icing\nStir [the juice of the lemon].": [
        "1 lemon, juice and zest Icing juice of 1; Cake zest of 1"
    ],
    "Mix [zest of 1 lime].\nAdd [the juice of the lemon].": ["1 lime, zest", "lemon"],
    "Take [2 lemons, to serve].\nAdd [the juice of the lemon].": ["lemon", "2 lemons to serve"],
}


@pytest.mark.parametrize("body", PARTS)
def test_a_part_of_the_food_is_of_the_one_that_was_counted(body: str) -> None:
    assert sorted(listed(body)) == sorted(PARTS[body])


HEAPED = ("1 good tsp salt", "2 packed cups brown sugar", "1 big handful parsley", "1 heaped tbsp plain flour")


@pytest.mark.parametrize("measure", HEAPED)
def test_how_full_a_measure_is_stands_in_the_table(measure: str) -> None:
    assert listed(f"Mix [{measure}].") == [measure]


LENGTHS = {
    "2 m hog casings, soaked": "2 metres hog casings, soaked",
    "10 cm cucumber": "10 cm cucumber",
    "a 5-cm piece of ginger": "1 piece (5 cm) ginger",
}


@pytest.mark.parametrize("measure", LENGTHS)
def test_a_length_that_measures_a_food_is_told_once(measure: str) -> None:
    assert listed(f"Take [{measure}].") == [LENGTHS[measure]]
