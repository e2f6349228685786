"""One tin in place of another."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.checks.scaling._pans import read_pan
from tamis.scaling.exchange import exchange_for, exchanged

from .kitchen_table import KITCHEN, compiled, one_line, sentence

CAKE = """\
title: Honey cake
makes: 1 cake (20 cm)
serves: 8

# Cake

Heat [the oven] [to 180 °C].
Stir [200 g plain flour] with [150 g honey] and [150 g melted butter] [in a bowl].
Scrape [into a 20 cm round tin].
[Bake for 30–35 min] [until golden].
"""


def factor(line: str, wish: str) -> Fraction:
    exchange = exchange_for(wish, one_line(line).recipe, KITCHEN)
    assert exchange.problem == ""
    return exchange.factor


@pytest.mark.parametrize(
    ("tin", "wish", "wanted"),
    [
        ("20 cm round tin", "30 cm round", "9/4"),
        ("20 cm round tin", "30 cm", "9/4"),  # the shape of the recipe's own
        ("20 cm cake tin", "10 cm round", "1/4"),
        ("20 cm square tin", "20 × 30 cm", "3/2"),
        ("20 × 30 cm baking tin", "10 cm square", "1/6"),
        ("20 cm square tin", "8 inch square", "645/625"),
        ("2-litre baking dish", "3 litres", "3/2"),
        ("20 cm round tin, 5 cm deep", "20 cm round, 10 cm deep", "2"),
    ],
)
def test_a_factor(tin: str, wish: str, wanted: str) -> None:
    by = factor(f"Scrape [500 g honey] [into a {tin}].", wish)
    assert abs(by - Fraction(wanted)) < Fraction(1, 1000)


def test_a_circle_in_a_square() -> None:
    by = factor("Scrape [500 g honey] [into a 20 cm square tin].", "20 cm round")
    assert abs(float(by) - 3.14159265 / 4) < 1e-6


@pytest.mark.parametrize(
    ("line", "wish", "words"),
    [
        ("[into a 20 cm round tin]", "large", "“large” is not a tin: expected a size, as “23 cm round”"),
        ("[into a lined tin]", "23 cm round", "no tin or pan in the recipe has a size"),
        ("[into a 20 cm round tin]", "3 litres", "give both by sides, or both by volume"),
        ("[into a 20 cm tin]", "23 cm square", "round or square? Say it"),
        ("[into a 20 cm round tin] and [into a 10 cm round tin]", "23 cm round", "“23 cm round for 20 cm round”"),
        ("[into a 20 cm round tin] and [into a 10 cm round tin]", "23 cm round for 5 cm round", "is “5 cm round”"),
    ],
)
def test_a_problem(line: str, wish: str, words: str) -> None:
    assert words in exchange_for(wish, one_line(f"Scrape [500 g honey] {line}.").recipe, KITCHEN).problem


def test_of_several_tins_the_one_that_is_named() -> None:
    line = "Scrape [500 g honey] [into a 20 cm round tin] and [into a 10 cm round tin]."
    assert factor(line, "15 cm round for 10 cm round") == Fraction(9, 4)


def test_the_recipe_for_the_other_tin() -> None:
    recipe = compiled(CAKE)
    made = exchanged(recipe, exchange_for("30 cm square", recipe.recipe, KITCHEN), KITCHEN)
    assert made.text.splitlines()[1] == "makes: 1 cake (30 cm)"
    assert "Scrape [into a 30 cm square tin]." in made.text
    assert "Scrape into a 30 cm square tin." in sentence(made)
    assert made.compiled.findings == ()
    assert made.compiled.table.rows[0].total[0].amount.lo == 200 * made.factor


def test_pieces_grow_in_number_where_one_tin_gives_many() -> None:
    text = CAKE.replace("1 cake (20 cm)", "16 squares").replace("20 cm round", "20 cm square")
    recipe = compiled(text)
    made = exchanged(recipe, exchange_for("20 × 30 cm", recipe.recipe, KITCHEN), KITCHEN)
    assert made.text.splitlines()[1] == "makes: 24 squares"


@pytest.mark.parametrize("text", ["", "cm", "round", "23", "0 cm round", "1 kg"])
def test_what_is_no_tin(text: str) -> None:
    assert read_pan(text, KITCHEN) is None
