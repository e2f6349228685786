"""The page of a market list."""

from __future__ import annotations

import re

from tamis.library.library import open_library
from tamis.market.dishes import Dish
from tamis.market.market_list import market_list
from tamis.publish.market import MOST_DISHES, house_market_page, letters, market_page
from tests.market.stall import CHECKOUT, cooked, demo, house, list_of


def test_it_tells_what_the_list_tells() -> None:
    kitchen, known = demo()
    found = market_list([known["duck-with-prunes"]], known, kitchen)
    html = market_page(found, kitchen, {"duck-with-prunes"})
    assert '<b>A</b> <a href="recipes/duck-with-prunes.html">Duck legs' in html
    assert "<b>B</b> Brown chicken stock <span" in html, "a dish without a page has no link"
    assert "<b>4</b> duck legs" in html and '<span class="paid">£11.80</span>' in html
    assert html.count('type="checkbox"') == len(found.lines) == html.count("<label for=")
    assert "carrots: USDA SR28 11124" in html


def test_ids_are_unique_and_labels_point_at_them() -> None:
    kitchen, known = demo()
    html = market_page(market_list(list(known.values()), known, kitchen), kitchen, set(known))
    ids = re.findall(r'id="(item-[\d-]+)"', html)
    assert len(ids) == len(set(ids)) and ids == re.findall(r'for="(item-[\d-]+)"', html)


def test_words_of_a_cook_are_escaped() -> None:
    kitchen = house()
    recipe = cooked(kitchen, "Mix [100 g butter].").recipe
    titled = recipe._replace(header=recipe.header._replace(title="Peas & <b>cress</b>"))
    found = market_list([Dish(titled, cooked(kitchen, "Mix [100 g butter].").table)], {}, kitchen)
    html = market_page(found, kitchen, set())
    assert "Peas &amp; &lt;b&gt;cress" in html and "<b>cress" not in html


def test_no_list_in_common_for_a_great_many() -> None:
    library = open_library(CHECKOUT / "recipes")
    recipes = [entry.compiled for entry in library.entries]
    assert house_market_page(recipes, library.kitchen, set()) is not None
    assert house_market_page([recipes[0]] * (MOST_DISHES + 1), library.kitchen, set()) is None
    assert house_market_page([], library.kitchen, set()) is None


def test_letters() -> None:
    assert [letters(at) for at in (0, 25, 26, 51, 52, 701, 702)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]


def test_without_prices_there_are_no_sums() -> None:
    kitchen = house()
    html = market_page(list_of(kitchen, "Mix [100 g butter]."), kitchen, set())
    assert "Total" not in html and "Not priced" not in html and 'class="paid"' not in html
