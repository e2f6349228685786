"""A component that never reaches the dish.

Somebody makes it, and then it stands there: most likely the line that uses it is missing, or calls it by
another name.

Use it by its name where it belongs: `pour [the glaze] over`, `[into the jars]`. If it is a dish of its
own, give it a file of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.words import singular
from tamis.reading.clauses import Reference, Tool

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Recipe

RULE = "component-unused"
LEVEL: Severity = "warning"
BAD = """\
title: Pickled cucumber
makes: 1 l

# Jars

Boil [2 jars] [in a large pan] [for 10 min].

# Pickle

Stir [500 g cucumber, sliced] with [10 g fine salt] [in a bowl].
"""
GOOD = """\
title: Pickled cucumber
makes: 1 l

# Jars

Boil [2 jars] [in a large pan] [for 10 min].

# Pickle

Stir [500 g cucumber, sliced] with [10 g fine salt] [in a bowl].
Pack [into the jars].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Equipment that is made ready and not used, and food that is used only by what is not the dish."""
    recipe = view.recipe
    reached = _reached(recipe)
    taken = {source for product in recipe.products for source in product.from_products}
    for index, component in enumerate(recipe.components):
        if component.heading is None or index == recipe.dish:
            continue
        if component.product is None:
            used = not component.prepares or _is_named_elsewhere(recipe, index)
        else:
            # One that nothing takes at all is told where the products are matched.
            used = component.product in reached or component.product not in taken
        if not used:
            message = f"“{component.name}” never reaches the dish"
            hint = f"use it by name, as in `[the {component.name.lower()}]`, or take it out"
            yield Diagnostic(RULE, LEVEL, component.heading, message, hint)


def _reached(recipe: Recipe) -> set[int]:
    """The products that are in the dish, by whatever way."""
    dish = recipe.components[recipe.dish].product if recipe.dish is not None else None
    waiting = [dish] if dish is not None else []
    reached: set[int] = set()
    while waiting:
        index = waiting.pop()
        if index not in reached:
            reached.add(index)
            waiting.extend(recipe.products[index].from_products)
    return reached


def _is_named_elsewhere(recipe: Recipe, index: int) -> bool:
    component = recipe.components[index]
    names = {singular(tool.name.lower().split(" ")[-1]) for tool in component.prepares}
    names.add(singular(component.name.lower().split(" ")[-1]))
    for action in recipe.actions:
        if action.component == index:
            continue
        for read in action.reads:
            if not isinstance(read, Reference | Tool) or (isinstance(read, Tool) and not read.definite):
                continue
            if singular(read.name.lower().split(" ")[-1]) in names:
                return True
    return False
