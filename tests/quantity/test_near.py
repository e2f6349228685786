"""Near misses: how far names are apart, and which one was meant."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.kitchen.house import default_kitchen
from tamis.quantity.near import Known, distance, nearest

NAMES = [goods.name for id in default_kitchen("en").larder.ids() if (goods := default_kitchen("en").larder.get(id))]
KNOWN = Known(NAMES)
_SLIPS = st.lists(st.tuples(st.integers(0, 30), st.sampled_from("aeglost ' é")), max_size=5)


@pytest.mark.parametrize(
    ("one", "other", "slips"),
    [
        ("", "", 0),
        ("cup", "cup", 0),
        ("cup", "cups", 1),
        ("form", "from", 1),
        ("milk", "silk", 1),
        ("flour", "flower", 2),
        ("", "ab", 2),
        ("tsp", "oz", 3),
    ],
)
def test_distance(one: str, other: str, slips: int) -> None:
    assert distance(one, other) == distance(other, one) == slips


@given(st.text("abc", max_size=8), st.text("abc", max_size=8), st.integers(0, 4))
def test_the_limit_only_cuts_off(left: str, right: str, limit: int) -> None:
    assert distance(left, right, limit) == min(distance(left, right), limit + 1)


@pytest.mark.parametrize(
    ("name", "known", "meant"),
    [
        ("cot", ["cat", "cut"], "cat"),
        ("oven", ["whisk", "spoon"], None),
        ("tabelspoon", ["teaspoon", "tablespoon"], "tablespoon"),
        ("handful", ["half"], None),
        ("ml", ["mll"], None),
        # Word by word: as one word only a sixth of it differs, but one of its words is another.
        ("almond meal", ["almond milk"], None),
        ("almnod mikl", ["almond meal", "almond milk"], "almond milk"),
        ("almondmilk", ["almond milk"], "almond milk"),
        (
            "smoked mackerel fillets, rapeseed oli",
            ["smoked mackerel fillets, rapeseed oil"],
            "smoked mackerel fillets, rapeseed oil",
        ),
        ("x" * 61, ["x" * 61], None),
    ],
)
def test_nearest(name: str, known: list[str], meant: str | None) -> None:
    assert nearest(name, known) == meant


@given(st.lists(st.text("aab c", max_size=9), max_size=12), st.text("abc d", max_size=12))
def test_the_same_name_of_any_few(names: list[str], word: str) -> None:
    assert nearest(word, Known(names)) == nearest(word, names)


@settings(deadline=None)
@given(st.sampled_from(NAMES), _SLIPS)
def test_the_same_food_for_a_misspelt_one(name: str, slips: list[tuple[int, str]]) -> None:
    for at, letter in slips:
        name = name[:at] + letter + name[at + (at % 2) :]
    assert nearest(name, KNOWN) == nearest(name, NAMES)


@given(st.lists(st.text("abcd", max_size=9), max_size=12), st.text("abcde", max_size=12), st.integers(0, 5))
def test_what_slips_can_make_is_among_what_is_left_to_compare(names: list[str], word: str, limit: int) -> None:
    within = list(Known(names).within(word, limit))
    kept = iter(names)
    assert all(name in kept for name in within)  # in their order
    assert {name for name in names if distance(word, name) <= limit} <= set(within)


@pytest.mark.parametrize("word", ["flour of corn", "tamboro leaf", "instazt yeast", "x" * 60])
def test_few_are_left_to_compare(word: str) -> None:
    assert len(list(KNOWN.within(word, len(word) // 3))) < len(NAMES) / 20


def test_a_name_of_any_length_is_no_trouble() -> None:
    known = Known(["", "salt", "s" * 5000])
    assert nearest("saltt", known) == "salt"
    assert nearest("s" * 5000, known) is None
    assert nearest("salt", Known([])) is None
