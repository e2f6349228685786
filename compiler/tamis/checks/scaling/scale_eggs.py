"""Eggs that come out in parts when a recipe is scaled.

Half an egg is not to be had, and a cook who rounds to the whole one changes the batter by a third.

Beat an egg and weigh out the part, as the hint says, or choose a factor that leaves the eggs whole.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Use

RULE = "scale-eggs"
LEVEL: Severity = "warning"
ABOUT = ("egg",)
FACTOR = Fraction(3, 2)
BAD = """\
title: Scrambled eggs
serves: 2

# Eggs

Whisk [3 eggs] with [20 ml whole milk] [in a bowl].
Cook [in a frying pan] [over low heat], [stirring all the time], [until 72 °C and softly set, 3–4 min].
"""
GOOD = """\
title: Scrambled eggs
serves: 2

# Eggs

Whisk [4 eggs] with [20 ml whole milk] [in a bowl].
Cook [in a frying pan] [over low heat], [stirring all the time], [until 72 °C and softly set, 3–4 min].
"""

NEAR = Fraction(25, 1000)
"""So near to a whole number an egg is whole: the tolerance of all measures shown."""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Uses of eggs, yolks or whites whose number is whole before and not after."""
    for use in scene.recipe.uses:
        food = use.ingredient
        if food.goods is None or food.goods.role != "egg" or len(food.measures) != 1 or use.rest_of is not None:
            continue
        measure = food.measures[0]
        if measure.unit not in ("", food.piece_word):
            continue
        wanted = measure.amount.lo * scene.factor
        if measure.amount.lo.denominator == 1 and abs(wanted - round(wanted)) > NEAR * wanted:
            yield _finding(scene, use, wanted)


def _finding(scene: Scene, use: Use, wanted: Fraction) -> Diagnostic:
    from tamis.model.names import several
    from tamis.quantity.display import grams
    from tamis.quantity.numerals import number

    food = use.ingredient
    assert food.goods is not None
    piece = scene.kitchen.larder.piece(food.goods, food.measures[0].unit, food.states)
    hint = "beat one and weigh out the part you need"
    if piece:
        each = f"{grams(piece.usual)} each without shell: {piece.source}"
        hint = f"beat them and weigh out {grams(wanted * piece.usual)} ({each})"
    name = food.name if food.measures[0].amount.hi > 1 else several(food.name, food, scene.kitchen.language)
    message = f"{food.measures[0].amount.lo} becomes {number(wanted)} {name}"
    return Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
