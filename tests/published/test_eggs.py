"""Eggs: our figures are USDA SR28's; here they stand against the weight classes and another book's.

AMS 56: US Standards, Grades and Weight Classes for Shell Eggs (2000), whose table 7 Pa. Code § 87.42 repeats; confirmed
there. GNU: GNU units, definitions 3.15, after The Cake Bible; confirmed: installed and run.
"""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.kitchen.goods import Goods
from tamis.kitchen.house import default_kitchen

LARDER = default_kitchen("en").larder
OUNCE = Fraction("28.349523125")  # g, exact: UCUM [oz_av]
TBSP = Fraction("14.78676478125")  # ml, exact: UCUM [tbs_us]

# Class, least net ounces a dozen.
CLASSES = [("jumbo", "30"), ("extra large", "27"), ("large", "24"), ("medium", "21"), ("small", "18")]


def goods(id: str) -> Goods:
    found = LARDER.get(id)
    assert found is not None
    return found


def edible(size: str) -> Fraction:
    piece = LARDER.piece(goods("egg"), "", (size,))
    assert piece is not None
    assert piece.word == size
    return piece.usual


@pytest.mark.parametrize(("size", "dozen"), CLASSES)
def test_size_without_shell(size: str, dozen: str) -> None:
    """AMS 56: the class's least weight, less the 12 % of shell that USDA counts, is our egg within 3 %."""
    refuse = goods("egg").refuse
    assert refuse == 12
    least = Fraction(dozen) * OUNCE / 12 * (100 - refuse) / 100
    assert abs(edible(size) / least - 1) <= Fraction(3, 100)


def test_each_size_is_above_the_one_below() -> None:
    weights = [edible(size) for size, *_ in CLASSES]
    assert weights == sorted(weights, reverse=True)
    assert len(set(weights)) == len(weights)


def test_large_is_what_a_recipe_means() -> None:
    """USDA SR28 01123 gives a large egg 50 g, as GNU does; an egg of no said size is that."""
    plain = LARDER.piece(goods("egg"))
    assert plain is not None
    assert plain.usual == edible("large") == 50


@pytest.mark.parametrize(
    ("part", "grams", "as_printed"),
    [("egg-white", "30", "egg white, large 30 g"), ("egg-yolk", "18.6", "egg yolk, large 18.6 g")],
)
def test_parts(part: str, grams: str, as_printed: str) -> None:
    """GNU: white 30, yolk 18.6 g; USDA has 33 and 17: within 15 %."""
    ours = next(one for one in goods("egg").parts if one.id == part)
    assert abs(ours.lo / Fraction(grams) - 1) <= Fraction(15, 100), as_printed


def test_parts_make_the_egg() -> None:
    """USDA SR28: 33 g of white and 17 g of yolk are the 50 g."""
    assert sum(one.lo for one in goods("egg").parts) == edible("large")


@pytest.mark.parametrize(
    ("id", "tbsp", "as_printed"),
    [
        ("egg", "19/6", "egg volume, large 3 tbsp + 1/2 tsp"),
        ("egg-white", "2", "egg white volume, large 2 tbsp"),
        ("egg-yolk", "7/6", "egg yolk volume, large 3.5 tsp"),
    ],
)
def test_spoonfuls(id: str, tbsp: str, as_printed: str) -> None:
    """GNU; ours follow from USDA's grams a piece and 243 g a cup: within 10 %."""
    piece, density = LARDER.piece(goods(id)), LARDER.density(goods(id))
    assert piece is not None
    assert density is not None
    assert abs(piece.usual / density.usual / TBSP / Fraction(tbsp) - 1) <= Fraction(10, 100), as_printed


def test_a_cup_of_eggs() -> None:
    """GNU: 16 tbsp at 19/6 tbsp an egg are 5.05 large eggs; a cup of ours weighs that many within 5 %."""
    density = LARDER.density(goods("egg"))
    assert density is not None
    ours = density.usual * 16 * TBSP / edible("large")
    assert abs(ours / (16 / Fraction(19, 6)) - 1) <= Fraction(5, 100)
