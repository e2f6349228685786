"""What cooks call things by, and which food is meant: lines as recipes are printed, and what they become."""

from __future__ import annotations

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source


def compiled(text: str) -> Compiled:
    found = compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{text}"), default_kitchen("en"), {})
    errors = [finding.message for finding in found.findings if finding.severity == "error"]
    assert not errors
    return found


def taken(text: str) -> dict[str, str]:
    """What each reference took, by its words."""
    recipe = compiled(text).recipe
    return {taking.text: recipe.products[taking.product].name for taking in recipe.takings}


def test_the_meat_and_the_pasta_are_what_holds_them() -> None:
    text = """\
# Thighs
Roast [8 chicken thighs] [in a roasting tin] [at 200C] [for 40 min] [until 74 °C inside].

# Noodles
Boil [400 g spaghetti] [in 4 l water, for boiling] [in a large pot] [for 9 min] [until firm to the bite].
Drain.

# Dish
Toss [the pasta] with [the chicken].
"""
    assert taken(text) == {"the pasta": "Noodles", "the chicken": "Thighs"}


def test_the_pastry_case_the_egg_mixture_and_the_component_itself() -> None:
    text = """\
# Pastry
Rub [100 g butter] into [200 g plain flour] [in a bowl].
[Chill for 1 h].

# Filling
Whisk [4 eggs] with [200 ml milk] [in a jug].
Stir [100 g cheddar] into [the mixture], and season [the filling] with [salt].

# Tart
Pour [the egg mixture] [into the pastry case].
[Bake for 30 min at 180 °C] [until set].
"""
    assert taken(text) == {"the egg mixture": "Filling", "into the pastry case": "Pastry"}


def test_the_second_layer_is_one_of_as_many_as_there_are_tins() -> None:
    text = """\
# Sponge layers
Grease [two 20 cm round cake tins] with [butter].
Whisk [4 eggs] with [200 g caster sugar] and [200 g self-raising flour] [in a bowl].
Divide it [between the prepared tins] and [bake for 25 min at 180 °C] [until firm].

# Cake
Lay [the first layer] [on a plate] and spread with [100 g strawberry jam].
Top with [the second layer].
"""
    recipe = compiled(text).recipe
    assert [str(taking.fraction) for taking in recipe.takings] == ["1/2", "1/2"]


def test_what_is_removed_and_comes_back_was_only_lifted_out() -> None:
    text = """\
Put [8 chicken thighs] [in a pan] with [500 ml water] and [1 bay leaf].
[Simmer for 40 min] [until 74 °C inside].
Remove [the bay leaf], and remove [the chicken] from the pan.
Boil [over high heat] [to 200 ml].
Return [the chicken] to the sauce.
"""
    dish = compiled(text).recipe.products[-1]
    assert sorted(" ".join(food.words) for food in dish.foods) == ["chicken thigh", "water"]


def test_two_sentences_in_a_line_have_a_time_each() -> None:
    text = """\
Boil [300 g basmati rice] [in 450 ml water] [in a pan] [for 10 min]. Take [off the heat] and [leave for 10 min].
"""
    recipe = compiled(text).recipe
    assert [action.work.wait.lo / 60 for action in recipe.actions if action.work.wait] == [10, 10]


def test_what_a_thing_is_put_somewhere_for_is_what_is_waited_for() -> None:
    text = """\
[Bake for 30 min at 180 °C] [500 g puff pastry] [until brown].
Turn out onto [a wire rack] to cool completely, [about 1 hour].
"""
    work = compiled(text).recipe.actions[-1].work
    assert work.verb == "cool" and not work.hands


def test_foods_are_known_however_they_are_described() -> None:
    text = """\
Mix [4 skinless, boneless chicken breasts] with [a 125 g ball mozzarella] and [pinch of saffron].
Add [7 g sachet instant yeast].
[Bake for 30 min at 200C] [until 74 °C inside].
"""
    recipe = compiled(text).recipe
    goods = [use.ingredient.goods.id if use.ingredient.goods else "" for use in recipe.uses]
    assert goods == ["chicken-breast", "mozzarella", "saffron", "instant-yeast"]
    assert [use.ingredient.measures[0].unit for use in recipe.uses] == ["", "ball", "pinch", "sachet"]


def test_a_component_for_a_purpose_keeps_the_name_of_its_heading() -> None:
    text = """\
# Hot lard
Melt [900 g lard, for frying] [in a deep pan] and heat it [to 190 °C].

# Boiling water
Bring [4 l water, for boiling] [to the boil] [in a large pot].

# Frying oil
Heat [1 l sunflower oil, for deep-frying] [in a wok] [to 170 °C].

# Dish
Cut [1 kg potatoes] into sticks.
Put them into [the boiling water] and [boil for 4 min] [until they bend].
Lift out, put into [the hot lard] and [fry for 3 min] [until pale].
Lift out, put into [the oil] and [fry for 2 min] [until brown].
"""
    assert taken(text) == {
        "the boiling water": "Boiling water",
        "the hot lard": "Hot lard",
        "the oil": "Frying oil",
    }


def test_what_greases_a_tin_makes_nothing() -> None:
    text = """\
# Tin
Grease [a loaf tin] with [20 g butter, for the tin].

# Loaf
Mix [300 g plain flour] with [200 ml water] [in a bowl].
Scrape [into the tin] and [bake for 30 min at 180 °C] [until firm].
"""
    assert [product.name for product in compiled(text).recipe.products] == ["Loaf"]
