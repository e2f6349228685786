"""A house's own goods: added, laid over ours, and told when wrong."""

from __future__ import annotations

import tomllib
from fractions import Fraction

import pytest

from tamis.kitchen.goods import Larder
from tamis.kitchen.house_goods import Fault
from tamis.kitchen.house_goods import extended as lay_over

LARDER = Larder.load("en")


def extended(text: str) -> tuple[Larder, list[Fault]]:
    return lay_over(LARDER, tomllib.loads(text))


def test_a_food_of_the_house() -> None:
    larder, problems = extended("""
[almond-milk]
aliases = ["almond drink"]
liquid = true
densities = "240 g/cup"
allergens = ["tree-nut", "almond"]
merchant = "dairy"
pack = "1 l"
price = 2.40
""")
    assert problems == []
    found = larder.find(["cold", "almond", "milk"])
    assert found and found.goods.allergens == ("tree-nut", "almond") and found.states == ("cold",)
    assert found.goods.price == "2.4" and found.goods.pack == "1 l"
    density = larder.density(found.goods)
    assert density and density.usual == 240 / Fraction("236.5882365") and density.source == "your goods.toml"
    assert LARDER.find(["almond", "milk"]) is None, "the shipped list stays as it was"


def test_single_facts_are_laid_over_ours() -> None:
    larder, problems = extended("""
[bread-flour]
densities = { plain = 0.55, sifted = 0.48 }
price = "1.20 per kg"
""")
    goods = larder.get("bread-flour")
    assert problems == [] and goods
    assert [(d.state, d.usual) for d in goods.densities] == [
        ("", Fraction("0.55")),
        ("sifted", Fraction("0.48")),
    ]
    assert goods.allergens == ("wheat", "gluten") and goods.price == "1.20 per kg"
    assert larder.find(["strong", "white", "flour"]) == larder.find(["bread", "flour"])


def test_another_name_of_ours_keeps_what_we_know() -> None:
    larder, problems = extended('[strong-flour]\nprice = "1.80 per kg"\n')
    found = larder.find(["strong", "flour"])
    assert problems == [] and found
    assert found.goods.id == "strong-flour" and found.goods.price == "1.80 per kg"
    assert found.goods.allergens == ("wheat", "gluten") and found.goods.hazard == "raw-flour" and found.goods.flour
    density, ours = larder.density(found.goods), larder.get("bread-flour")
    assert density and ours and density.usual == ours.densities[0].usual and not density.analogy
    assert ours.price == "", "the price is said of one name alone"
    assert larder.find(["bread", "flour"]) == LARDER.find(["bread", "flour"])


def test_a_sort_takes_what_the_house_says_of_its_food() -> None:
    """Whichever of the two stands first."""
    tables = ['[spelt-flour]\npack = "1 kg"\nprice = 2\n', "[wholemeal-spelt-flour]\nprice = 3\n"]
    for text in ("".join(tables), "".join(reversed(tables))):
        larder, problems = extended(text)
        goods = larder.get("wholemeal-spelt-flour")
        assert problems == [] and goods and (goods.pack, goods.price) == ("1 kg", "3")


def test_a_neighbour_lends_its_figures() -> None:
    larder, problems = extended('[einkorn-flour]\nlike = "wholemeal-flour"\n')
    goods = larder.get("einkorn-flour")
    assert problems == [] and goods and goods.flour and goods.name == "einkorn flour"
    assert goods.densities[0].analogy and goods.densities[0].source.startswith("by analogy to wholemeal-flour")
    found = larder.find(["sifted", "einkorn", "flour"])
    assert found and found.goods.id == "einkorn-flour"


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ('[jam]\nallergenes = ["milk"]', "[jam] unknown key 'allergenes'; did you mean 'allergens'?"),
        ("[jam]\ndensity = 1.3", "[jam] unknown key 'density'; did you mean 'densities'?"),
        ('[jam]\nallergens = ["nuts"]', "[jam] allergens: 'nuts' is not one of milk, egg"),
        ("[jam]\ndensities = -1", "[jam] densities: is not an amount"),
        ('[jam]\ndensities = "1 g/bucket"', "[jam] densities: is not an amount"),
        ('[jam]\nliquid = "yes"', "[jam] liquid: expected true or false"),
        ("[jam]\naliases = [1]", "[jam] aliases: expected a list of words"),
        ('[jam]\nlike = "jaam"', "[jam] like: there is no food 'jaam'"),
        ("jam = 1", "[jam] must be a table"),
    ],
)
def test_what_is_wrong_is_told_and_left_out(text: str, problem: str) -> None:
    larder, problems = extended(text)
    assert len(problems) == 1 and str(problems[0]).startswith(problem)
    assert larder.get("jam") == LARDER.get("jam")
