"""Figures that are printed and wrong, or mean something else than they seem: none of them may come out of a conversion.

Errata on breads stand in test_bakers.py, those on limits of temperature and time in test_safety.py, those on scoops in
test_units.py. "confirmed": a copy of the source was read; "secondary": a page that states it.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.convert.asked import read_asked
from tamis.convert.measures import Figure, worths
from tamis.convert.unit import said_in
from tamis.kitchen.house import default_kitchen
from tamis.quantity.numerals import fixed
from tamis.quantity.units import shipped

KITCHEN = default_kitchen("en")


def grams(text: str) -> Figure:
    found = worths(read_asked(text, KITCHEN), KITCHEN).grams
    assert found is not None, text
    return found


def in_unit(text: str, unit: str, cup: str = "us") -> str:
    kitchen = KITCHEN._replace(units=shipped("en", cup))
    said = said_in(read_asked(text, kitchen), unit, kitchen)
    assert not said.problem, said.problem
    return said.text


def test_half_a_gallon_is_not_1950_ml() -> None:
    """NIST's cooking page prints 1950 ml; by the gallon of 231 in³ it is 1892.7. Confirmed: read on the page."""
    assert in_unit("1/2 gallon", "l") == "1.89 l"


def test_a_quart_is_neither_of_nist_s_figures() -> None:
    """NIST's cooking pages, newer and older, print 950 and 960 ml; HB 44 gives 946.35. Confirmed: read on the pages."""
    found = worths(read_asked("1 quart", KITCHEN), KITCHEN).ml
    assert found is not None
    assert fixed(found.usual.lo, 1) == "946.4"


def test_a_fluid_ounce_of_water_is_no_ounce() -> None:
    """USDA SR28 NDB 14411: a fl oz of water is 29.6 g, not the 28.35 g of an ounce by weight. Confirmed."""
    usual = grams("1 fl oz water").usual.lo
    assert fixed(usual, 1) == "29.6" != "28.3"
    assert fixed(grams("1 oz water").usual.lo, 2) == "28.35"


@pytest.mark.parametrize(
    ("cup", "ml", "source"),
    [
        ("us", "237", "HB 44, appendix C; confirmed in a copy"),
        ("metric", "250", "NSW Health chart; confirmed"),
        ("label", "240", "21 CFR 101.9(b)(5)(viii); confirmed in a copy"),
        ("japanese", "200", "GNU units 3.15, japancup; confirmed"),
    ],
)
def test_a_cup_is_what_the_house_says(cup: str, ml: str, source: str) -> None:
    """The trap: an unqualified cup is off by up to a quarter."""
    assert in_unit("1 cup", "ml", cup) == f"{ml} ml", source


@pytest.mark.parametrize(
    ("tbsp", "ml", "source"),
    [
        ("us", "14.78676478125", "UCUM [tbs_us]; confirmed"),
        ("metric", "15", "GNU units 3.15, britishtablespoon; confirmed"),
        ("australian", "20", "NSW Health chart; confirmed"),
    ],
)
def test_a_tablespoon_is_what_the_house_says(tbsp: str, ml: str, source: str) -> None:
    kitchen = KITCHEN._replace(units=shipped("en", "us", tbsp))
    found = worths(read_asked("1 tbsp", kitchen), kitchen).ml
    assert found is not None
    assert found.usual.lo == Fraction(ml), source


def test_an_imperial_pint_is_no_us_pint() -> None:
    """568 and 473 ml (UCUM [pt_br], [pt_us]); confirmed."""
    assert in_unit("1 imperial pint", "cl") == "56.8 cl"
    assert in_unit("1 pint", "ml") == "473 ml"


def test_145_f_is_not_60_c() -> None:
    """A packer's copy of the FSIS chart prints "145 °F (60 °C)"; it is 62.8 °C. Confirmed in that copy."""
    assert in_unit("145 °F", "C") == "62.8 °C"


@pytest.mark.parametrize(
    ("shape", "usual"), [("pasta shells", 64), ("farfalle", 81), ("penne", 95), ("fusilli", 96), ("macaroni", 122)]
)
def test_a_cup_of_pasta_depends_on_its_shape(shape: str, usual: int) -> None:
    """USDA SR28 NDB 20120: from 64 g of shells to 122 g of elbows; confirmed."""
    assert grams(f"1 cup {shape}").usual.lo == usual


def test_a_cup_of_pasta_of_no_said_shape_keeps_the_range() -> None:
    found = grams("1 cup pasta")
    assert (found.least, found.most) == (64, 122)
    assert found.differs


def test_a_packet_of_yeast_is_not_nine_grams() -> None:
    """USDA SR28 NDB 18375: a packet is 7.2 g; 2¼ tsp (its equal in the trade; secondary) at 4 g are 9 g."""
    assert grams("1 packet active dry yeast").usual.lo == Fraction("7.2")
    assert grams("2 1/4 tsp active dry yeast").usual.lo == 9


@pytest.mark.parametrize("word", ["pinch", "dash", "smidgen", "drop"])
def test_what_no_standard_defines_is_never_converted(word: str) -> None:
    """Spoon sets say dash 1/8, pinch 1/16, smidgen 1/32 tsp (accuracyproject.org; secondary), but USDA's dash of salt
    is 1/15 (confirmed): they disagree, so none is used."""
    asked = read_asked(f"1 {word} salt", KITCHEN)
    assert worths(asked, KITCHEN).grams is None
    assert "no standard" in said_in(asked, "g", KITCHEN).problem
