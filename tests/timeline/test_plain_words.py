"""What a cook writes without brackets, and what the clock makes of it."""

from __future__ import annotations

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source


def made(line: str) -> Compiled:
    text = f"title: Squash\nserves: 2\n\nPut [1 squash] [in a roasting tin].\n{line}\n[Bake for 40 min] [until soft].\n"
    return compile(Source("squash.tamis", text), default_kitchen(), {})


@pytest.mark.parametrize(
    "line",
    [
        "Heat the oven [to 200 °C].",
        "Preheat oven to [200 °C].",
        "Heat [the oven] [to 200 °C].",
    ],
)
def test_an_oven_in_plain_words_is_heated_beside_the_rest(line: str) -> None:
    said = made(line)
    assert [finding.message for finding in said.findings] == []
    heating = [entry for entry in said.timeline.entries if entry.title.startswith("Heat oven")]
    assert [(entry.title, entry.hands, entry.station) for entry in heating] == [("Heat oven to 200 °C", "none", "oven")]
    # the squash itself is not heated on a ring meanwhile
    assert not said.recipe.actions[1].uses and said.recipe.actions[1].heats == "oven"


@pytest.mark.parametrize("line", ["Heat the mixture [to 80 °C].", "Heat [the squash] [to 80 °C]."])
def test_what_is_no_station_is_food(line: str) -> None:
    assert made(line).recipe.actions[1].heats == ""


@pytest.mark.parametrize(
    ("line", "hands"),
    [
        ("Take it out [1 hour before roasting].", False),
        ("Turn it [for 10 min] in its oil.", True),
    ],
)
def test_the_hour_before_needs_nobody(line: str, hands: bool) -> None:
    assert made(line).recipe.actions[1].work.hands is hands


def test_tending_after_a_target_goes_on_for_the_time_that_follows() -> None:
    said = made(
        "Pour in [200 ml milk], bring [to a simmer], [whisking all the time], and [cook for 5 min] [until thick]."
    )
    work = [action.work for action in said.recipe.actions[1:3]]
    assert [(each.verb, each.hands) for each in work] == [("bring", True), ("cook", True)]
