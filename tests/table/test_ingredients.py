"""The ingredient table: what adds up, what stands apart, and what a cook reads."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.model.mass import Mass
from tamis.model.names import bare_name
from tamis.model.recipe import Product, Taking, Use
from tamis.quantity.amount import exactly
from tamis.reading.clauses import Ingredient, Percent
from tamis.source import Span
from tamis.table.ingredients import build_table
from tamis.table.lines import apart, lines, name_text, where_text
from tamis.table.rows import Row, Table
from tamis.table.showing import shown

from .bench import KITCHEN, Entry, food, measure, recipe
from .samples import rye_loaves

HALF = Fraction(1, 2)


def table(*entries: Entry) -> Table:
    """The table of a recipe with one line a food."""
    return build_table(recipe(Dish=[[entry] for entry in entries]), KITCHEN)


def only(*entries: Entry) -> Row:
    """The one row that these make."""
    (row,) = table(*entries).rows
    return row


def line(*entries: Entry) -> tuple[str, ...]:
    """Its line: amount, metric, US, name."""
    made = table(*entries)
    (said,) = lines(made.rows, made, KITCHEN)
    return said[:4]


class TestRyeLoaves:
    """The table of a bread: a scald, a dough, two loaves in tins."""

    made = build_table(rye_loaves(), KITCHEN)

    def test_rows_stand_in_order_of_first_use(self) -> None:
        names = ["water", "rye flour", "caraway seed", "bread flour", "instant yeast", "fine salt"]
        assert [row.name for row in self.made.rows] == names

    def test_water_is_divided_between_scald_and_dough(self) -> None:
        row = self.made.row("water")
        assert row and row.divided and len(row.uses) == 2
        assert shown(row, KITCHEN).written == "510 g"
        assert where_text(row, self.made, KITCHEN) == "Scald 300 g, boiling; Dough 210 g"

    def test_rye_flour_adds_up_without_what_dusts_the_bench(self) -> None:
        row = self.made.row("rye-flour")
        assert row and row.total[0].amount.lo == 240
        assert shown(row, KITCHEN).written == "240 g"
        assert where_text(row, self.made, KITCHEN) == "Scald 140 g; Dough 100 g"

    def test_flour_shows_both_measures_as_the_cook_wrote_them(self) -> None:
        row = self.made.row("bread-flour")
        assert row and shown(row, KITCHEN) == ("480 g (3½ cups)", "480 g", "3½ cups")

    def test_greasing_and_dusting_stand_apart(self) -> None:
        assert apart(self.made, KITCHEN) == ["sunflower oil for greasing", "plus rye flour for dusting"]


@pytest.mark.parametrize(
    ("entries", "total"),
    [
        ([food("100 g", "butter"), food("1 kg", "butter")], "1.1 kg"),
        ([food("1 tbsp", "olive oil"), food("1 tsp", "olive oil")], "1 tbsp plus 1 tsp"),
        ([food("2 tsp", "fine salt"), food("1 tsp", "fine salt")], "1 tbsp"),
        ([food("3/4 tsp", "instant yeast"), food("1 1/2 tsp", "instant yeast")], "2¼ tsp"),
        ([food("3 tbsp", "olive oil"), food("200 ml", "olive oil")], "244 ml"),
        ([food("1 cup", "olive oil"), food("1 tbsp", "olive oil")], "1 cup plus 1 tbsp"),
        ([food("1 lb", "beef"), food("8 oz", "beef")], "1 lb 8 oz"),
        ([food("60–90 g", "sugar"), food("10 g", "sugar")], "70–100 g"),
        ([food("2 clove", "garlic"), food("4", "garlic cloves")], "6 cloves"),
        ([food("1 pinch", "saffron"), food("2 pinch", "saffron")], "3 pinches"),
        ([food("1 cup plus 2 tbsp", "sugar"), food("2 tbsp", "sugar")], "1¼ cups"),
        ([(food("80 ml", "water"), 4)], "320 ml"),
        ([(food("80 ml", "water"), 4), food("80 ml", "water")], "400 ml"),
        # USDA SR28 20081 plain flour: 125 g a cup.
        ([food("125 g", "plain flour"), food("1 cup", "plain flour")], "250 g"),
        ([food("1 cup", "plain flour"), food("250 g", "plain flour")], "3 cups"),
        # What is spooned here and weighed there is weighed.
        ([food("2 tbsp", "plain flour"), food("250 g", "plain flour")], "266 g"),
        ([food("1 tbsp", "butter"), food("100 g", "butter"), food("1 tbsp", "butter")], "128 g"),
        ([food("1 tbsp", "moon cheese"), food("50 g", "moon cheese")], "1 tbsp plus 50 g"),
        # USDA SR28 01123: a large egg is 50 g.
        ([food("2", "eggs"), food("100 g", "egg")], "about 4"),
        ([food("100 g", "egg"), food("2", "eggs")], "about 200 g"),
        # The goods don't know a weight for these: two sums.
        ([food("1 cup", "moon cheese"), food("50 g", "moon cheese")], "1 cup plus 50 g"),
        ([food("2 pinch", "fine salt"), food("5 g", "fine salt")], "2 pinches plus 5 g"),
        # A second measure that fits the sum goes before a density.
        ([food("100 g", "bread flour"), food("1 cup", "bread flour", also="140 g")], "240 g"),
        ([food("480 g", "bread flour", also="3 1/2 cups"), food("70 g", "bread flour", also="1/2 cup")],
         "550 g (4 cups)"),
        ([food("1 can", "tomatoes", also="400 g"), food("2 can", "tomatoes", also="800 g")], "3 cans (1.2 kg)"),
    ],
)  # fmt: skip
def test_uses_add_up_in_the_first_ones_kind(entries: list[Entry], total: str) -> None:
    assert shown(only(*entries), KITCHEN).written == total


def test_percentages_are_told_beside_the_sum() -> None:
    share = food("", "water", percent=Percent(exactly(70), "flour"))
    made = table(food("75 g", "water"), share)
    assert shown(made.rows[0], KITCHEN).us == "75 g, and by percent"
    assert where_text(made.rows[0], made, KITCHEN) == "75 g + 70 % of the flour"


def test_an_unknown_food_is_one_row_by_its_name() -> None:
    row = only(food("200 ml", "almond milk"), food("100 ml", "Almond milk"))
    assert row.goods is None and row.id == ""
    assert row.total[0].amount.lo == 300


def test_the_rest_of_a_measure_is_a_place_but_buys_nothing() -> None:
    first = Use(food("300 g", "plain flour"), 0, 0, fraction=HALF)
    row = only(first, first._replace(rest_of=0))
    assert shown(row, KITCHEN).written == "300 g"
    assert [use.amount[0].amount.lo for use in row.uses] == [150, 150]
    assert [use.buys for use in row.uses] == [True, False] and row.divided


def test_separated_eggs_are_bought_once() -> None:
    eggs = Use(food("4", "eggs", preparation="separated"), 0, 0)
    whites = Use(food("4", "egg whites"), 0, 0, rest_of=0)
    row = only(eggs, whites)
    assert row.id == "egg" and shown(row, KITCHEN).written == "4"


def test_zest_and_juice_come_off_one_lemon() -> None:
    row = only(food("1", "lemon", part="zest"), food("1", "lemon", part="juice"))
    assert shown(row, KITCHEN).written == "1"
    assert name_text(row, KITCHEN) == "lemon, zest and juice"


def test_the_part_that_needs_most_lemons_counts_and_whole_ones_come_on_top() -> None:
    zest, juice = food("1", "lemon", part="zest"), food("2–3", "lemons", part="juice")
    assert shown(only(zest, juice), KITCHEN).written == "2–3"
    row = only(zest, juice, food("1", "lemon", preparation="sliced"))
    assert shown(row, KITCHEN).written == "3–4"


@pytest.mark.parametrize(
    ("item", "section", "said"),
    [
        (food("", "rye flour", purpose="for dusting"), "purposes", "rye flour for dusting"),
        (food("1 l", "sunflower oil", purpose="for frying"), "purposes", "1 l sunflower oil for frying"),
        (food("", "salt", purpose="to taste"), "unmeasured", "salt to taste"),
        (food("", "parsley"), "unmeasured", "parsley"),
    ],
)
def test_what_counts_in_no_sum_stands_apart(item: Ingredient, section: str, said: str) -> None:
    made = table(item)
    assert not made.rows and len(getattr(made, section)) == 1
    assert apart(made, KITCHEN) == [said]


def test_purposes_of_one_food_make_one_line() -> None:
    dust, tin = food("", "flour", purpose="for dusting"), food("", "flour", purpose="for the tin")
    said = ["plus flour for dusting and for the tin"]
    assert apart(table(food("500 g", "flour"), dust, tin, dust), KITCHEN) == said


def test_optional_food_is_a_row_of_its_own() -> None:
    made = table(food("50 g", "butter"), food("30 g", "butter", optional=True, about=True))
    assert shown(made.rows[0], KITCHEN).written == "50 g"
    assert [shown(row, KITCHEN).written for row in made.optional] == ["about 30 g"]


def test_masses_of_the_uses_add_up_end_by_end() -> None:
    one = Use(food("100 g", "sugar"), 0, 0, mass=Mass(Fraction(100), Fraction(100)))
    cup = Use(food("1 cup", "sugar"), 0, 0, mass=Mass(Fraction(196), Fraction(200), (), ("sugar",)))
    assert only(one, cup).mass == Mass(Fraction(296), Fraction(300), (), ("sugar",))


def test_a_dish_of_another_recipe_is_listed_with_its_words() -> None:
    made = recipe(Soup=[[food("100 g", "leek")]])
    stock = Product("brown stock", ("brown stock",), "used-recipe", 0, None, Span(0, 0), recipe="brown-stock")
    taking = Taking(0, 0, Span(3, 9), Fraction(1, 4), text="500 ml of the brown stock")
    made = made._replace(products=(stock,), takings=(taking,))
    (dish,) = build_table(made, KITCHEN).supplied
    assert (dish.recipe, dish.fraction, dish.component) == ("brown-stock", Fraction(1, 4), 0)
    assert apart(build_table(made, KITCHEN), KITCHEN) == ["500 ml of the brown stock (a recipe of its own)"]


@pytest.mark.parametrize(
    ("item", "said"),
    [
        # Amount, metric and US where they are not said already, name.
        (food("250 ml", "whole milk"), ("250 ml", "", "1 cup plus 1 tbsp", "whole milk")),
        (food("2 cups", "water"), ("2 cups", "473 ml", "", "water")),
        (food("1 kg", "water"), ("1 kg", "", "4¼ cups", "water")),
        (food("1 1/2 lb", "minced beef"), ("1½ lb", "680 g", "", "minced beef")),
        (food("500 g", "minced beef"), ("500 g", "", "1 lb 1½ oz", "minced beef")),
        (food("1 cup", "plain flour"), ("1 cup", "125 g", "", "plain flour")),
        (food("8", "chicken thighs", each="140–200 g", preparation="trimmed"),
         ("8 (140–200 g each)", "", "8 (5–7 oz each)", "chicken thighs, trimmed")),
        (food("1.2 kg", "plums", prepared="1 kg", prepared_word="stoned"),
         ("1.2 kg (1 kg stoned)", "", "2 lb 10½ oz (2 lb 3½ oz stoned)", "plums")),
        (food("1 tsp", "juniper berries"), ("1 tsp", "", "", "juniper berries")),
        (food("1 piece", "ginger", size="3-cm"), ("1 piece (3 cm)", "", "", "ginger")),
        (food("1 can", "white beans", also="400 g"), ("1 can (400 g)", "", "1 can (14 oz)", "white beans")),
        (food("1 can", "tomatoes", also="400 g"), ("1 can (400 g)", "", "1 can (14 oz)", "tomatoes")),
        (food("500 g", "potatoes", also="1 lb plus 2 oz"),
         ("500 g (1 lb 2 oz)", "", "", "potatoes")),
        (food("1 lb plus 8 oz", "beef"), ("1 lb 8 oz", "680 g", "", "beef")),
        # a weight beside a cup is turned, whatever a density says
        (food("1 cup", "cheddar", also="4 oz"), ("1 cup (4 oz)", "113 g", "", "cheddar")),
        (food("1/2 stick", "butter"), ("½ stick", "56.5 g", "", "butter")),
        (food("4", "garlic cloves", preparation="crushed"), ("4", "", "", "garlic cloves, crushed")),
        (food("4", "large eggs"), ("4", "", "", "large eggs")),
        (food("40 g", "soft butter"), ("40 g", "", "2 tbsp plus 2½ tsp", "soft butter")),
        (food("50 g", "finely grated cheddar"), ("50 g", "", "1¾ oz", "finely grated cheddar")),
        (food("18 g", "salt", percent=Percent(exactly(18), "duck", measure("18 g"))),
         ("18 g per kg of the duck", "", "", "salt")),
        (food("", "water", percent=Percent(exactly("72.5"), "flour")), ("72.5 % of the flour", "", "", "water")),
        (food("", "fine salt", percent=Percent(exactly(2), "its")), ("2 % of its weight", "", "", "fine salt")),
        (food("1 pinch", "saffron"), ("1 pinch", "", "", "saffron")),
        (food("250 g", "very strong flour"), ("250 g", "", "≈ 1¾ cups plus 1 tbsp", "very strong flour")),
        (food("200 ml", "moon milk"), ("200 ml", "", "¾ cup plus 1½ tbsp", "moon milk")),
        (food("15 g", "fresh yeast", alternatives=(food("5 g", "instant yeast"),)),
         ("15 g", "", "½ oz", "fresh yeast, or 5 g instant yeast")),
    ],
)  # fmt: skip
def test_a_row_reads_as_written_and_in_both_systems(item: Ingredient, said: tuple[str, ...]) -> None:
    assert line(item) == said


def test_states_and_preparations_that_differ_stand_where_they_hold() -> None:
    made = build_table(
        recipe(
            Dough=[[food("40 g", "soft butter"), food("1", "onion", preparation="sliced")]],
            Glaze=[[food("20 g", "melted butter")], [food("2", "onions", preparation="sliced")]],
        ),
        KITCHEN,
    )
    butter, onion = made.rows
    assert name_text(butter, KITCHEN) == "butter, divided"
    assert where_text(butter, made, KITCHEN) == "Dough 40 g, soft; Glaze 20 g, melted"
    assert name_text(onion, KITCHEN) == "onions, sliced, divided"
    assert where_text(onion, made, KITCHEN) == "Dough 1; Glaze 2"


@pytest.mark.parametrize(
    ("written", "bare"),
    [
        ("soft butter", "butter"),
        ("finely grated cheddar", "cheddar"),
        ("room-temperature butter", "butter"),
        ("Large eggs", "eggs"),
        ("whole cloves", "cloves"),
        ("moon milk", "moon milk"),
    ],
)
def test_a_name_loses_states_that_do_not_hold_everywhere(written: str, bare: str) -> None:
    assert bare_name(food("1", written)) == bare


def test_each_state_is_weighed_by_its_own_density() -> None:
    # HERR 41: cake flour 99 g a cup sifted; USDA SR28 20084: 137 g as it is.
    row = only(food("1 cup", "sifted cake flour"), food("1 cup", "cake flour"))
    assert shown(row, KITCHEN) == ("2 cups", "236 g", "2 cups")


def test_two_uses_in_one_line_are_one_place() -> None:
    made = build_table(recipe(Dish=[[food("1 tbsp", "water"), food("1 tbsp", "water")]]), KITCHEN)
    assert not made.rows[0].divided
    assert where_text(made.rows[0], made, KITCHEN) == ""


def test_two_preparations_in_one_line_are_told_apart() -> None:
    whole, sliced = food("2", "onions"), food("1", "onion", preparation="sliced")
    made = build_table(recipe(Dish=[[whole, sliced]]), KITCHEN)
    assert where_text(made.rows[0], made, KITCHEN) == "2 + 1, sliced"
