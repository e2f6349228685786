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


@pytest.mark.parametrize(
    ("line", "verb"),
    [
        ("Let it bubble [until thick].", "reduce"),
        ("Let the sauce simmer gently [until thick].", "simmer"),
        ("Leave it in a warm place to rise [for 1 h].", "rise"),
        ("Leave to cool [for 1 h].", "cool"),
        ("[Let the onions brown for 5 min].", "brown"),
        ("Leave the rest [in the tin] [for 5 min].", "leave"),
    ],
)
def test_what_is_let_happen_is_what_is_waited_for(line: str, verb: str) -> None:
    assert made(line).recipe.actions[1].work.verb == verb


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("Bring [2 l water, for boiling] [to the boil].", 12),
        ("Bring [2 l boiling water, for boiling] [to the boil].", 2),
        ("Boil [1 kg potatoes] [in 2 l water, for boiling] [until tender].", 18),
        ("[Boil for 15 min] [in 2 l water, for boiling].", 15),  # the cook's own time stands as it is
    ],
)
def test_water_for_boiling_comes_to_the_boil_first(line: str, minutes: int) -> None:
    """335 kJ heat a kilo of water from 20 to 100 °C; 60 % of a 2 kW ring give them in 4 min 40 s."""
    source = Source("pot.tamis", f"title: Pot\nserves: 2\n\n# Pot\n\n{line}\n")
    wait = compile(source, default_kitchen(), {}).recipe.actions[0].work.wait
    assert wait is not None and wait.lo == minutes * 60


def test_a_second_wait_after_a_timed_one_is_a_wait_of_its_own() -> None:
    said = made("[Simmer for 10 min], then add [200 g peas] and boil [until tender].")
    assert [action.work.verb for action in said.recipe.actions[1:3]] == ["simmer", "boil"]
    said = made("[Simmer for 10 min] and leave to cool.")
    assert [finding.rule for finding in said.findings if finding.severity == "error"] == ["verb-without-time"]


@pytest.mark.parametrize(
    ("tending", "hands"),
    [
        ("skimming", False),
        ("basting", False),
        ("stirring", True),
        ("turning all the time", True),
        ("stirring now and then", False),
    ],
)
def test_skimming_keeps_nobody_at_the_pot_but_stirring_does(tending: str, hands: bool) -> None:
    assert made(f"[Simmer for 30 min], [{tending}], [until thick].").recipe.actions[1].work.hands is hands


@pytest.mark.parametrize(
    ("time", "shortest", "longest"),
    [
        ("3 hours or overnight", 3, 12),
        ("2 hours, or up to 6 hours", 2, 6),
        ("2 h or longer", 2, None),
        ("at least 2 h or overnight", 2, 12),
        ("2 h", 2, 2),
    ],
)
def test_a_time_or_a_longer_one(time: str, shortest: int, longest: int | None) -> None:
    wait = made(f"[Chill for {time}].").recipe.actions[1].work.wait
    assert wait is not None and (wait.lo, wait.hi) == (shortest * 3600, longest and longest * 3600)
