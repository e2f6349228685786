"""The equipment list: each piece once, in order of need."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.reading.clauses import Tool
from tamis.table.equipment import equipment_list

from .bench import KITCHEN, recipe, tool
from .samples import rye_loaves


def labels(*tools: Tool) -> list[str]:
    """The list for a recipe that names these, a line each."""
    return [row.label for row in equipment_list(recipe(Dish=[[each] for each in tools]), KITCHEN)]


def test_a_bread_needs_these() -> None:
    needed = ["mixing bowl", "mixer", "2 loaf tins", "wire rack"]
    assert [row.label for row in equipment_list(rye_loaves(), KITCHEN)] == needed


@pytest.mark.parametrize(
    ("tools", "listed"),
    [
        ([tool("bowl"), tool("bowl")], ["bowl"]),
        ([tool("bowl"), tool("large bowl")], ["bowl", "large bowl"]),
        ([tool("skillet"), tool("frying pan")], ["skillet"]),
        ([tool("frying pan"), tool("pan", definite=True)], ["frying pan"]),
        ([tool("frying pan"), tool("hot pan", definite=True)], ["frying pan"]),
        ([tool("same pan", definite=True)], ["pan"]),
        ([tool("frying pan"), tool("the same pan", definite=True)], ["frying pan"]),
        ([tool("bowl"), tool("another bowl"), tool("bowl")], ["2 bowls"]),
        ([tool("small pan"), tool("pan"), tool("small pan", definite=True)], ["small pan", "pan"]),
        ([tool("round tins", number=Fraction(3), size="20 cm")], ["3 round tins, 20 cm"]),
        ([tool("round tin", size="20 cm"), tool("round tin", size="28 cm")],
         ["round tin, 20 cm", "round tin, 28 cm"]),
        ([tool("jars", number=Fraction(2)), tool("jars", number=Fraction(5))], ["5 jars"]),
        ([tool("bowl"), tool("bowl", contains="ice")], ["bowl", "bowl of ice"]),
        ([tool("mixer bowl"), tool("dough hook"), tool("mixer")], ["mixer"]),
        ([tool("oven"), tool("lowest ring"), tool("baking stone")], ["baking stone"]),
        ([tool("heavy pan", size="3-litre")], ["heavy 3-litre pan"]),
        ([tool("baking paper", number=Fraction(2))], ["baking paper"]),
        ([tool("chopsticks")], ["chopsticks"]),
        ([tool("lidded pan"), tool("lid", definite=True)], ["lidded pan"]),
        ([tool("pan"), tool("lid", definite=True)], ["pan", "lid"]),
        ([tool("jars", number=Fraction(4), size="pint")], ["4 pint jars"]),
        ([tool("Dutch oven"), tool("pot", definite=True)], ["Dutch oven"]),
        ([tool("baking tray"), tool("pot", definite=True)], ["baking tray", "pot"]),
        ([tool("knives", number=Fraction(2))], ["2 knives"]),
    ],
)  # fmt: skip
def test_a_piece_is_listed_once(tools: list[Tool], listed: list[str]) -> None:
    assert labels(*tools) == listed


def test_a_row_tells_where_it_is_needed() -> None:
    made = recipe(Soup=[[tool("pan")], [tool("sieve")]], Sauce=[[tool("pan", definite=True)]])
    pan, sieve = equipment_list(made, KITCHEN)
    assert (pan.actions, pan.components) == ((0, 2), (0, 1))
    assert (sieve.kind, sieve.actions) == ("tool", (1,))


@pytest.mark.parametrize(
    ("words", "name", "kind"),
    [
        ("4 hot plates", "plate", "vessel"),
        ("a hot plate", "plate", "vessel"),
        ("the hotplate", "ring", "station"),
        ("a warm platter", "platter", "vessel"),
        ("the ring", "ring", "station"),
    ],
)
def test_a_plate_that_is_hot_is_a_plate(words: str, name: str, kind: str) -> None:
    found = KITCHEN.cupboard.find(words.split())
    assert found and (found.item.name, found.item.kind) == (name, kind)
