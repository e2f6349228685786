"""What grows in a clause, what stays, and how it is said: to the compiler exactly, to the cook as a kitchen has it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tamis.scaling.misleads import misleading

from .kitchen_table import KITCHEN, compiled, one_line, sentence, times


@pytest.mark.parametrize(
    ("clause", "factor", "exact", "shown"),
    [
        ("480 g bread flour", "1/3", "160 g bread flour", "160 g bread flour"),
        ("400 g bread flour", "1/3", "133 1/3 g bread flour", "133 g bread flour"),
        ("480 g (3 1/2 cups) bread flour", "1/2", "240 g (1 3/4 cups) bread flour", "240 g (1¾ cups) bread flour"),
        ("500 g / 1 lb 2 oz beef", "2", "1000 g / 2 lb 4 oz beef", "1 kg / 2 lb 4 oz beef"),
        ("1 lb 8 oz beef", "1/2", "1/2 lb 4 oz beef", "12 oz beef"),
        ("1 cup plus 2 tbsp whole milk", "2", "2 cups plus 4 tbsp whole milk", "2¼ cups whole milk"),
        ("1 tbsp honey", "4/3", "1 1/3 tbsp honey", "1 tbsp plus 1 tsp honey"),
        ("2 tsp fine salt", "3", "6 tsp fine salt", "2 tbsp fine salt"),
        ("1 small leg of lamb", "3", "3 small legs of lamb", "3 small legs of lamb"),
        ("1 blade of mace", "3", "3 blades of mace", "3 blades of mace"),
        ("3 shoulders of mutton", "1/3", "1 shoulder of mutton", "1 shoulder of mutton"),
        ("2 cloves of garlic", "3", "6 cloves of garlic", "6 cloves of garlic"),
        ("1 cup water", "3", "3 cups water", "3 cups water"),
        ("2 cups water", "1/2", "1 cup water", "1 cup water"),
        ("60–90 g butter", "2", "120–180 g butter", "120–180 g butter"),
        # Pieces, and their name in the number that fits.
        ("1 egg", "3", "3 eggs", "3 eggs"),
        ("an onion, sliced", "2", "2 onions, sliced", "2 onions"),
        ("3 onions, in 8 wedges", "1/3", "1 onion, in 8 wedges", "1 onion"),
        ("half an onion", "3", "1 1/2 onions", "1½ onions"),
        ("two eggs", "2", "4 eggs", "4 eggs"),
        ("a dozen eggs", "1/2", "6 eggs", "6 eggs"),
        ("juice of 1 lemon", "2", "juice of 2 lemons", "juice of 2 lemons"),
        ("3 carrots", "3/7", "1 2/7 carrots", "about 1¼ carrots"),
        ("about 3 carrots", "3/7", "about 1 2/7 carrots", "about 1¼ carrots"),
        # What stands behind the comma belongs to the table, but not without which the sentence would be another.
        ("1 lettuce, leaves separated", "2", "2 lettuces, leaves separated", "2 lettuces"),
        ("1 egg, separated", "2", "2 eggs, separated", "2 eggs, separated"),
        ("1 lemon, zested and juiced", "2", "2 lemons, zested and juiced", "2 lemons, zested and juiced"),
        ("2 tbsp whole milk, if needed", "2", "4 tbsp whole milk, if needed", "4 tbsp whole milk (if needed)"),
        ("1 onion stuck with 3 cloves", "3", "3 onions stuck with 9 cloves", "3 onions stuck with 9 cloves"),
        (
            "1 egg, beaten with 1 tbsp whole milk",
            "3",
            "3 eggs, beaten with 3 tbsp whole milk",
            "3 eggs, beaten with 3 tbsp whole milk",
        ),
        (
            "20 g lemon zest washed and grated from 3 lemons",
            "2",
            "40 g lemon zest washed and grated from 6 lemons",
            "40 g lemon zest washed and grated from 6 lemons",
        ),
        ("2 carrots, cut in 4 pieces", "2", "4 carrots, cut in 4 pieces", "4 carrots"),
        # Count nouns.
        ("1 clove garlic", "4", "4 cloves garlic", "4 cloves garlic"),
        ("a pinch of fine salt", "2", "2 pinches of fine salt", "2 pinches of fine salt"),
        ("1 can (400 g) tomatoes", "3", "3 cans (400 g each) tomatoes", "3 cans (400 g each) tomatoes"),
        ("2 × 400 g cans tomatoes", "2", "4 × 400 g cans tomatoes", "4 × 400 g cans tomatoes"),
        ("a 400 g can of tomatoes", "2", "2 × 400 g cans of tomatoes", "2 × 400 g cans of tomatoes"),
        ("2 (400 g) cans tomatoes", "2", "4 (400 g) cans tomatoes", "4 (400 g) cans tomatoes"),
        ("a pinch of fine salt", "5/7", "0 5/7 pinch of fine salt", "½ pinch of fine salt"),
        ("1 cup (2 sticks) butter", "1/2", "1/2 cup (1 stick) butter", "½ cup (1 stick) butter"),
        ("1 cup (2 sticks) butter, softened", "2", "2 cups (4 sticks) butter, softened", "2 cups (4 sticks) butter"),
        ("a 1.6 kg chicken", "2", "2 × 1.6 kg chickens", "2 × 1.6 kg chickens"),
        # The weight of a piece and sizes stay, the weight once prepared grows.
        (
            "8 chicken thighs (140–200 g each)",
            "1/2",
            "4 chicken thighs (140–200 g each)",
            "4 chicken thighs (140–200 g each)",
        ),
        ("1.2 kg plums (1 kg stoned)", "1/2", "0.6 kg plums (0.5 kg stoned)", "600 g plums (500 g stoned)"),
        ("a 3-cm piece of fresh ginger", "2", "2 3-cm pieces of fresh ginger", "2 × 3-cm pieces of fresh ginger"),
        ("200 g carrots, cut into 2-cm cubes", "2", "400 g carrots, cut into 2-cm cubes", "400 g carrots"),
        ("100 g 70 % chocolate", "2", "200 g 70 % chocolate", "200 g 70 % chocolate"),
        ("2 cm piece of fresh ginger", "3", "3 2 cm pieces of fresh ginger", "3 × 2 cm pieces of fresh ginger"),
        ("2 cm fresh ginger", "3", "6 cm fresh ginger", "6 cm fresh ginger"),
        ("one 400 g tin of tomatoes", "2", "2 400 g tins of tomatoes", "2 × 400 g tins of tomatoes"),
        ("1 1/2 to 2 cups water", "2/3", "1–1 1/3 cups water", "1–1⅓ cups water"),
        # Alternatives.
        (
            "15 g fresh yeast or 5 g instant yeast",
            "3",
            "45 g fresh yeast or 15 g instant yeast",
            "45 g fresh yeast or 15 g instant yeast",
        ),
        # What the oven decides, and percentages.
        ("100 ml boiling water, for steam", "2", "100 ml boiling water, for steam", "100 ml boiling water"),
        ("a few mint leaves", "2", "a few mint leaves", "a few mint leaves"),
    ],
)
def test_an_ingredient(clause: str, factor: str, exact: str, shown: str) -> None:
    made = times(one_line(f"Stir [{clause}] with [70 ml water] [in a bowl]."), factor)
    assert f"Stir [{exact}] with" in made.text
    assert sentence(made).startswith(f"Stir {shown} with")


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("Boil [over high heat] [to 200 ml].", "Boil over high heat to 400 ml."),
        # One amount in two measures grows in both.
        ("Boil [to 200 ml (7 fl oz)].", "Boil to 400 ml (14 fl oz)."),
        ("Simmer [until 120 ml (1/2 cup) is left].", "Simmer until 240 ml (1 cup) is left."),
        ("Simmer [until reduced to 1 cup (about 240 ml), 15 min].", "until reduced to 2 cups (about 480 ml), 15 min."),
        # What each piece is cut into stays.
        ("Divide [into 2 pieces].\nCut each [into 3 strips].", "Cut each into 3 strips"),
        ("Divide [into 2 pieces].\nCut [into 3 strips each].", "into 3 strips each"),
        ("Divide [into 2 pieces].\nRoll out every piece and cut it [into 8 wedges].", "into 8 wedges"),
        ("Divide [into 2 pieces].\nCut [into 6 strips].", "Cut into 12 strips"),
        ("Cut [3 carrots] [into 4 sticks each].", "Cut 6 carrots into 4 sticks each"),
        # Pieces that are called as equipment is.
        ("Roll out, stamp and cut [into 14 rings].", "into 28 rings"),
        ("Cut it [into 6 blades].", "into 12 blades"),
        ("Roll [4 mm thick].", "Roll 4 mm thick."),
        (
            "[Bake for 20–25 min] [until 96 °C inside].",
            "Bake for 20–25 min until 96 °C (205 °F) inside.",
        ),
        ("Press [into a 20 cm square tin].", "Press into a 20 cm square tin."),
        ("Divide [into 2 pieces].", "Divide into 4 pieces (250 g each)."),
        ("Divide [into 6 pieces (80 g each)].", "Divide into 12 pieces (80 g each)."),
        ("Cut [into 2-cm cubes].", "Cut into 2-cm cubes."),
        (
            "Drain [in a colander], [reserving 250 ml cooking water].",
            "Drain in a colander, reserving 500 ml cooking water.",
        ),
        ("[Twice], fold and [rest for 10 min].", "Twice, fold and rest for 10 min."),
        # The number of pieces by which the recipe goes.
        ("Divide [into 3 pieces].\nRoll out the first piece.", "into 3 pieces"),
        ("Divide [into 3 pieces (100 g each)].\nRoll [the third piece].", "into 3 pieces (200 g each)"),
        ("Divide [into 3 pieces].\nRoll out the pieces.", "into 6 pieces"),
        ("Divide [into 2 pieces].\nRoll out the first piece.", "into 4 pieces"),  # which are what it makes
        ("Cut [into 4 squares] and lay them one upon the other.", "Cut into 4 squares"),
        ("Cut [into 4 squares] and lay them side by side.", "Cut into 8 squares"),
        ("Split it [in half].\nSpread [200 g jam] on the bottom half.", "in half"),
        # What was boiled down or baked weighs less than went in.
        ("[Simmer for 20 min] [in a saucepan].\nDivide [into 4 pieces].", "Divide into 8 pieces."),
        ("[Bake for 20 min at 180 °C].\nCut [into 4 squares].", "Cut into 8 squares."),
        (
            "Warm it [in a saucepan] [until melted, 2 min].\nDivide [into 4 pieces].",
            "Divide into 8 pieces (125 g each).",
        ),
        ("[Rest for 20 min].\nDivide [into 4 pieces].", "Divide into 8 pieces (125 g each)."),
        ("[Simmer for 20 min] [in a saucepan].\nCut [400 g butter] [into 4 pieces].", "into 8 pieces (100 g each)"),
        # What food is cooked in.
        ("[In 2 batches], fry it [in 60 ml olive oil, for frying].", "fry it in 120 ml olive oil"),
        ("[In 2 batches], fry it [in 500 ml olive oil, for frying].", "fry it in 500 ml olive oil"),
        ("[In 2 batches], fry it [in 60 ml olive oil, for deep-frying].", "fry it in 60 ml olive oil"),
        ("[In 2 batches], fry it [in 60 ml olive oil, for frying] [in a deep pan].", "fry it in 60 ml olive oil"),
        ("Heat [60 ml olive oil, for frying] [to 175 °C].", "Heat 60 ml olive oil"),
        ("Bring [2 l water, for boiling] [to the boil].\n[In 2 batches], [boil for 4 min].", "Bring 2 l water"),
        ("Bring [2 l water, for boiling] [to the boil].\n[Boil for 4 min].", "Bring 4 l water"),
    ],
)
def test_what_else_grows_and_what_stays(before: str, after: str) -> None:
    made = times(one_line(f"Stir [300 g plain flour] with [200 ml water] [in a bowl].\n{before}"), 2)
    assert after in sentence(made)


def test_pieces_that_do_not_come_out_whole_stay_and_get_heavier() -> None:
    line = "Stir [300 g plain flour] with [180 ml water] [in a bowl].\nDivide [into 6 pieces (80 g each)]."
    made = times(one_line(line), "5/4")
    assert sentence(made).endswith("Divide into 6 pieces (100 g each).")


def test_a_share_by_measure_grows_and_one_by_part_stays() -> None:
    text = (
        "Fry [4 duck legs] [in a frying pan] [for 20 min].\nTip the fat out, [reserving duck fat].\n"
        "Add [2 tbsp of the duck fat] and [half of 300 g plain flour], then [the rest of the flour]."
    )
    made = times(one_line(text), 3)
    assert (
        "Add 6 tbsp of the duck fat and half of 900 g plain flour (450 g), then the rest of the flour (450 g)."
        in sentence(made)
    )


def test_the_header_grows() -> None:
    header = "makes: 1 loaf (about 800 g)\nserves: 4–6\nflour: 500 g\n"
    made = times(one_line("Stir [300 g plain flour] with [200 ml water] [in a bowl].", header), "3/2")
    assert made.text.splitlines()[1:4] == ["makes: 1 1/2 loaves (about 800 g)", "serves: 6–9", "flour: 750 g"]


@pytest.mark.parametrize(
    ("makes", "more"),
    [
        ("500 ml (2 cups)", "1000 ml (4 cups)"),
        ("2 cups / 480 ml", "4 cups / 960 ml"),
        ("6 rolls (80 g each)", "12 rolls (80 g each)"),
    ],
)
def test_a_yield_in_two_measures(makes: str, more: str) -> None:
    made = times(one_line("Stir [300 g plain flour] with [200 ml water] [in a bowl].", f"makes: {makes}\n"), 2)
    assert made.text.splitlines()[1] == f"makes: {more}"


def test_words_outside_clauses_stay() -> None:
    line = "Stir [300 g plain flour] with [200 ml water] [in a bowl].\n\nNote: 2 cups are enough."
    made = times(one_line(line), 2)
    assert made.text.endswith("Note: 2 cups are enough.\n")


def test_pieces_of_what_tins_divide_stay_as_many_as_the_tins() -> None:
    text = """\
