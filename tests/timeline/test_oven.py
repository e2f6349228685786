"""What a line sets the oven to, as far as the planner is told."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.source import Source
from tamis.timeline.oven import set_to, turned
from tamis.timeline.text import timeline_text

from .making import KITCHEN

HEAD = "title: Trial\nserves: 4\n\n# Trial\n\nHeat [the oven] [to 230 °C].\nBake [4 potatoes] [for 20 min].\n"


@pytest.mark.parametrize(
    ("line", "celsius"),
    [
        ("Lower [the oven] [to 180 °C] and [bake for 40 min].", 180),
        ("[Bake for 40 min] [at 180 °C].", 180),
        ("[Bake for 40 min at 90 °C].", 90),
        ("[Bake for 40 min] [to 95 °C].", None),
        ("[Bake for 40 min] [in the oven] [to 95 °C].", None),
        ("[Bake for 40 min] [until 95 °C inside].", None),
    ],
)
def test_temperature(line: str, celsius: int | None) -> None:
    last = compile(Source("trial.tamis", HEAD + line + "\n"), KITCHEN, {}).recipe.places.lines[-1]
    assert last.station == "oven"
    assert set_to(last) == celsius


@pytest.mark.parametrize(("celsius", "by"), [(220, -10), (230, 0), (240, 10)])
def test_an_oven_is_turned_up_or_down(celsius: int, by: int) -> None:
    recipe = compile(Source("trial.tamis", f"{HEAD}[Bake for 40 min at {celsius} °C].\n"), KITCHEN, {}).recipe
    assert turned(recipe) == {recipe.actions[-1].number: by}


def test_what_is_made_further_down_is_in_the_oven_first() -> None:
    pie = "Heat [the oven] [to 180 °C].\nSpread [the crumble] [on a baking tray].\n[Bake for 20 min].\n"
    crumble = "# Crumble\n\nRub [100 g butter] into [200 g plain flour].\n[Bake for 10 min at 160 °C].\n"
    source = Source("trial.tamis", f"title: Trial\nserves: 4\n\n# Pie\n\n{pie}\n{crumble}")
    entries = compile(source, KITCHEN, {}).timeline.entries
    assert [entry.action for entry in entries if entry.title == "Bake"] == [4, 2]


BAKE = "Bake [4 potatoes] [for 20 min].\n"


@pytest.mark.parametrize(
    ("lines", "row"),
    [
        ("Heat [the oven] [to 230 °C] [with a baking stone].\n" + BAKE, "≈ 47 min  Heat oven to 230 °C"),
        ("Set [a rack] in the middle and heat [the oven] [to 230 °C] [with a baking stone].\n" + BAKE, "≈ 48 min "),
        ("Put [a baking stone] [in the oven] and heat [the oven] [to 230 °C].\n" + BAKE, "≈ 48 min "),
        ("Grease [a tin] with [butter, for greasing] and heat the oven [to 230 °C].\n" + BAKE, "≈ 28 min "),
        ("Move [a rack] to the top and heat [the grill].\nGrill [4 tomatoes] [for 5 min].\n", "≈ 5 min "),
    ],
)
def test_an_oven_is_heated_whatever_else_is_done_to_what_is_empty(lines: str, row: str) -> None:
    text = f"title: Trial\nserves: 4\n\n# Trial\n\n{lines}"
    timeline = compile(Source("trial.tamis", text), KITCHEN, {}).timeline
    assert any(row in line for line in timeline_text(timeline, None, 200).splitlines()), timeline_text(
        timeline, None, 200
    )


def test_a_tin_with_food_in_it_is_not_empty() -> None:
    text = (
        HEAD.replace("Heat [the oven] [to 230 °C].\nBake", "Bake") + "Turn [the tin] and heat [the oven] [to 180 °C].\n"
    )
    assert not compile(Source("trial.tamis", text), KITCHEN, {}).recipe.actions[-1].heats
