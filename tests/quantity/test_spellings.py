"""Which spelling is which unit, which is none, and what is offered instead."""

from __future__ import annotations

import json
import re
import time

import pytest

from tamis.assets import asset_text
from tamis.quantity.units import CUPS, SPOONS, Units, shipped

UNITS = shipped("en")
ROWS = json.loads(asset_text("grammar/units.json"))

SPELT = [
    ("teaspoon", "tsp"), ("Teaspoons", "tsp"), ("tsp.", "tsp"), ("TSP", "tsp"), ("Tbsp", "tbsp"),
    ("tbs", "tbsp"),
    ("tablespoons", "tbsp"), ("g", "g"), ("grams", "g"), ("gramme", "g"), ("kilo", "kg"), ("l", "l"),
    ("L", "l"),
    ("litre", "l"), ("liters", "l"), ("ML", "ml"), ("ounces", "oz"), ("lbs", "lb"), ("lb.", "lb"),
    ("pound", "lb"),
    ("fl oz", "fl_oz"), ("fl. oz.", "fl_oz"), ("fl.oz", "fl_oz"), ("fluid  ounces", "fl_oz"), ("Cups", "cup"),
    ("US cup", "us_cup"), ("metric cups", "metric_cup"), ("imperial pint", "imp_pint"), ("hr", "h"),
    ("hrs", "h"),
    ("hour", "h"), ("minutes", "min"), ("mins", "min"), ("sec", "s"), ("days", "day"), ("wk", "week"),
    ("tablespoonful", "tbsp"), ("teaspoonfuls", "tsp"), ("tablespoonsful", "tbsp"), ("cupfuls", "cup"),
    ("dessertspoonful", "dessertspoon"), ("saltspoonful", "saltspoon"),
    ("months", "month"), ("inches", "inch"), ("cm", "cm"), ("millimetres", "mm"), ("°C", "deg_c"),
    ("degrees Fahrenheit", "deg_f"), ("pinches", "pinch"), ("dashes", "dash"), ("fl_oz", "fl_oz"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "unit"), SPELT)
def test_known(name: str, unit: str) -> None:
    found = UNITS.get(name)
    assert found is not None
    assert found.id == unit


@pytest.mark.parametrize("name", ["T", "t", "c", "C", "in", "m", "G", "S", "H", "", "overnight", "clove", "stick", "."])
def test_no_unit(name: str) -> None:
    assert UNITS.get(name) is None


@pytest.mark.parametrize(
    ("name", "meant"),
    [
        ("T", "tbsp"), ("t", "tsp"), ("c", "cup"), ("C", "cup"), ("in", "inch"), ("m", "min"),
        ("tabelspoon", "tablespoon"), ("teasppons", "teaspoons"), ("grms", "g"), ("mintues", "min"),
        ("cupp", "cup"), ("litrs", "litre"), ("onions", None), ("sprig", None), ("handful", None),
        ("x" * 10_000, None),
    ],
)  # fmt: skip
def test_near(name: str, meant: str | None) -> None:
    assert UNITS.near(name) == meant


def test_no_spelling_leads_to_two_units() -> None:
    names = [name for row in ROWS for name in row["names"]]
    assert len(names) == len(set(names))


@pytest.mark.parametrize("kind", ["mass", "volume", "time", "length", "nominal", "temperature"])
def test_pattern_takes_the_longest_spelling(kind: str) -> None:
    pattern = re.compile(UNITS.pattern(kind))
    for name in UNITS.names(kind):
        found = pattern.match(name + " of")
        assert found is not None
        assert found.group() == name


def test_pattern_keeps_the_rules_on_case() -> None:
    mass = re.compile(UNITS.pattern("mass"))
    assert mass.fullmatch("KG")
    assert mass.fullmatch("g")
    assert not mass.fullmatch("G")


def test_names_are_longest_first() -> None:
    names = UNITS.names("volume")
    assert [len(name) for name in names] == sorted(map(len, names), reverse=True)
    assert "fl oz" in names
    assert "gram" not in names


@pytest.mark.parametrize("cup", CUPS)
@pytest.mark.parametrize("tbsp", ["", *SPOONS])
def test_every_choice_loads(cup: str, tbsp: str) -> None:
    units = shipped("en", cup, tbsp)
    chosen = units.get("cup")
    exact = units.get(CUPS[cup][0])
    assert chosen is not None
    assert exact is not None
    assert chosen == exact._replace(id="cup")


def test_unknown_choice_is_the_callers_fault() -> None:
    with pytest.raises(KeyError):
        Units.load(asset_text("grammar/units.json"), "en", "thimble")


def test_loading_is_cheap() -> None:
    """A command that checks one file must not feel it: under 1 ms (best of many: the machine may be busy)."""
    text = asset_text("grammar/units.json")
    best = 1.0
    for _ in range(50):
        start = time.perf_counter()
        Units.load(text, "en")
        best = min(best, time.perf_counter() - start)
    assert best < 0.001
