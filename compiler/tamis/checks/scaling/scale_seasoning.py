"""Salt, spices and leaveners multiplied by a large factor or a very small one.

What is tasted and what makes gas does not follow a large factor: evaporation, the height of a dough and the tongue do
not grow with the weight.

Begin with about three quarters of what the table says and taste; in a dough keep salt and yeast at their percentage of
the flour, and try leaveners in a batch of a middle size first. Below a third, weigh on scales that show tenths of a
gram.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene

RULE = "scale-seasoning"
LEVEL: Severity = "warning"
ABOUT = ("spice",)
FACTOR = Fraction(4)
BAD = """\
title: Herb salt
makes: 60 g

# Salt

Stir [50 g fine salt] with [10 g parsley leaves, finely chopped] [in a bowl].
"""
GOOD = """\
title: Honey oats
makes: 60 g

# Oats

Stir [50 g rolled oats] with [10 g honey] [in a bowl].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The measured seasonings of a recipe, told once, if the factor is beyond the limit."""
    limit = practice().limits["seasoning"]
    if 1 / limit <= scene.factor <= limit:
        return
    uses = (use for use in scene.recipe.uses if use.in_batch and use.rest_of is None)
    named = [use.ingredient for use in uses if use.ingredient.measures]
    found = [food for food in named if food.goods is not None and food.goods.show == "spice"]
    if not found:
        return
    names = ", ".join(dict.fromkeys(food.goods.name for food in found if food.goods))
    more, times = scene.factor > 1, times_text(scene.factor)
    message = f"{times} is a large factor for {names}" if more else f"{times} leaves very small amounts of {names}"
    hint = (
        "begin with three quarters of a seasoning and taste; in a dough keep its percentage of the flour"
        if more
        else "weigh such small amounts on scales that show tenths of a gram, and taste"
    )
    labels = tuple(Label(food.clause.span, "and this") for food in found[1:])
    yield Diagnostic(RULE, LEVEL, found[0].clause.span, message, hint, labels)
