"""A joint, a bird or a fish that comes out in parts when a recipe is scaled, or that is one piece and too large.

Nobody buys a third of a shoulder, nor a fillet of veal of 4 kg in one piece; a heavier piece feeds more, and takes
longer by its weight, not by their number.

Choose a factor that leaves the pieces whole, buy a heavier one and go by the core temperature, or several as heavy as
the recipe's.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Use
    from tamis.reading.clauses import Ingredient

RULE = "scale-joints"
LEVEL: Severity = "warning"
ABOUT = ("meat", "fish")
FACTOR = Fraction(3, 2)
BAD = """\
title: Roast leg of lamb
serves: 6

# Roast

Lay [1 leg of lamb (2 kg)] [on a rack].
[Roast for 90 min] [at 180 °C] [until 63 °C inside].
[Rest for 15 min].
"""
GOOD = """\
title: Roast leg of lamb
serves: 6

# Roast

Lay [2 legs of lamb (2 kg each)] [on a rack].
[Roast for 90 min] [at 180 °C] [until 63 °C inside].
[Rest for 15 min].
"""

_WHOLE = ("meat", "fish")
_MANY = 4
_HEAVY = 1000
"""Grams up to which a larger piece is as easy to buy, and cooks about as long (common practice)."""
_NEAR = 4
"""So many words may stand between *in one* and *slice*."""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Meat and fish counted in pieces whose number is whole before and not after; of many a part is no matter. What is
    weighed may be told to be one piece."""
    for use in scene.recipe.uses:
        food = use.ingredient
        if food.goods is None or food.goods.show not in _WHOLE or len(food.measures) != 1 or use.rest_of is not None:
            continue
        counted = scene.kitchen.units.get(food.measures[0].unit) is None
        yield from _in_parts(scene, food) if counted else _in_one(scene, use)


def _in_parts(scene: Scene, food: Ingredient) -> Iterator[Diagnostic]:
    from tamis.quantity.numerals import number

    measure = food.measures[0]
    wanted = measure.amount.lo * scene.factor
    if wanted < _MANY and measure.amount.lo.denominator == 1 != wanted.denominator:
        name = f"{measure.unit} of {food.name}" if measure.unit else food.name
        message = f"{measure.amount.lo} becomes {number(wanted)} {name}"
        hint = "buy heavier ones instead, and go by the core temperature: they take longer"
        yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)


def _in_one(scene: Scene, use: Use) -> Iterator[Diagnostic]:
    """`[1.4 kg veal fillet, in one piece]`: so much more of it is no such piece."""
    from tamis.quantity.display import grams

    food, wanted = use.ingredient, use.mass.hi * scene.factor
    said = _one_piece(food.preparation, scene.kitchen.language)
    if scene.factor <= 1 or wanted <= _HEAVY or not said:
        return
    message = f"{times_text(scene.factor)}: {grams(wanted)} of {food.name} {said} may not be had, and takes longer"
    number = int(-(-scene.factor // 1))
    each = grams(wanted / number)
    hint = f"take {number} of {each} each, which cook as long as one, in a larger vessel or in several"
    yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)


def _one_piece(preparation: str, language: str) -> str:
    """The words that tell that food is one piece: *in one thick flat slice*."""
    words = check_words(language).scaling
    said = preparation.lower().replace(",", " , ").split()
    for at in range(len(said)):
        for one in words.in_one:
            if said[at : at + len(one.split())] == one.split():
                end = at + len(one.split())
                noun = next((n for n in range(end, min(end + _NEAR, len(said))) if said[n] in words.single), None)
                if noun is not None and "," not in said[end:noun]:
                    return " ".join(said[at : noun + 1])
    return ""
