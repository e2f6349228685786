"""What is named with `as` or left behind, shared out, and beside a component of the same name."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.model.recipe import Recipe
from tamis.quantity.display import number
from tamis.source import Source


def dish(body: str) -> tuple[Recipe, list[str]]:
    """A recipe and the rules that find something in it."""
    compiled = compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{body}"), default_kitchen("en"), {})
    return compiled.recipe, [finding.rule for finding in compiled.findings]


GLAZED = """\
# Pastry

Whisk [100 g icing sugar] with [2 tbsp water] [as glaze].
Roll [500 g puff pastry] [to 4 mm thick].
Brush with [{first}].
[Bake for 20 min at 200 °C] [until golden].
Brush with [{second}].
[Bake for 5 min at 200 °C] [until golden].
Brush with [{last}].
"""


HEADED = GLAZED.replace(" [as glaze]", "").replace("# Pastry", "# Glaze").replace("Roll", "\n# Pastry\n\nRoll")


@pytest.mark.parametrize("body", [GLAZED, HEADED], ids=["named", "a component"])
@pytest.mark.parametrize(
    ("first", "second", "last", "parts"),
    [
        ("half the glaze", "a quarter of the glaze", "the rest of the glaze", "½ ¼ ¼"),
        ("a third of the glaze", "another third of the glaze", "the remaining glaze", "⅓ ⅓ ⅓"),
        ("a quarter of the glaze", "half the glaze", "the rest of the glaze", "¼ ½ ¼"),
    ],
)
def test_what_is_named_is_shared_out(body: str, first: str, second: str, last: str, parts: str) -> None:
    recipe, found = dish(body.format(first=first, second=second, last=last))
    assert found == []
    assert [number(taking.fraction) for taking in recipe.takings if taking.fraction] == parts.split()


def test_two_that_are_named_alike_are_still_told() -> None:
    body = GLAZED.replace("as glaze", "as white glaze").format(
        first="half the white glaze", second="2 tbsp of the glaze", last="the rest of the glaze"
    )
    body = body.replace(
        "Roll",
        "Whisk [50 g icing sugar] with [1 tbsp coffee] [as brown glaze].\nBrush with [half the brown glaze].\nRoll",
    )
    assert "product-ambiguous" in dish(body)[1]


BRAISE = """\
# Duck

Braise [4 duck legs] [in 500 ml water] [in a casserole] [for 90 min] [until 85 °C inside].
Lift the duck on to a plate, [leaving the sauce].
"""
YOGURT = "\n# Sauce\n\nWhisk [100 g yogurt] with [1 tsp mustard] [in a bowl].\n"
PLATES = "\n# Plates\n\nServe [the duck] with [the sauce].\n"


def test_what_was_left_has_gone_into_a_component_of_its_name() -> None:
    recipe, found = dish(
        BRAISE + "\n# Sauce\n\nBoil [the sauce] [until thick, 10 min].\nStir in [20 g butter].\n" + PLATES
    )
    assert found == []
    taken = [(recipe.products[taking.product].name, taking.action) for taking in recipe.takings]
    assert taken == [("sauce", 2), ("Duck", 4), ("Sauce", 4)]


def test_what_was_named_has_gone_into_a_component_of_its_name() -> None:
    body = (
        "# Onions\n\nFry [2 onions, sliced] [in 20 g butter] [in a pan] [until soft, 10 min] [as relish].\n"
        "\n# Relish\n\nSimmer [the relish] with [50 ml vinegar] [for 10 min] [until thick].\n"
        "\n# Plates\n\nToast [4 slices of bread] [for 2 min] [until brown].\nTop with [the relish].\n"
    )
    recipe, found = dish(body)
    assert found == []
    assert recipe.products[recipe.takings[-1].product].name == "Relish"


@pytest.mark.parametrize("body", [BRAISE + YOGURT + PLATES, YOGURT[1:] + "\n" + BRAISE + PLATES])
def test_both_are_there(body: str) -> None:
    assert dish(body)[1] == ["product-ambiguous"]


CREAMED = """\
# Cake

Cream [100 g butter] with [100 g sugar] [in a bowl].
{line}
Pour in [100 ml milk].
Fold in [the {name}].
[Bake for 30 min at 180 °C] [until golden].
"""


@pytest.mark.parametrize(
    ("line", "name", "foods"),
    [
        (
            "Sift [200 g flour] with [2 tsp baking powder] [as flour mixture].",
            "flour mixture",
            "plain-flour baking-powder",
        ),
        ("Beat [3 egg whites] [until stiff] [as whites].", "whites", "egg-white"),
        ("Chop [60 g walnuts] and [set aside].", "walnuts", "walnut"),
        (
            "Whisk [200 g flour] with [2 tsp baking powder] [in another bowl] [as dry mix].",
            "dry mix",
            "plain-flour baking-powder",
        ),
        ("Melt [50 g chocolate] [in a small pan] and [set aside].", "chocolate", "dark-chocolate"),
        # what adds, or cooks in the same pan, goes on with what is in hand
        ("Add [200 g flour] [as batter].", "batter", "butter sugar plain-flour"),
        ("Beat in [3 eggs] [as batter].", "batter", "butter sugar egg"),
        ("Beat smooth with [3 eggs] [as batter].", "batter", "butter sugar egg"),
    ],
)
def test_a_line_of_its_own_is_named_without_what_is_in_hand(line: str, name: str, foods: str) -> None:
    recipe, found = dish(CREAMED.format(line=line, name=name))
    assert "new-vessel" not in found
    named = next(product for product in recipe.products if product.kind in ("named", "set-aside"))
    assert [food.goods for food in named.foods] == foods.split()


@pytest.mark.parametrize(("said", "taken"), [("the tomato sauce", True), ("the sauce", True), ("the tomato", False)])
def test_a_component_further_down_answers_to_its_last_word(said: str, taken: bool) -> None:
    pasta = "# Pasta\n\nBoil [400 g penne] [in 4 l water] [in a stockpot] [for 10 min]; drain.\nPour over [{said}].\n\n"
    sauce = "# Tomato sauce\n\nSimmer [400 g chopped plums] [in a saucepan] [for 20 min].\n"
    recipe, found = dish(pasta.format(said=said) + sauce)
    assert ([recipe.products[each.product].name for each in recipe.takings] == ["Tomato sauce"]) is taken
    assert ("product-unknown" in found) is not taken


def test_of_several_foods_in_a_name_the_first_is_there() -> None:
    recipe, found = dish(
        "# Base\n\nFry [2 onions] and [3 cloves garlic] [in a frying pan] [until soft, 10 min].\n\n"
        "# Stew\n\nStir [the onions and juices] into [1 l vegetable stock] [in a saucepan].\n"
    )
    assert found == []
    assert [recipe.products[each.product].name for each in recipe.takings] == ["Base"]
