"""Units against two programs that share no definition with ours: pint's default registry and GNU units."""

from __future__ import annotations

import json
import shutil
import subprocess
from fractions import Fraction
from functools import cache
from typing import Any

import pytest

from tamis.assets import asset, asset_text
from tamis.quantity.make_units import made
from tamis.quantity.measure import BASES
from tamis.quantity.units import shipped

# Our id, pint’s name, GNU’s name: the size spelled out where a program has no name, None where it means
# another.
NAMES: dict[str, tuple[str | None, str | None]] = {
    "mm": ("millimeter", "mm"), "cm": ("centimeter", "cm"), "metre": ("meter", "m"), "inch": ("inch", "inch"),
    "g": ("gram", "g"), "kg": ("kilogram", "kg"), "mg": ("milligram", "mg"),
    "lb": ("pound", "lb"), "oz": ("ounce", "oz"), "label_oz": ("28 * gram", "28 g"),
    "ml": ("milliliter", "ml"), "cl": ("centiliter", "cl"), "dl": ("deciliter", "dl"), "l": ("liter", "l"),
    "metric_cup": ("0.25 * liter", "metriccup"), "japanese_cup": ("200 * ml", "japancup"),
    "metric_tbsp": ("15 * ml", "brtablespoon"), "metric_tsp": ("5 * ml", "brteaspoon"),
    "australian_tbsp": ("20 * ml", "australiatablespoon"), "dessertspoon": ("10 * ml", "brdessertspoon"),
    "gallon": ("gallon", "usgallon"), "quart": ("quart", "usquart"), "pint": ("US_pint", "uspint"),
    "gill": ("gill", "usgill"), "fl_oz": ("US_fluid_ounce", "usfloz"), "us_cup": ("cup", "uscup"),
    "us_tbsp": ("tablespoon", "ustbsp"), "us_tsp": ("teaspoon", "ustsp"),
    "label_cup": ("240 * ml", "240 ml"), "label_fl_oz": ("30 * ml", "30 ml"),
    "label_tbsp": ("15 * ml", "15 ml"), "label_tsp": ("5 * ml", "5 ml"),
    "cup": ("cup", "uscup"), "tbsp": ("tablespoon", "ustbsp"), "tsp": ("teaspoon", "ustsp"),
    "saltspoon": ("0.25 * teaspoon", "saltspoon"),
    "imp_gallon": ("UK_gallon", "brgallon"), "imp_quart": ("UK_quart", "brquart"),
    "imp_pint": ("UK_pint", "brpint"), "imp_gill": ("UK_gill", "brgill"), "imp_cup": ("UK_cup", "brcup"),
    "imp_fl_oz": ("UK_fluid_ounce", "brfloz"), "imp_tbsp": ("0.625 * UK_fluid_ounce", "5|8 brfloz"),
    "imp_tsp": ("0.15625 * UK_fluid_ounce", "5|32 brfloz"),
    "s": ("second", "s"), "min": ("minute", "min"), "h": ("hour", "hour"), "day": ("day", "day"),
    "week": ("week", "week"), "month": ("month", None),
}  # fmt: skip

SIZED = [row["id"] for row in json.loads(asset_text("grammar/units.json")) if row["kind"] in BASES]


@cache
def _pint() -> Any:
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


def test_every_sized_unit_is_compared() -> None:
    assert set(SIZED) == set(NAMES)


@pytest.mark.parametrize("unit", SIZED)
def test_pint_agrees(unit: str) -> None:
    ours = shipped("en").get(unit)
    name = NAMES[unit][0]
    assert ours is not None
    base = {"g": "gram", "ml": "milliliter", "s": "second", "mm": "millimeter"}[BASES[ours.kind]]
    theirs = _pint().parse_expression(name).to(base).magnitude
    assert ours.factor == theirs


@pytest.mark.skipif(shutil.which("units") is None, reason="GNU units is not installed (Debian package: units)")
@pytest.mark.parametrize("unit", [unit for unit in SIZED if NAMES[unit][1]])
def test_gnu_units_agree(unit: str) -> None:
    ours = shipped("en").get(unit)
    assert ours is not None
    name = str(NAMES[unit][1])
    run = subprocess.run(
        ["units", "--terse", "--digits", "15", name, BASES[ours.kind]],
        capture_output=True,
        text=True,
        check=True,
    )
    assert float(run.stdout) == pytest.approx(float(ours.factor), rel=1e-12), name


def test_units_json_is_what_units_txt_says() -> None:
    """Fails on drift: run `python -m tamis.quantity.make_units`."""
    assert asset_text("grammar/units.json") == made(asset("grammar/units.txt"))


def test_temperatures_are_defined_as_the_compiler_converts_them() -> None:
    from pint import UnitRegistry

    from tamis.quantity.temperature import c_from_f, f_from_c

    ours: Any = UnitRegistry(str(asset("grammar/units.txt")), non_int_type=Fraction)
    for degrees in (-40, 0, 63, 180):
        in_f = ours.Quantity(Fraction(degrees), "deg_c").to("deg_f").magnitude
        assert in_f == f_from_c(Fraction(degrees))
        assert ours.Quantity(in_f, "deg_f").to("deg_c").magnitude == c_from_f(in_f) == degrees
