"""From a wish to a factor, and what a cook is told when there is none."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.scaling.wanted import factor_for

from .kitchen_table import KITCHEN, compiled, library, one_line

STIR = "Stir [500 g plain flour] with [300 g water] and [10 g fine salt] [in a bowl]."


@pytest.mark.parametrize(
    ("header", "way", "text", "factor"),
    [
        ("", "by", "1.5", "3/2"),
        ("", "by", "1 1/2", "3/2"),
        ("", "by", "×2", "2"),
        ("", "by", "half", "1/2"),
        ("serves: 4", "serves", "6", "3/2"),
        ("serves: 4–6", "serves", "12", "3"),  # of a range the smaller number
        ("makes: 2 loaves", "makes", "3 loaves", "3/2"),
        ("makes: 2 loaves", "makes", "1 loaf", "1/2"),
        ("makes: 2 loaves", "makes", "3", "3/2"),
        ("makes: 5 jars (340 g each)", "makes", "3.4 kg", "2"),
        ("makes: 600 ml", "makes", "1.5 l", "5/2"),
        ("makes: 1 l", "makes", "1 US gallon", "3785/1000"),
        ("", "flour", "2 kg", "4"),
        ("flour: 1 kg", "flour", "2 kg", "2"),
        ("", "dough", "1.62 kg", "2"),
        ("", "dough", "9 × 90 g", "1"),
        ("dough: 1 kg", "dough", "20 × 75 g", "3/2"),
    ],
)
def test_a_factor(header: str, way: str, text: str, factor: str) -> None:
    wanted = factor_for(way, text, one_line(STIR, header + "\n").recipe, KITCHEN)
    assert wanted.problem == ""
    assert abs(wanted.factor - Fraction(factor)) < Fraction(1, 1000)
    if text != "1 US gallon":
        assert wanted.factor == Fraction(factor)


@pytest.mark.parametrize(
    ("header", "way", "text", "words"),
    [
        ("", "by", "much", "“much” is not a factor: expected a number such as 1.5"),
        ("", "by", "1,5", "can be read as 1.5 or as 1 and 5"),
        ("", "by", "0", "is not a factor"),
        ("", "by", "5000", "5e+03 times the recipe: expected 1/1000 to 1000"),
        (
            "makes: 2 loaves",
            "serves",
            "6",
            "does not say how many it serves (`serves: 4` in its header); it makes 2 loaves",
        ),
        ("serves: 4", "serves", "many", "“many” is not a number of people"),
        ("serves: 4", "makes", "3 loaves", "does not say what it makes"),
        ("makes: 2 loaves", "makes", "3 rolls", "the recipe makes 2 loaves, no rolls"),
        ("makes: 2 loaves", "makes", "some loaves", "cannot be read: expected an amount such as “2 loaves”"),
        ("makes: 2 loaves", "makes", "1 kg", "the recipe makes 2 loaves, which cannot be converted to 1 kg"),
        ("makes: 600 ml", "makes", "1 kg", "the recipe makes 600 ml, which cannot be converted to 1 kg"),
        ("makes: 600 ml", "makes", "3 jars", "cannot be read"),
        ("", "flour", "2 bags", "“2 bags” is not a weight of flour"),
        ("", "dough", "12 rolls", "“12 rolls” is not a weight of dough"),
    ],
)
def test_a_problem(header: str, way: str, text: str, words: str) -> None:
    assert words in factor_for(way, text, one_line(STIR, header + "\n").recipe, KITCHEN).problem


def test_no_flour() -> None:
    recipe = one_line("Stir [3 eggs] [in a bowl].").recipe
    assert factor_for("flour", "1 kg", recipe, KITCHEN).problem == "there is no flour in the recipe"
    assert "no dough in the recipe" in factor_for("dough", "1 kg", recipe, KITCHEN).problem


def test_a_dough_is_what_all_the_flour_has_come_together_in() -> None:
    """Not the poolish before it, nor what is brushed on after it, nor the flour for dusting."""
    text = """\
title: Sticks
makes: 8 sticks

# Poolish

Stir [100 g plain flour] with [100 g water] [in a jug].

# Dough

Stir [400 g plain flour] with [200 g water] and [the poolish] [in a bowl].

# Sticks

Divide [the dough] [into 8 pieces] and roll on a bench dusted with [50 g plain flour].
Brush with [100 g butter].
"""
    assert factor_for("dough", "8 × 200 g", compiled(text).recipe, KITCHEN).factor == 2


def test_the_demonstration_breads() -> None:
    buns = next(recipe for recipe in library() if recipe.source.stem == "butter-buns").recipe
    assert factor_for("flour", "1 kg", buns, KITCHEN).factor == 2