title: Cake
makes: 1 cake

# Layers
Whisk [4 eggs] with [200 g caster sugar] and [200 g self-raising flour] [in a bowl].
Divide it [between 2 cake tins] and [bake for 25 min at 180 °C] [until firm].

# Cake
Spread [one of the layers] with [100 g strawberry jam] and top with [the rest of the layers].
"""
    said = sentence(times(compiled(text), "1/2"))
    assert "Spread one of the layers with 50 g strawberry jam" in said


@pytest.mark.parametrize(
    ("line", "factor", "method"),
    [
        ("Press [300 g rolled oats] [into 2 loaf tins].", "3", "into 6 loaf tins"),
        ("Lay [8 leaves of lettuce] [on 4 plates].", "3", "on 12 plates"),
        ("Pin [300 g rolled oats] [with 8 toothpicks].", "2", "with 16 toothpicks"),
        ("Press [300 g rolled oats] into [5 × 340 g jars].", "3", "into 15 × 340 g jars"),
        ("Press [300 g rolled oats] [into 8 × 150 ml ramekins].", "3", "into 24 × 150 ml ramekins"),
        ("Press [300 g rolled oats] [into 2 × 20 cm round tins].", "3", "into 2 × 20 cm round tins"),
        ("Press [300 g rolled oats] [into 2 loaf tins].", "5/4", "into 2 loaf tins"),
        ("Press [300 g rolled oats] [into two 20 cm round tins].", "2", "into two 20 cm round tins"),
        ("Heat [300 g rolled oats] [in 2 frying pans].", "2", "in 2 frying pans"),
        ("Set [8 rolls] [on 2 trays].\n[In 3 loads], [bake for 9 min] [in the oven at 200 °C].", "3", "on 2 trays"),
        (
            "Grease [2 loaf tins].\n[In 2 batches], fill them and [bake for 9 min] [in the oven].",
            "3",
            "Grease 2 loaf tins",
        ),
        ("Set [8 rolls] [on 2 trays].\n[In 3 batches], [fry for 9 min] [in a pan].", "3", "on 6 trays"),
        ("[In 3 batches], fry [300 g mushrooms] [for 3 min].", "3", "In 9 batches"),
        ("[In two batches], fry [300 g mushrooms] [for 3 min].", "3/2", "In 3 batches"),
    ],
)
def test_how_many_tins_plates_and_batches_the_method_says(line: str, factor: str, method: str) -> None:
    assert method in sentence(times(one_line(line), factor))


@pytest.mark.parametrize(
    ("makes", "triangles", "told"),
    [
        ("24 croissants", "into 12 triangles", []),
        ("12 croissants", "into 36 triangles", []),
        ("500 g", "into 36 triangles", ["scale-pieces"]),
        ("7 croissants", "into 36 triangles", ["scale-pieces"]),
    ],
)
def test_the_header_tells_whether_each_piece_is_cut_so(makes: str, triangles: str, told: list[str]) -> None:
    dough = "Stir [300 g plain flour] with [180 ml water] and divide [into 2 pieces]."
    recipe = one_line(f"{dough}\nRoll out and cut [into 12 triangles].", f"makes: {makes}\n")
    assert triangles in sentence(times(recipe, 3))
    assert [finding.rule for finding in misleading(recipe, Fraction(3), KITCHEN)] == told
