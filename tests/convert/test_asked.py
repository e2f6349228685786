"""Questions as somebody types them: what is understood, and what is said where nothing is."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.convert.asked import Asked, read_asked
from tamis.kitchen.house import default_kitchen
from tamis.quantity.amount import Amount

KITCHEN = default_kitchen("en")


def ask(text: str) -> Asked:
    return read_asked(text, KITCHEN)


@pytest.mark.parametrize(
    ("text", "low", "high", "scale", "fan"),
    [
        ("180 C", 180, 180, "c", False),
        ("180 °C", 180, 180, "c", False),
        ("180°c", 180, 180, "c", False),
        ("350 degrees F", 350, 350, "f", False),
        ("350 fahrenheit", 350, 350, "f", False),
        ("180-190 C", 180, 190, "c", False),
        ("97–99 °C", 97, 99, "c", False),
        ("-18 C", -18, -18, "c", False),
        ("160 fan", 160, 160, "c", True),
        ("160 °C fan", 160, 160, "c", True),
        ("gas mark 4", 4, 4, "gas", False),
        ("Gas 4", 4, 4, "gas", False),
        ("180º", 180, 180, "c", False),
        ("180 to 190 deg. centigrade", 180, 190, "c", False),
        ("Moderately slow oven", 325, 350, "f", False),
        ("a moderate oven", 350, 375, "f", False),
        ("very hot oven", 450, 500, "f", False),
    ],
)
def test_degrees(text: str, low: int, high: int, scale: str, fan: bool) -> None:
    found = ask(text).degrees
    assert found is not None
    assert found == (Amount(Fraction(low), Fraction(high)), scale, fan)


@pytest.mark.parametrize(
    ("text", "measures", "goods", "states"),
    [
        ("2/3 cup bread flour", [("2/3", "cup")], "bread-flour", ()),
        ("[2/3 cup bread flour]", [("2/3", "cup")], "bread-flour", ()),
        ("1 cup sifted flour", [("1", "cup")], "plain-flour", ("sifted",)),
        ("1 cup plus 2 tbsp milk", [("1", "cup"), ("2", "tbsp")], "milk", ()),
        ("1 lb 8 oz beef", [("1", "lb"), ("8", "oz")], "beef", ()),
        ("3 cloves garlic", [("3", "clove")], "garlic", ()),
        ("2 large eggs", [("2", "")], "egg", ("large",)),
        ("half a lemon", [("1/2", "")], "lemon", ()),
        ("a pinch of salt", [("1", "pinch")], "salt", ()),
    ],
)
def test_food(text: str, measures: list[tuple[str, str]], goods: str, states: tuple[str, ...]) -> None:
    found = ask(text)
    assert found.item is not None
    assert found.item.goods is not None
    assert (found.item.goods.id, found.item.states) == (goods, states)
    assert [(each.amount.lo, each.unit) for each in found.measures] == [(Fraction(n), unit) for n, unit in measures]
    assert not found.problem


@pytest.mark.parametrize(
    ("text", "measures"),
    [
        ("100 ml", [("100", "ml")]),
        ("1 lb 8 oz", [("1", "lb"), ("8", "oz")]),
        ("9 inches", [("9", "inch")]),
        ("9-inch", [("9", "inch")]),
        ("a pinch", [("1", "pinch")]),
        ("2 dashes", [("2", "dash")]),
    ],
)
def test_bare_measure(text: str, measures: list[tuple[str, str]]) -> None:
    found = ask(text)
    assert found.item is None
    assert [(each.amount.lo, each.unit) for each in found.measures] == [(Fraction(n), unit) for n, unit in measures]


def test_sides_of_a_tin() -> None:
    assert [(each.amount.lo, each.unit) for each in ask("20 × 30 cm").sides] == [(20, "cm"), (30, "cm")]


@pytest.mark.parametrize(
    ("text", "problem", "hint"),
    [
        ("", "nothing to convert", "tamis convert"),
        ("  ", "nothing to convert", "tamis convert"),
        ("flour", "is not a measure", "2/3 cup bread flour"),
        ("5", "is not a measure", "100 ml"),
        ("180", "is not a measure", "180 °C"),
        ("20 min", "is not a measure", "gas mark 4"),
        ("the oven", "is not a measure", "100 ml"),
        ("1 T sugar", "“T” is not clear as a unit", "`tbsp`"),
        ("2 tbps sugar", "no unit is called “tbps”", "`tbsp`"),
        ("1,5 kg flour", "can be read as 1.5 or as 1 and 5", ""),
        ("6–4 g salt", "runs the wrong way round", "4–6 g"),
        ("1 (cup flour", "opening parenthesis has no closing one", ")"),
        ("x" * 300, "longer than 200 characters", ""),
        ("9" * 150 + " g salt", "", ""),
    ],
)
def test_not_understood(text: str, problem: str, hint: str) -> None:
    found = ask(text)
    assert found.degrees is None
    assert not found.measures
    assert found.problem
    assert problem in found.problem
    assert hint in found.hint


def test_an_unknown_food_keeps_its_measure() -> None:
    found = ask("2 cups bred flour")
    assert [(each.amount.lo, each.unit) for each in found.measures] == [(2, "cup")]
    assert "bred flour" in found.problem
    assert "bread flour" in found.hint
