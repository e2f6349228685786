"""What a cook writes without brackets, and what the clock makes of it."""

from __future__ import annotations

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.timeline.tasks import MOMENT


def made(line: str) -> Compiled:
    text = f"title: Squash\nserves: 2\n\nPut [1 squash] [in a roasting tin].\n{line}\n[Bake for 40 min] [until soft].\n"
    return compile(Source("squash.tamis", text), default_kitchen("en"), {})


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


def test_what_is_done_every_other_day_needs_nobody_in_between() -> None:
    said = made("Turn over [every other day for 2 weeks].")
    calls = [task for task in said.timeline.network.tasks if task.action == 1 and task.hands]
    assert said.recipe.actions[1].work.hands is False
    assert len(calls) == 6  # after 2, 4 … 12 days; the end is the cook's anyway
    assert [entry.title for entry in said.timeline.entries if entry.action == 1] == ["Turn over, every other day"]


@pytest.mark.parametrize(
    ("line", "calls", "title"),
    [
        ("Leave [for 1 week], [turning every day].", 6, "Leave, turning every day"),
        ("Leave [for 2 weeks], [turning every day].", 0, "Leave, turning every day (13 times, not planned)"),
        ("[Roast for 4 h], [basting every 15 min].", 0, "Roast, basting every 15 min (15 times, not planned)"),
        (
            "[Roast for 1 h], [basting every 15 min] [in 5 batches].",
            0,
            "Roast, basting every 15 min (19 times, not planned)",
        ),
        ("[Roast for 1 h], [basting once].", 1, "Roast"),
    ],
)
def test_how_often_the_cook_is_called_is_said(line: str, calls: int, title: str) -> None:
    said = made(line)
    assert [entry.title for entry in said.timeline.entries if entry.action == 1] == [title]
    hands = [task for task in said.timeline.network.tasks if task.action == 1 and task.hands and task.lo == MOMENT]
    assert len(hands) == calls


@pytest.mark.parametrize(
    ("line", "hands"),
    [
        ("Simmer [for 5 min], [stirring every 30 s].", True),
        ("Simmer [for 5 min], [stirring every 2 min].", False),
        ("Turn it [every 2 min for 10 min].", True),
        ("Turn it [every 20 min for 2 h].", False),
        ("Turn it [every other day] [for 2 weeks].", False),
    ],
)
def test_who_is_called_all_the_time_has_no_hand_free(line: str, hands: bool) -> None:
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
    wait = compile(source, default_kitchen("en"), {}).recipe.actions[0].work.wait
    assert wait is not None and wait.lo == minutes * 60


def test_a_second_wait_after_a_timed_one_is_a_wait_of_its_own() -> None:
    said = made("[Simmer for 10 min], then add [200 g peas] and boil [until tender].")
    assert [action.work.verb for action in said.recipe.actions[1:3]] == ["simmer", "boil"]
    said = made("[Simmer for 10 min] and leave to cool.")
    assert "verb-without-time" in [finding.rule for finding in said.findings if finding.severity == "warning"]
    assert [action.work.verb for action in said.recipe.actions[1:3]] == ["simmer", "cool"]


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


