"""Times by weight, times for each of several, work done again within a line: how long the plan takes them for."""

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

HOUR, MIN = 3600, 60


def compiled(lines: str) -> Compiled:
    text = f"title: Sample\nserves: 4\n\n# Sample\n\n{lines}\n"
    return compile(Source("sample.tamis", text), default_kitchen("en"), {})


def waits(lines: str) -> list[int]:
    actions = compiled(lines).recipe.actions
    return [int(action.work.wait.lo) * int(action.times) for action in actions if action.work.wait]


JOINT = "[Roast for 20 min per 500 g] [at 180 °C] [in the oven] [until 74 °C inside]."


@pytest.mark.parametrize(
    ("food", "minutes"),
    [
        ("[1.5 kg pork loin]", 60),
        ("[1.5 kg pork loin] and [2 kg potatoes]", 60),
        ("[2 chickens (1.5 kg each)]", 60),
        ("[a 1.5 kg chicken] and [a 2 kg chicken]", 80),
    ],
)
def test_a_time_by_weight_goes_by_the_piece_that_cooks(food: str, minutes: int) -> None:
    assert waits(f"Lay {food} [in a roasting tin].\n{JOINT}") == [minutes * MIN]


@pytest.mark.parametrize("food", ["[1 pork loin]", "[1 leg of venison]", "[1 pork loin] and [1 kg potatoes]"])
def test_an_unknown_weight_is_reported(food: str) -> None:
    rules = [finding.rule for finding in compiled(f"Lay {food} [in a roasting tin].\n{JOINT}").findings]
    assert "time-by-weight" in rules


@pytest.mark.parametrize("each", ["each", "each batch", "for each load"])
def test_each_after_batches_counts_once(each: str) -> None:
    said = f"[for 8–10 min {each.removeprefix('for ')}]"
    assert waits(f"Brown [1 kg minced beef] [in 3 batches] [in a pan] {said} [until no pink is left].") == [8 * MIN]


@pytest.mark.parametrize("sides", ["on each side", "per side", "on both sides"])
def test_sides_count_twice(sides: str) -> None:
    assert waits(f"Fry [4 eggs] [in a pan] [for 3 min {sides}] [until set].") == [6 * MIN]


@pytest.mark.parametrize(
    "line",
    [
        "Stretch it [6 times], cover and [rise for 40 min] [until puffy].",
        "Fold it [twice] and [rest for 40 min].",
        "Turn it over [3 times], then [leave for 40 min] [until firm].",
    ],
)
def test_work_done_again_within_a_line_repeats_no_wait(line: str) -> None:
    assert waits(f"Mix [500 g bread flour] with [300 g water] [in a bowl].\n{line}") == [40 * MIN]


@pytest.mark.parametrize(
    "line",
    [
        "Bring [2 l milk] [to the boil] [in a pan] [for 10 min].",
        "Heat [2 l milk] [to 80 °C] [for 10 min] [in a pan].",
        "Boil [2 l milk] down [to 1 l] [for 10 min] [in a pan].",
    ],
)
def test_a_time_beside_a_target_is_that_of_reaching_it(line: str) -> None:
    assert waits(line) == [10 * MIN]


@pytest.mark.parametrize(
    ("line", "minutes"),
    [
        ("Stir [1 kg onions] [in a pan] [over medium heat for 10 min] [until soft].", 10),
        ("Bake [1 kg potatoes] [in the oven for 40 min] [at 180 °C] [until soft].", 40),
        ("Cook [1 kg potatoes] [in a pan] [with the lid on for 15 min] [until soft].", 15),
        ("Cook [1 kg potatoes] [in a pan], [stirring for 5 min], [until soft].", 5),
        ("[Roast at 220 °C] [1 kg potatoes] [for 20 min] [in the oven] [until soft].", 20),
        ("Roast [1 kg potatoes] [at 220 °C] [in the oven] [for 1 hour and 10 minutes] [until soft].", 70),
    ],
)
def test_a_time_beside_something_else_counts(line: str, minutes: int) -> None:
    assert waits(line) == [minutes * MIN]


@pytest.mark.parametrize(
    ("line", "pieces"),
    [
        ("Cut each tray [into 17 portions].", 102),
        ("Cut [into 17 portions each].", 102),
        ("Cut every one [into 2 pieces each].", 12),
    ],
)
def test_each_piece_is_divided(line: str, pieces: int) -> None:
    recipe = compiled(f"Press [6 kg mashed potatoes] [into 6 baking trays].\n{line}").recipe
    made = recipe.products[-1]
    assert made.pieces is not None and made.pieces.lo == pieces


@pytest.mark.parametrize(
    ("food", "rate", "grams"),
    [
        ("[4 l water, for boiling]", "[10 g salt per litre of water]", 40),
        ("[2 l milk]", "[35 g sugar per litre of milk]", 70),
        ("[2 kg cabbage]", "[25 g salt per kg of the cabbage]", 50),
        ("[500 g cabbage]", "[2 g salt per 100 g of the cabbage]", 10),
    ],
)
def test_a_rate_goes_by_what_it_names(food: str, rate: str, grams: int) -> None:
    recipe = compiled(f"Put {food} [in a pan].\nStir in {rate}.").recipe
    computed = recipe.uses[-1].computed
    assert computed is not None and round(computed.amount.lo) == grams


@pytest.mark.parametrize("name", ["duck", "goose", "pork"])
def test_a_rate_asks_for_a_weight_only(name: str) -> None:
    text = (
        "title: Cured\nserves: 4\n\n# Cure\n\n"
        f"Grind [18 g coarse salt per kg of the {name}] [in a mortar].\n\n# Meat\n\n"
        f"Rub [2 kg {name}] with [the cure].\n[Chill for 12 h].\n[Roast for 3 h at 180 °C] [in the oven] "
        "[until 74 °C inside].\n"
    )
    result = compile(Source("cured.tamis", text), default_kitchen("en"), {})
    assert [finding.rule for finding in result.findings if finding.severity == "error"] == []
    computed = result.recipe.uses[0].computed
    assert computed is not None and computed.amount.lo == 36
