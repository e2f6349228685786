"""Several components are used by no other, so that it is not clear which of them is the dish.

The last is taken; if that is wrong, so are the weights, the timeline and the page.

Use the other components by name in the one that is the dish, or give each dish a file.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "dish-unclear"
LEVEL: Severity = "warning"
ABOUT = ("view several",)
BAD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Dish
serves: 2

# Cream

Whip [200 ml double cream] [in a bowl] [until thick].

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
Fold in [the cream].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Components with food that nothing takes, besides the one that counts as the dish."""
    recipe = view.recipe
    if recipe.dish is None:
        return
    taken = {taking.product for taking in recipe.takings}
    taken.update(source for product in recipe.products for source in product.from_products)
    dish = recipe.components[recipe.dish].name
    for index, component in enumerate(recipe.components):
        product = component.product
        if product is None or product in taken or index == recipe.dish or component.heading is None:
            continue
        message = f"no other component uses “{component.name}”; “{dish}” is treated as the dish"
        the = example(view.recipe.language, "the", name=component.name.lower())
        hint = f"use it where it belongs, as in {the}, or give it a file of its own"
        yield Diagnostic(RULE, LEVEL, component.heading, message, hint)