def plan(text: str) -> dict[str, tuple[int, int]]:
    """Begin and end of each row in minutes, by its title."""
    compiled = compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{text}"), default_kitchen("en"), {})
    assert [finding.message for finding in compiled.findings if finding.severity == "error"] == []
    return {entry.title: (entry.start // 60, entry.end // 60) for entry in compiled.timeline.entries}


def test_one_oven_has_one_temperature() -> None:
    """Two dishes at 220 and 150 °C are baked one after the other; two at 180 °C go in together."""
    text = """\
# Carrots
Lay [500 g carrots] [in a roasting tin] and [roast for 40 min at 220 °C] [in the oven] [until tender].

# Plums
Lay [500 g plums] [in a baking dish] and [bake for 30 min at 150 °C] [in the oven] [until tender].

# Plate
Spoon [the carrots] and [the plums] [on to 4 plates].
"""
    rows = plan(text)
    assert rows["Lay plums in a baking dish, bake"][0] >= rows["Lay carrots in a roasting tin, roast"][1] - 1
    together = plan(text.replace("220", "180").replace("150", "180"))
    assert together["Lay plums in a baking dish, bake"][0] < together["Lay carrots in a roasting tin, roast"][1]


def test_the_oven_is_turned_down_when_what_bakes_is_out_and_is_hot_already() -> None:
    text = """\
# Case
Roll out [300 g shortcrust pastry] and line [a 24 cm tart tin] with it.
[Bake for 20 min at 200 °C] [in the oven] [until golden].

# Filling
Whisk [3 eggs] with [300 ml double cream] [in a jug].

# Tart
Turn [the oven] down [to 150 °C].
Pour [the filling] into [the case] and [bake for 30 min] [until 80 °C and set].
"""
    rows = plan(text)
    assert rows["Set oven to 150 °C"][0] >= rows["Bake"][1]
    assert rows["Set oven to 150 °C"][1] - rows["Set oven to 150 °C"][0] <= 1


def test_what_is_poured_off_was_left_before() -> None:
    text = """\
# Duck
Fry [4 duck breasts] [in a frying pan] [for 15 min] [until 74 °C inside], [leaving duck fat].

# Cabbage
Pour off [all but 1 tbsp of the duck fat], add [500 g cabbage] and [fry for 5 min] [until wilted].

# Plate
Serve [the duck] on [the cabbage].
"""
    rows = plan(text)
    assert rows["Pour off duck fat, add cabbage, fry"][0] >= rows["Fry duck breasts"][1] - 1


@pytest.mark.parametrize("line", ["[Leave in the fridge overnight].", "Leave it in the fridge [for 4 h]."])
def test_the_fridge_is_cold_wherever_it_is_named(line: str) -> None:
    said = made(line)
    assert said.recipe.actions[1].work.station == "fridge"
    assert not [finding for finding in said.findings if finding.rule == "warm-too-long"]


def test_a_component_may_begin_beside_the_last_wait_of_the_one_before() -> None:
    text = """\
# Chicken
Roast [8 chicken thighs] [in a roasting tin] [at 200C] [for 40 min] [until 74 °C inside].
Lift out and [rest for 15 min].

# Sauce
[Meanwhile], simmer [300 ml dry cider] [in a pan] [for 10 min] [until syrupy].

# Plate
Serve [the chicken] with [the sauce].
"""
    rows = plan(text)
    assert rows["Simmer dry cider"][0] >= rows["Lift out, rest"][0]


@pytest.mark.parametrize("verb", ["Pressure-cook", "Slow-cook", "Air-fry", "Microwave"])
def test_an_appliance_needs_nobody(verb: str) -> None:
    work = made(f"{verb} it [for 25 min].").recipe.actions[1].work
    assert not work.hands and work.wait is not None and work.wait.lo == 25 * 60


def test_serving_within_two_hours_takes_no_two_hours() -> None:
    action = made("[Serve within 2 hours].").recipe.actions[1]
    assert action.work.wait is None and action.within == 2 * 3600


def test_nuts_are_toasted_before_they_are_chopped() -> None:
    text = """\
Beat [100 g butter] with [100 g caster sugar] [in a bowl] [until pale, 5 min].
Fold in [80 g hazelnuts, toasted and chopped] and [bake for 20 min at 180 °C] [until firm].
"""
    assert any(title.startswith("Toast, chop hazelnuts") for title in plan(text))


@pytest.mark.parametrize(
    ("line", "station"),
    [
        ("[Leave for 3 h] in the fridge.", "fridge"),
        ("[Cool for 3 h], then put it in the fridge.", ""),
        ("Put it in the fridge and [leave for 3 h].", "fridge"),
    ],
)
def test_the_fridge_counts_where_the_wait_is(line: str, station: str) -> None:
    assert made(line).recipe.actions[1].work.station == station
