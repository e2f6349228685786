"""Units, spoons and oven settings against published values.

The source stands beside each value. HB 44: NIST Handbook 44, appendix C. UCUM: Unified Code for Units of
Measure 2.2 (ucum-essence.xml). WMA: UK Weights and Measures Act 1985, schedule 1. CFR: 21 CFR
101.9(b)(5)(viii). NSW: conversion chart of NSW Health. NIST household: the "Metric Household" page. NIST
cooking: the "Cooking Measurement Equivalencies" page. ICN: "Basics at a Glance" of the Institute of Child
Nutrition. GNU: GNU units, definitions 3.15.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.quantity.numerals import fixed
from tamis.quantity.temperature import c_from_f, c_from_gas, f_from_c, f_from_gas, fan_from_c, gas_from_f
from tamis.quantity.units import Units, shipped

UNITS = shipped("en")


def worth(name: str, units: Units = UNITS) -> Fraction:
    unit = units.get(name)
    assert unit is not None, name
    return unit.factor


EXACT = [
    ("inch", "25.4", "UCUM [in_i], international inch of 1959"),
    ("US gallon", "3785.411784", "HB 44 (231 cubic inches); UCUM [gal_us]"),
    ("US quart", "946.352946", "UCUM [qt_us]"),
    ("US pint", "473.176473", "UCUM [pt_us]"),
    ("US cup", "236.5882365", "HB 44 (8 fl oz exactly); UCUM [cup_us]"),
    ("US gill", "118.29411825", "UCUM [gil_us]"),
    ("US fluid ounce", "29.5735295625", "UCUM [foz_us]"),
    ("US tablespoon", "14.78676478125", "UCUM [tbs_us]"),
    ("US teaspoon", "4.92892159375", "UCUM [tsp_us]"),
    ("label cup", "240", "CFR; UCUM [cup_m]"),
    ("label fluid ounce", "30", "CFR; UCUM [foz_m]"),
    ("label tablespoon", "15", "CFR; UCUM [tbs_m]"),
    ("label teaspoon", "5", "CFR; UCUM [tsp_m]"),
    ("label ounce", "28", "CFR; UCUM [oz_m]"),
    ("metric cup", "250", "NSW; GNU metriccup"),
    ("Australian tablespoon", "20", "NSW; GNU australiatablespoon"),
    ("metric teaspoon", "5", "NSW"),
    ("metric tablespoon", "15", "GNU britishtablespoon"),
    ("Japanese cup", "200", "GNU japancup"),
    ("imperial gallon", "4546.09", "WMA; UCUM [gal_br]"),
    ("imperial pint", "568.26125", "UCUM [pt_br]"),
    ("imperial fluid ounce", "28.4130625", "UCUM [foz_br]"),
    ("pound", "453.59237", "UCUM [lb_av], international pound of 1959"),
    ("ounce", "28.349523125", "UCUM [oz_av]"),
    ("litre", "1000", "SI brochure; UCUM l"),
    ("centilitre", "10", "SI brochure"),
    ("decilitre", "100", "SI brochure"),
    ("kilogram", "1000", "SI brochure"),
    ("week", "604800", "UCUM wk = 7 d"),
    ("month", "2629800", "UCUM mo_j = a_j/12, the Julian year being 365.25 d"),
]


@pytest.mark.parametrize(("name", "value", "source"), EXACT)
def test_exact_worth(name: str, value: str, source: str) -> None:
    assert worth(name) == Fraction(value), source


CHAIN = [
    ("gallon", 4, "quart"),
    ("gallon", 8, "pint"),
    ("gallon", 16, "cup"),
    ("gallon", 128, "fl oz"),
    ("gallon", 256, "tbsp"),
    ("gallon", 768, "tsp"),
    ("cup", 16, "tbsp"),
    ("tbsp", 3, "tsp"),
    ("lb", 16, "oz"),
    ("imperial pint", 20, "imperial fl oz"),
    ("imperial gallon", 8, "imperial pint"),
]


@pytest.mark.parametrize(("large", "count", "small"), CHAIN)
def test_chain_is_exact(large: str, count: int, small: str) -> None:
    """HB 44 and WMA: the units are defined as parts of one another, so nothing may be lost on the way."""
    assert worth(large) == count * worth(small)


ROUNDED = [
    ("tsp", "1", "4.9", "NIST household"),
    ("tbsp", "1", "15", "NIST household"),
    ("fl oz", "1", "30", "NIST household"),
    ("cup", "1/4", "59", "NIST household"),
    ("gill", "1", "118", "NIST household"),
    ("cup", "1", "237", "NIST household"),
    ("pint", "1", "473", "NIST household"),
    ("quart", "1", "946", "NIST household"),
    ("oz", "1", "28", "NIST cooking"),
    ("lb", "1", "454", "NIST cooking"),
]


@pytest.mark.parametrize(("name", "count", "printed", "source"), ROUNDED)
def test_rounded_worth(name: str, count: str, printed: str, source: str) -> None:
    places = len(printed.partition(".")[2])
    assert fixed(worth(name) * Fraction(count), places) == printed, source


IN_CUPS = [
    ("1/8", "2", "0"),
    ("1/4", "4", "0"),
    ("1/3", "5", "1"),
    ("3/8", "6", "0"),
    ("1/2", "8", "0"),
    ("5/8", "10", "0"),
    ("2/3", "10", "2"),
    ("3/4", "12", "0"),
    ("7/8", "14", "0"),
]


@pytest.mark.parametrize(("cups", "tbsp", "tsp"), IN_CUPS)
def test_cups_in_spoons(cups: str, tbsp: str, tsp: str) -> None:
    """ICN: 1/3 c = 5 tbsp + 1 tsp, and so on."""
    assert Fraction(cups) * worth("cup") == int(tbsp) * worth("tbsp") + int(tsp) * worth("tsp")


@pytest.mark.parametrize(
    ("number", "unit", "printed"),
    [(8, "cup", "1/2"), (12, "cup", "1/3"), (16, "cup", "1/4"), (24, "tbsp", "8/3")],
)
def test_scoops(number: int, unit: str, printed: str) -> None:
    """Scoop no. n holds 32 fl oz / n (GNU scoop), in the measures that ICN prints without rounding."""
    assert 32 * worth("fl oz") / number == Fraction(printed) * worth(unit)


DEGREES = [
    ("-40", "-40"),
    ("0", "32"),
    ("100", "212"),
    ("180", "356"),
    ("5", "41"),
    ("60", "140"),
    ("70", "158"),
]


@pytest.mark.parametrize(("c", "f"), DEGREES)
def test_degrees_exact(c: str, f: str) -> None:
    """°F = °C × 9/5 + 32 exactly: UCUM [degF]."""
    assert f_from_c(Fraction(c)) == Fraction(f)
    assert c_from_f(Fraction(f)) == Fraction(c)


@pytest.mark.parametrize(
    ("f", "c", "source"),
    [
        (45, "7", "FDA Food Code"),
        (130, "54", "FDA Food Code"),
        (135, "57", "FDA Food Code"),
        (145, "63", "FDA Food Code"),
        (150, "66", "FDA Food Code"),
        (155, "68", "FDA Food Code"),
        (165, "74", "FDA Food Code"),
        (70, "21", "FDA Food Code"),
        (145, "62.8", "USDA FSIS safe temperature chart"),
        (160, "71.1", "USDA FSIS safe temperature chart"),
        (165, "73.9", "USDA FSIS safe temperature chart"),
    ],
)
def test_degrees_rounded(f: int, c: str, source: str) -> None:
    assert fixed(c_from_f(Fraction(f)), len(c.partition(".")[2])) == c, source


MARKS = [
    ("1/4", 225, 110), ("1/2", 250, 120), ("1", 275, 135), ("2", 300, 150), ("3", 325, 165), ("4", 350, 180),
    ("5", 375, 190), ("6", 400, 205), ("7", 425, 220), ("8", 450, 230), ("9", 475, 250), ("10", 500, 260),
]  # fmt: skip


@pytest.mark.parametrize(("mark", "f", "c"), MARKS)
def test_gas_marks(mark: str, f: int, c: int) -> None:
    """Gas mark table of sizes.com; tables agree on °F but round °C as they like: within 10 degrees."""
    assert f_from_gas(Fraction(mark)) == f
    assert gas_from_f(Fraction(f)) == Fraction(mark)
    exact_c = c_from_gas(Fraction(mark))
    assert exact_c is not None
    assert abs(exact_c - c) <= 10


def test_fan() -> None:
    """NSW: a fan oven is set 20 °C lower."""
    assert fan_from_c(Fraction(180)) == 160


WRONG = [
    ("gallon", "1/2", "1950", "NIST cooking prints 1/2 gallon = 1950 ml; it is 1892.7"),
    ("quart", "1", "950", "NIST cooking prints quart = 950 ml; it is 946.4"),
    ("fl oz", "1", "28.35", "a fluid ounce is no ounce: USDA SR28 NDB 14411 has 29.6 g of water in it"),
]


@pytest.mark.parametrize(("name", "count", "printed", "why"), WRONG)
def test_known_errata_are_not_reproduced(name: str, count: str, printed: str, why: str) -> None:
    places = len(printed.partition(".")[2])
    assert fixed(worth(name) * Fraction(count), places) != printed, why


@pytest.mark.parametrize(("number", "printed", "exact"), [(20, "10/3", "3.2"), (30, "2", "32/15")])
def test_scoops_that_icn_rounds(number: int, printed: str, exact: str) -> None:
    """ICN prints no. 20 as 3 1/3 tbsp and no. 30 as 2 tbsp."""
    in_tbsp = 32 * worth("fl oz") / number / worth("tbsp")
    assert in_tbsp == Fraction(exact) != Fraction(printed)


def test_145_f_is_not_60_c() -> None:
    """A shop's copy of the FSIS chart prints 145 °F (60 °C)."""
    assert fixed(c_from_f(Fraction(145)), 0) != "60"


@pytest.mark.parametrize(
    ("cup", "tbsp", "worths"),
    [
        ("us", "", ("236.5882365", "14.78676478125", "4.92892159375")),
        ("metric", "", ("250", "15", "5")),
        ("metric", "australian", ("250", "20", "5")),
        ("label", "", ("240", "15", "5")),
        ("us", "label", ("236.5882365", "15", "5")),
        ("japanese", "", ("200", "15", "5")),
    ],
)
def test_house_choice(cup: str, tbsp: str, worths: tuple[str, str, str]) -> None:
    """Values as above; an unqualified cup is off by up to a quarter, so the house says which it means."""
    units = shipped("en", cup, tbsp)
    assert tuple(worth(name, units) for name in ("cup", "tbsp", "tsp")) == tuple(map(Fraction, worths))
