"""Scaling and pan exchange against published examples. The source stands beside each, with how far it is confirmed.

"confirmed": a copy of the source was read. "secondary": a page that states the value.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.checks.scaling._pans import pan_factor, read_pan
from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.quantity.amount import exactly
from tamis.quantity.measure import Measure, convert
from tamis.quantity.numerals import rounded
from tamis.scaling.scale import scaled
from tamis.scaling.wanted import factor_for
from tamis.source import Source
from tamis.table.scaled import pounds_quarters

KITCHEN = default_kitchen("en")
POUND = Fraction(45359237, 100000)


def recipe(header: str, clause: str) -> Compiled:
    text = f"title: Example\n{header}\n\n# Example\n\nStir [{clause}] [in a bowl].\n"
    return compile(Source("example.tamis", text), KITCHEN, {})


def total(made: Compiled) -> Measure:
    return made.table.rows[0].total[0]


def factor(way: str, text: str, of: Compiled) -> Fraction:
    wanted = factor_for(way, text, of.recipe, KITCHEN)
    assert not wanted.problem
    return wanted.factor


# USDA Recipes for Schools, introduction (confirmed: verbatim copy): factor = desired yield / recipe yield; multiply
# every ingredient; yield = portions x portion size. Example there: 100 servings of 3.49 oz to 80.
def test_usda_recipes_for_schools() -> None:
    of = recipe("serves: 100\nmakes: 100 portions (3.49 oz each)", "349 oz ground beef")
    by = factor("serves", "80", of)
    assert by == Fraction(4, 5)
    made = scaled(of, by, KITCHEN)
    assert total(made.compiled).amount.lo == 80 * Fraction("3.49")
    assert made.text.splitlines()[1:3] == ["serves: 80", "makes: 80 portions (3.49 oz each)"]


# US Armed Forces Recipe Service, guideline card A-1(2) (confirmed: verbatim copy): 348 portions from 100;
# 1.25 lb x 3.48 = 4.35 lb, .35 lb = 5.60 oz, which is 5 1/2 oz.
def test_armed_forces_factor() -> None:
    of = recipe("serves: 100", "1.25 lb ground beef")
    by = factor("serves", "348", of)
    assert by == Fraction("3.48")
    made = scaled(of, by, KITCHEN)
    assert total(made.compiled).amount.lo == Fraction("4.35")
    assert made.edits[-1].shown == "4 lb 5½ oz"


# The same card's table for ounces (confirmed): both bounds of every row.
@pytest.mark.parametrize(
    ("hundredths", "quarters"),
    [(0, 0), (12, 0), (13, 1), (37, 1), (38, 2), (62, 2), (63, 3), (87, 3), (88, 4), (99, 4)],
)
def test_armed_forces_ounces(hundredths: int, quarters: int) -> None:
    ounces = 16 + Fraction(hundredths, 100)
    wanted = {0: "1 lb", 1: "1 lb ¼ oz", 2: "1 lb ½ oz", 3: "1 lb ¾ oz", 4: "1 lb 1 oz"}[quarters]
    assert pounds_quarters(ounces * POUND / 16) == wanted


# US Navy culinary manual, conversion chapter p. 110 (confirmed: its own page): 6 gal x 3.33 = 19.98 gal = 19 gal 3 qt
# 1 pt 1 cup 10 tbsp 2 3/4 tsp (the exact tail, 2.64 tsp, is rounded to a quarter there); 2 lb x 2.61 = 5.22 lb.
def test_navy_gallons() -> None:
    of = recipe("serves: 100", "6 gallons water")
    left = total(scaled(of, Fraction("3.33"), KITCHEN).compiled)
    assert left.amount.lo == Fraction("19.98")
    counts = []
    for unit in ("gallon", "quart", "pint", "us_cup", "us_tbsp", "us_tsp"):
        turned = convert(left, unit, KITCHEN.units)
        assert turned is not None, unit
        whole = turned.amount.lo // 1
        counts.append(whole)
        left = Measure(exactly(turned.amount.lo - whole), unit)
    assert counts == [19, 3, 1, 1, 10, 2]
    assert left.amount.lo == Fraction("0.64")
    assert rounded(2 + left.amount.lo, Fraction(1, 4)) == Fraction("2.75")


def test_navy_pounds() -> None:
    of = recipe("serves: 100", "2 lb ground beef")
    assert total(scaled(of, Fraction("2.61"), KITCHEN).compiled).amount.lo == Fraction("5.22")


# Arithmetic, of no source: 48 x 4 oz = 192 oz; 72 x 6 oz = 432 oz; factor 2.25.
def test_other_portion_size() -> None:
    of = recipe("makes: 48 portions (4 oz each)", "192 oz ground beef")
    assert factor("makes", "72 × 6 oz", of) == Fraction("2.25")
    assert factor("makes", "432 oz", of) == Fraction("2.25")
    assert factor("makes", "27 lb", of) == Fraction("2.25")


# Areas in square inches by geometry; the same ratios are printed by several baking pages (secondary).
@pytest.mark.parametrize(
    ("pan", "area"),
    [
        ("8 inch square", "64"),
        ("9 inch square", "81"),
        ("9 × 13 inch", "117"),
        ("8 inch round", "50.27"),
        ("9 inch round", "63.62"),
    ],
)
def test_pan_area(pan: str, area: str) -> None:
    read = read_pan(pan, KITCHEN)
    assert read is not None and read.area is not None
    assert rounded(read.area / Fraction("25.4") ** 2, Fraction(1, 100)) == Fraction(area)


@pytest.mark.parametrize(
    ("old", "new", "printed", "places"),
    [
        ("8 inch square", "9 inch square", "1.27", 2),
        ("8 inch square", "9 × 13 inch", "1.83", 2),
        ("8 inch round", "9 × 13 inch", "2.33", 2),
        ("8 inch square", "9 inch round", "0.994", 3),
    ],
)
def test_pan_factor(old: str, new: str, printed: str, places: int) -> None:
    before, after = read_pan(old, KITCHEN), read_pan(new, KITCHEN)
    assert before is not None and after is not None
    by = pan_factor(before, after)
    assert by is not None
    assert rounded(by, Fraction(1, 10**places)) == Fraction(printed)


# Geometry: at equal depth the volume grows by the same factor as the area; a depth that differs counts by itself.
def test_equal_depth_scales_like_the_area() -> None:
    shallow, deep = read_pan("8 inch square, 2 inches deep", KITCHEN), read_pan("9 inch square, 2 inches deep", KITCHEN)
    deeper = read_pan("9 inch square, 3 inches deep", KITCHEN)
    assert shallow is not None and deep is not None and deeper is not None
    assert pan_factor(shallow, deep) == Fraction(81, 64)
    assert pan_factor(shallow, deeper) == (Fraction(81, 64) * Fraction(3, 2)).limit_denominator(1000)
