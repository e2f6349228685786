"""The whole answer, and that each part of it rests on what it says."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.convert.answer import Answer, answer
from tamis.convert.asked import read_asked
from tamis.convert.printing import answer_data, answer_text
from tamis.convert.unit import said_in
from tamis.kitchen.house import default_kitchen
from tamis.quantity.units import shipped

KITCHEN = default_kitchen("en")


def ask(text: str) -> Answer:
    return answer(read_asked(text, KITCHEN), KITCHEN)


def rows(text: str, title: str = "") -> list[str]:
    found = next((section for section in ask(text).sections if section.title == title), None)
    return [f"{row.label}: {row.text}" if row.label else row.text for row in found.rows] if found else []


def test_the_answer_to_two_thirds_of_a_cup_of_bread_flour() -> None:
    assert answer_text(ask("2/3 cup bread flour")) == (
        "2/3 cup bread flour\n"
        "\n"
        "  weight                    91 g; sources differ: 82–91 g\n"
        "                              USDA SR28 20083 cup; HERR 41\n"
        "  ounces                    3¼ oz\n"
        "  volume                    158 ml\n"
        "  US cups and spoons        ⅔ cup, or 5¼ fl oz\n"
        "  metric cups and spoons    ½ cup plus 2 tbsp\n"
        "  imperial cups and spoons  ½ cup plus 1 tbsp, or 5½ fl oz\n"
        "\n"
        "In another state\n"
        "  unsifted: 82 g\n"
        "    HERR 41\n"
        "  sifted: 78 g\n"
        "    HERR 41\n"
    )


@pytest.mark.parametrize(
    ("text", "weight"),
    [
        ("1 cup sifted flour", "116 g"),
        ("1 cup flour", "125 g; sources differ: 125–126 g"),
        ("2 large eggs", "100 g"),
        ("1 jumbo egg", "63 g"),
        ("3 cloves garlic", "9 g"),
        ("2-3 cloves garlic", "6–9 g"),
        ("juice of 2 lemons", "96 g"),
        ("1 can (400 g) chopped tomatoes", "400 g"),
        ("2 × 400 g cans chickpeas", "800 g"),
        ("1 cup plus 2 tbsp milk", "275 g"),
        ("1 cup caster sugar", "≈ 200 g; sources differ: 196–200 g"),
        ("1 stick butter", "113 g"),
    ],
)
def test_weight(text: str, weight: str) -> None:
    assert f"weight: {weight}" in rows(text)


@pytest.mark.parametrize(
    ("text", "row"),
    [
        ("100 g butter", "volume: 104 ml"),
        ("15 g salt", "US cups and spoons: 2½ tsp"),
        ("180 g flour", "volume: 341 ml; sources differ: 338–341 ml"),
        ("10 ml", "metric cups and spoons: 2 tsp"),
        ("1 cup", "metric cups and spoons: ¾ cup plus 3 tbsp"),
        ("1 imperial pint", "US cups and spoons: 2¼ cups plus 2 tbsp, or 19¼ fl oz"),
        ("9 inches", "metric: 22.9 cm"),
        ("23 cm", "US: 9 inch (to the eighth)"),
        ("20 × 30 cm", "US: 7⅞ inch × 11¾ inch (to the eighth)"),
    ],
)
def test_volume_and_length(text: str, row: str) -> None:
    assert row in rows(text)


def test_sources_stand_with_what_rests_on_them() -> None:
    first = ask("3 cloves garlic").sections[0].rows
    by_label = {row.label: row.source for row in first}
    assert by_label["weight"] == "USDA SR28 11215 clove"
    assert by_label["volume"] == "USDA SR28 11215 cup"
    weighed = {row.label: row.source for row in ask("100 g butter").sections[0].rows}
    assert weighed["weight"] == ""
    assert weighed["volume"] == "USDA SR28 01145 cup"


def test_pieces() -> None:
    assert "about ¾ large onion (150 g each)" in rows("1 onion", "In pieces")
    assert "about 10 cloves (3 g each)" in rows("30 g garlic", "In pieces")
    assert "about 4 medium tomatoes (123 g each)" in rows("500 g tomatoes", "In pieces")
    assert not any("each" in row and "2 large eggs" in row for row in rows("2 large eggs", "In pieces"))


def test_states_with_the_same_figure_stand_together() -> None:
    assert rows("3 cloves garlic", "In another state") == ["crushed, minced, chopped, grated: 16 ml"]


@pytest.mark.parametrize("text", ["1 pinch of salt", "a pinch", "2 dashes hot sauce"])
def test_a_pinch_stays_a_pinch(text: str) -> None:
    found = ask(text)
    assert not found.sections
    assert "no standard says how much a" in found.notes[0]


def test_what_is_missing_is_said() -> None:
    assert ask("10 g fresh yeast").notes == (
        "no density on record for fresh yeast: its volume cannot be converted to weight, nor back",
    )
    assert "based on a similar food" in ask("1 cup caster sugar").notes[0]


def test_an_unknown_food_gets_what_can_be_told() -> None:
    found = ask("2 cups bred flour")
    assert "bred flour" in found.problem
    assert found.sections[0].rows[0].label == "volume"
    assert found.worths.grams is None


HEATS = [
    ("180 C", ["Celsius: 180 °C", "Fahrenheit: 356 °F", "oven: 180 °C, 350 °F", "gas mark: 4"]),
    ("350 F", ["Celsius: 176.7 °C", "oven: 175 °C, 350 °F", "gas mark: 4"]),
    ("gas mark 6", ["Fahrenheit: 400 °F", "oven: 205 °C, 400 °F", "gas mark: 6"]),
    ("160 fan", ["oven: 180 °C, 350 °F", "fan oven: 160 °C, 325 °F: 20 °C lower (NSW Health)"]),
    ("180–190 C", ["oven: 180–190 °C, 350–375 °F", "gas mark: 4–5"]),
    ("-18 C", ["Celsius: −18 °C", "Fahrenheit: −0.4 °F"]),
]


@pytest.mark.parametrize(("text", "wanted"), HEATS)
def test_heat(text: str, wanted: list[str]) -> None:
    assert [row for row in wanted if row not in rows(text)] == []


@pytest.mark.parametrize(
    ("text", "word"), [("180 C", "moderate"), ("150 C", "slow"), ("230 C", "hot"), ("250 F", "very slow")]
)
def test_oven_words(text: str, word: str) -> None:
    """NIST's older cooking page."""
    said = next(row for row in rows(text) if row.startswith("old term"))
    assert word in said


