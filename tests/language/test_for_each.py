"""A measure of something made before is a share of it, unless it is said of each piece; one of new food is of each."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.scaling.scale import scaled
from tamis.source import Source

TEXT = """\
title: Parcels
serves: 4

# Filling

Mash [200 g ricotta] with [50 g parmesan, grated].

# Parcels

Cut [500 g puff pastry] [into 20 pieces].
{line}
[Bake for 20 min at 200 °C] [in the oven] [until golden].
"""


@pytest.mark.parametrize(
    ("line", "all_of_it"),
    [
        ("Put [1 tsp of the filling] in the middle of each.", True),
        ("Top each with [1 tsp of the filling].", True),
        ("Put [1 tsp of the filling] in the middle.", False),
        ("Put [half the filling] on each.", False),
        ("Spread [1 tsp of the filling]. Each is folded over.", False),
    ],
)
def test_so_much_for_each_takes_all(line: str, all_of_it: bool) -> None:
    said = compile(Source("parcels.tamis", TEXT.format(line=line)), default_kitchen("en"), {})
    assert ("product-left-over" not in {finding.rule for finding in said.findings}) is all_of_it


SQUARES = """\
title: Squares
serves: 4

# Squares

{first}
{line}
[Bake for 20 min at 200 °C] [in the oven] [until golden].
"""
CUT = "Cut [500 g puff pastry] [into 4 squares]."


@pytest.mark.parametrize(
    ("first", "line", "grams"),
    [
        (CUT, "Top each with [50 g tomato sauce].", 200),
        (CUT, "Spread [50 g tomato sauce] over each.", 200),
        (CUT, "Top each with [20 g parmesan] and [50 g tomato sauce].", 200),
        (CUT, "Put [1 olive] and [50 g tomato sauce] on each square.", 200),
        (CUT, "Spread with [50 g tomato sauce each].", 200),
        (CUT, "Spread with [50 g tomato sauce for each].", 200),
        ("Split [6 bread rolls].", "Spread [10 g tomato sauce] on each.", 60),
        ("Core [6 apples] and stick each with [3 cloves].", "Fill the middle of each with [20 g tomato sauce].", 120),
        ("Core [6 apples].\nPut [24 almonds] on [the apples].", "Fill each with [20 g tomato sauce].", 120),
        ("Grease [8 ramekins] with [butter, for greasing].", "Put [5 g tomato sauce] at the bottom of each.", 40),
        (CUT, "Lay a slice of [50 g tomato sauce] on top of each.", 50),
        ("Put [6 apples] [in a dish].", "Add [50 g tomato sauce] and top each with [1 olive].", 50),
        (CUT, "Top with [50 g tomato sauce].", 50),
        (CUT, "Brush [50 g tomato sauce] on each side.", 50),
        (CUT, "Stir [50 g tomato sauce] well after each addition.", 50),
    ],
)
def test_so_much_new_food_on_each(first: str, line: str, grams: int) -> None:
    text = SQUARES.format(first=first, line=line)
    said = compile(Source("squares.tamis", text), default_kitchen("en"), {})
    assert "measure-for-each" not in {finding.rule for finding in said.findings}
    (use,) = [use for use in said.recipe.uses if use.ingredient.name == "tomato sauce"]
    assert use.mass.hi == grams


@pytest.mark.parametrize(
    ("first", "line"),
    [
        (CUT, "Fill each nest with [50 g tomato sauce]."),
        (CUT, "Put [2 onions, finely chopped] on each."),
        ("Core [6 apples] and [3 pears].", "Fill each with [20 g tomato sauce]."),
        ("Knead [500 g plain flour] with [2 eggs] and roll it out.", "Top each with [20 g tomato sauce]."),
    ],
)
def test_of_how_many_is_asked(first: str, line: str) -> None:
    text = SQUARES.format(first=first, line=line)
    said = compile(Source("squares.tamis", text), default_kitchen("en"), {})
    assert "measure-for-each" in {finding.rule for finding in said.findings}


def test_more_pieces_get_as_much_each() -> None:
    text = SQUARES.format(first=CUT, line="Put [1 olive] and [50 g tomato sauce] on each.")
    said = compile(Source("squares.tamis", text), default_kitchen("en"), {})
    text = scaled(said, Fraction(3), default_kitchen("en")).text
    assert all(part in text for part in ("[50 g tomato sauce]", "[1 olive]", "[into 12 squares"))
