"""What a line sets the oven to, as far as the planner is told."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.source import Source
from tamis.timeline.oven import temperature

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
    last = compile(Source("trial.tamis", HEAD + line + "\n"), KITCHEN, {}).recipe.actions[-1]
    assert last.work.station == "oven"
    assert temperature(last) == celsius