@pytest.mark.parametrize(
    ("text", "limit"), [("74 C", "166 °F"), ("165 F", "74 °C"), ("155 F", "69 °C"), ("63 C", "146 °F")]
)
def test_a_limit_is_never_rounded_below_itself(text: str, limit: str) -> None:
    assert f"rounded up: {limit} on a thermometer that shows whole degrees" in rows(text)


@pytest.mark.parametrize("text", ["4 C", "100 C", "180 C"])
def test_no_limit_where_none_is(text: str) -> None:
    assert not any(row.startswith("rounded up") for row in rows(text))


UNITS = [
    ("2/3 cup bread flour", "g", "91 g (sources differ: 82–91 g)"),
    ("2/3 cup bread flour", "tbsp", "10⅔ tbsp"),
    ("200 g flour", "cups", "1.6 cups (sources differ: 1.59–1.6 cups)"),
    ("30 g garlic", "cloves", "10 cloves"),
    ("500 g onions", "medium", "4.55 medium"),
    ("2 eggs", "g", "100 g"),
    ("1 lb", "g", "454 g"),
    ("1 cup", "metric cup", "0.946 metric cup"),
    ("9 inches", "cm", "22.86 cm"),
    ("180 C", "F", "356 °F"),
    ("350 F", "C", "176.7 °C"),
    ("200 C", "gas", "gas mark 6"),
    ("200 C", "fan", "180 °C fan"),
]


@pytest.mark.parametrize(("text", "unit", "said"), UNITS)
def test_in_one_unit(text: str, unit: str, said: str) -> None:
    found = said_in(read_asked(text, KITCHEN), unit, KITCHEN)
    assert (found.text, found.problem) == (said, "")


REFUSALS = [
    ("1 cup flour", "gramm", "no unit is called “gramm”", "did you mean `g`?"),
    ("30 g garlic", "clov", "no unit is called “clov”", "clove"),
    ("1 cup", "g", "a cup of flour is not a cup of honey", ""),
    ("1 pinch salt", "g", "no standard says", ""),
    ("1 cup milk", "cm", "no figure on record converts 1 cup milk to cm", ""),
    ("180 C", "ml", "is not a temperature scale", "C, F, fan, gas"),
    ("10 C", "gas", "no gas mark is near", ""),
    ("gas mark 20", "C", "no oven has this setting", "1 to 10"),
    ("2 cups bred flour", "g", "no ingredient data for “bred flour”", "bread flour"),
]


@pytest.mark.parametrize(("text", "unit", "problem", "hint"), REFUSALS)
def test_refusals(text: str, unit: str, problem: str, hint: str) -> None:
    found = said_in(read_asked(text, KITCHEN), unit, KITCHEN)
    assert not found.text
    assert problem in found.problem
    assert hint in found.hint


def test_house_cup() -> None:
    kitchen = KITCHEN._replace(units=shipped("en", "metric"))
    assert said_in(read_asked("2 cups water", kitchen), "ml", kitchen).text == "500 ml"
    found = answer(read_asked("2 cups milk", kitchen), kitchen)
    assert found.worths.ml is not None
    assert found.worths.ml.usual.lo == Fraction(500)


def test_data() -> None:
    data = answer_data(ask("2/3 cup bread flour"))
    assert data["grams"] == {"low": 91.333333, "high": 91.333333, "least": 82.0, "most": 91.333333}
    assert data["millilitres"]["low"] == 157.725491
    assert data["sections"][0]["rows"][0] == {
        "label": "weight",
        "text": "91 g; sources differ: 82–91 g",
        "source": "USDA SR28 20083 cup; HERR 41",
    }
    assert answer_data(ask("180 C"))["grams"] is None


def test_no_line_is_wider_than_asked() -> None:
    for text in ("3 cloves garlic", "1 tbsp basil", "1 cup buttermilk", "180 C", "2 large eggs"):
        assert max(map(len, answer_text(ask(text), 60).splitlines())) <= 60
