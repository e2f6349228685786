"""What a market list says of dishes: what to buy, how much of it, for what, and what it costs."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.kitchen.house import Kitchen
from tamis.market.dishes import ON_LIST
from tamis.market.market_list import costs_of, market_list
from tamis.market.text import list_text
from tamis.market.wording import buy_text, needed_text, weights_text
from tests.market.stall import cooked, demo, dish, house, line, list_of

F = Fraction
PLAIN = house()
FRY = "Heat [1 l sunflower oil, for frying] [to 170 °C]."


def bought(kitchen: Kitchen, clause: str, factor: int | str = 1) -> str:
    return buy_text(line(kitchen, clause, factor), kitchen)


@pytest.mark.parametrize(
    ("goods", "clause", "buy"),
    [
        ('[butter]\npack = "250 g"', "[250 g butter]", "250 g"),
        ('[butter]\npack = "250 g"', "[251 g butter]", "2 × 250 g"),
        ('[butter]\npack = "250 g"', "[2 sticks butter]", "250 g"),
        ('[egg]\npack = "6"', "[7 eggs]", "2 × 6"),
        ('[carrot]\nprice = "1.10 per kg"', "[410 g carrots, in batons]", "450 g"),
        ('[carrot]\nprice = "1.10 per kg"', "[1 kg carrots]", "1 kg"),
        ('[thyme]\npack = "bunch of 20 g"', "[4 sprigs thyme]", "1 bunch of 20 g"),
        ('[garlic]\npack = "head"', "[11 garlic cloves]", "2 heads"),
        ('[haricot-bean]\npack = "can of 400 g"', "[3 cans white beans]", "3 cans of 400 g"),
        ('[tomato]\npack = "can of 400 g"', "[2 cans (400 g) tomatoes]", "2 cans of 400 g"),
        ('[milk]\npack = "1 l"', "[1 cup milk]", "1 l"),
        ('[milk]\npack = "1 l"', "[1.1 kg milk]", "2 × 1 l"),
        ('[onion]\nprice = "0.30 each"', "[2 1/2 onions]", "3"),
        ("", "[2 1/4 onions]", "3"),
        ("", "[60–90 g rocket]", "90 g"),
        ("", "[1 can (400 g) tomatoes]", "1 can (400 g)"),
    ],
)
def test_rounded_up_to_what_is_sold(goods: str, clause: str, buy: str) -> None:
    assert bought(house(goods), clause) == buy


@pytest.mark.parametrize(
    ("clause", "as_bought", "edible"),
    [
        ("[400 g onions, sliced]", "400", "360"),  # as bought: onions lose 10 % (USDA SR28 11282)
        ("[360 g sliced onions]", "400", "360"),  # the weight of what is left
        ("[1.2 kg plums (1 kg stoned)]", "1200", "1000"),  # the recipe's own figure
        ("[400 g frozen peas]", "400", "400"),  # sold without what is thrown away
        ("[1 can (400 g) tomatoes]", "400", "400"),
        ("[2 onions]", "2200/9", "220"),  # 110 g a medium onion without its refuse (USDA SR28 11282)
        ("[200 g caster sugar]", "200", None),  # nothing is published, nothing is thrown away
    ],
)
def test_as_bought_and_edible(clause: str, as_bought: str, edible: str | None) -> None:
    found = line(PLAIN, clause).weights
    assert found.bought == F(as_bought)
    assert found.prepared == (None if edible is None else F(edible))


def test_one_line_for_a_food_under_several_names_and_units() -> None:
    kitchen = house('[bread-flour]\npack = "1 kg"\nprice = 1.60\n')
    first = cooked(kitchen, "Mix [500 g strong white flour].")
    second = cooked(kitchen, "Mix [4 cups bread flour].")
    found = market_list([dish(first), dish(second)], {}, kitchen)
    (only,) = found.lines
    cups = line(kitchen, "[4 cups bread flour]").amount
    assert cups is not None and only.amount == 500 + cups
    assert only.packs == 2 and only.paid == F("3.20")
    assert [place.dish for place in only.places] == [0, 1]
    assert needed_text(only, kitchen).endswith("kg") or needed_text(only, kitchen).endswith(" g")


def test_zest_here_and_juice_there_buy_one_lemon() -> None:
    kitchen = house("[lemon]\nprice = 0.40\n")
    found = list_of(kitchen, "Mix [zest of 1 lemon] with [200 g caster sugar].", "Stir in [juice of 2 lemons].")
    lemon = next(line for line in found.lines if line.name.startswith("lemon"))
    assert lemon.amount == 2 and lemon.paid == F("0.80") and lemon.weights.prepared is None


def test_half_now_and_the_rest_later_is_bought_once() -> None:
    found = list_of(PLAIN, "Mix [half of 300 g sugar] with [100 g butter].", "Stir in [the rest of the sugar].")
    sugar = next(line for line in found.lines if line.name == "sugar")
    assert needed_text(sugar, PLAIN) == "300 g"


def test_water_is_not_bought_and_the_unmeasured_is_in_the_house() -> None:
    found = list_of(
        PLAIN,
        "Mix [200 g bread flour] with [100 g water] on a board dusted with [rye flour].",
        "Add [salt, to taste], [a pinch of nutmeg] and [1 tsp caraway seed, optional].",
    )
    assert [each.name for each in found.lines] == ["bread flour"]
    assert [each.name for each in found.in_house] == ["rye flour", "salt", "nutmeg"]
    assert [each.name for each in found.optional] == ["caraway seed"]
    text = list_text(found, PLAIN)
    assert "Check you have: rye flour for dusting, salt to taste, nutmeg." in text


def test_a_food_that_nobody_knows_is_not_lost() -> None:
    found = list_of(PLAIN, "Mix [200 g sea beet] with [100 g butter].")
    assert [(each.name, each.merchant) for each in found.lines] == [("butter", "dairy"), ("sea beet", "")]
    assert "Other\n  200 g   sea beet" in list_text(found, PLAIN)


def test_a_measured_purpose_is_bought_with_the_rest() -> None:
    kitchen = house('[sunflower-oil]\npack = "1 l"\nprice = 2\n')
    found = list_of(kitchen, "Mix [100 g butter] with [2 tbsp sunflower oil].", FRY)
    oil = next(each for each in found.lines if each.name == "sunflower oil")
    assert oil.packs == 2
    assert "for frying" in list_text(found, kitchen)


def test_what_has_no_price_is_named_with_the_reason() -> None:
    kitchen = house('[butter]\npack = "250 g"\n\n[egg]\nprice = 0.30\n\n[saffron]\nprice = "4 per box"\n')
    found = list_of(kitchen, "Mix [100 g butter], [2 eggs], [1 tsp saffron] and [50 g caster sugar].")
    costs = costs_of(found)
    assert {each.name: each.why for each in costs.unpriced} == {
        "butter": "it has no price",
        "caster sugar": "`goods.toml` gives no pack or price",
        "saffron": "it is not known how many boxes that is",
    }
    assert costs.used == F("0.60") and costs.each == F("0.15")


def test_a_used_recipe_joins_with_the_share_that_is_taken() -> None:
    kitchen, known = demo()
    duck, stock = known["duck-with-prunes"], known["brown-stock"]
    found = market_list([duck], known, kitchen)
    assert [each.title for each in found.dishes] == [duck.title, stock.title]
    assert found.dishes[1].factor == F(300, 2000), "300 ml of the 2 l"
    wings = next(each for each in found.lines if each.name == "chicken wings")
    assert needed_text(wings, kitchen) == "225 g"
    assert not found.ready


def test_a_used_recipe_that_stands_ready() -> None:
    kitchen, known = demo()
    found = market_list([known["duck-with-prunes"]], known, kitchen, ["brown-stock"])
    assert len(found.dishes) == 1 and found.ready[0].why == "made already"
    assert "Have ready: 300 ml of the brown stock" in list_text(found, kitchen)


def test_a_used_recipe_on_the_list_is_made_once_and_large_enough() -> None:
    kitchen, known = demo()
    duck, stock = known["duck-with-prunes"], known["brown-stock"]
    once = market_list([duck, stock], known, kitchen)
    assert [each.factor for each in once.dishes] == [1, 1] and once.ready[0].why == ON_LIST
    many = market_list([duck._replace(factor=F(10)), stock], known, kitchen)
    assert [each.factor for each in many.dishes] == [10, F(3, 2)]


def test_a_used_recipe_that_is_not_there() -> None:
    kitchen, known = demo()
    found = market_list([known["duck-with-prunes"]], {}, kitchen)
    assert len(found.dishes) == 1 and found.ready[0].why == "its recipe is not there"


def test_merchants_stand_in_the_order_of_the_goods() -> None:
    kitchen, known = demo()
    found = market_list(list(known.values()), known, kitchen)
    order = kitchen.larder.closed["merchant"]
    assert list(found.by_merchant()) == [name for name in order if name in found.by_merchant()]


def test_yolks_are_bought_as_eggs_and_the_whites_come_with_them() -> None:
    kitchen = house('[egg]\npack = "6"\nprice = 1.80\n')
    found = list_of(kitchen, "Mix [7 egg yolks] with [200 g caster sugar].", "Fold in [4 egg whites] and [1 egg].")
    eggs = next(each for each in found.lines if each.merchant == "dairy")
    assert eggs.amount == 8 and eggs.packs == 2 and eggs.used == F("2.40")


def test_what_cannot_be_told_of_a_food_is_left_out_and_said() -> None:
    kitchen = house('[poppy-seed]\npack = "100 g"\nprice = 3\n')
    found = list_of(kitchen, "Mix [10 g poppy seeds] with [6 poppy seeds].")
    (pepper,) = found.lines
    assert pepper.used == F("0.30") and pepper.packs == 1
    assert "Not priced: 6 poppy seed" in list_text(found, kitchen)


def test_metric_weights_where_one_dish_has_them_and_another_has_cups() -> None:
    cups = cooked(PLAIN, "Mix [1 cup raspberries] with [1 stick butter].")
    grams = cooked(PLAIN, "Mix [200 g raspberries] with [100 g butter].")
    found = market_list([dish(cups), dish(grams)], {}, PLAIN)
    # USDA SR28: 09302 a cup of raspberries 123 g, 01145 a stick of butter 113 g
    assert {one.name: buy_text(one, PLAIN) for one in found.lines} == {"raspberries": "323 g", "butter": "213 g"}


def test_tins_are_another_line_from_another_shelf() -> None:
    found = list_of(PLAIN, "Mix [2 tins tomatoes] with [3 tomatoes, chopped].")
    lines = [(one.name, one.merchant, buy_text(one, PLAIN)) for one in found.lines]
    assert lines == [("tomatoes", "greengrocer", "3"), ("tomatoes", "grocer", "2 tins")]


def test_the_butcher_is_told_the_cut_and_the_weight_of_each() -> None:
    found = list_of(PLAIN, "Mix [8 skinless, boneless chicken thighs (150 g each)] with [250 ml dry cider].")
    said = {one.name: (buy_text(one, PLAIN), weights_text(one, PLAIN)) for one in found.lines}
    assert said == {"skinless, boneless chicken thighs": ("8", "150 g each"), "dry cider": ("250 ml", "")}


def test_what_is_scrubbed_keeps_its_skin() -> None:
    assert line(PLAIN, "[750 g new potatoes, scrubbed]").weights.prepared == 750
    assert line(PLAIN, "[750 g new potatoes]").weights.prepared == F("562.5")  # USDA SR28 11352: 25 % parings


def test_a_knob_here_and_grams_there_are_grams() -> None:
    knob = cooked(PLAIN, "Mix [a knob of butter] with [400 g cooked chickpeas].")
    grams = cooked(PLAIN, "Mix [200 g butter] with [100 g chickpeas].")
    found = market_list([dish(knob), dish(grams)], {}, PLAIN)
    said = [(one.name, buy_text(one, PLAIN)) for one in found.lines]
    assert said == [("butter", "210 g"), ("chickpeas", "100 g"), ("cooked chickpeas", "400 g")]


def test_a_zested_lemon_gives_no_wedges() -> None:
    found = list_of(PLAIN, "Mix [the zest and juice of 1 lemon] with [200 g sugar].", "Serve with [lemon wedges].")
    assert [one.name for one in found.lines if one.goods and one.goods.id == "lemon"] == ["lemon"]
    assert [one.name for one in found.in_house] == ["lemon wedges"]
    found = list_of(PLAIN, "Mix [2 lemons, sliced] with [200 g sugar].", "Serve with [lemon wedges].")
    assert not found.in_house
