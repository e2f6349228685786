"""A component that never reaches the dish.

Somebody makes it, and then it stands there: most likely the line that uses it is missing, or calls it by
another name.

Use it by its name where it belongs: `pour [the glaze] over`, `[into the jars]`. If it is a dish of its
own, give it a file of its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Reference, Tool
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Component, Recipe

RULE = "component-unused"
LEVEL: Severity = "warning"
ABOUT = ("view several",)
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
    named = _named(recipe) if any(component.product is None for component in recipe.components) else {}
    taken = {source for product in recipe.products for source in product.from_products}
    for index, component in enumerate(recipe.components):
        if component.heading is None or index == recipe.dish:
            continue
        if component.product is None:
            used = not component.prepares or _is_called(component, index, named, recipe.language)
        else:
            # One that nothing takes at all is told by the rule dish-unclear.
            used = component.product in reached or component.product not in taken
        if not used:
            message = f"“{component.name}” never reaches the dish"
            the = example(view.recipe.language, "the", name=component.name.lower())
            hint = f"use it by name, as in {the}, or take it out"
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


def _named(recipe: Recipe) -> dict[str, set[int]]:
    """For each noun that an action calls by name: the components that do (two of them are enough to know)."""
    named: dict[str, set[int]] = {}
    for action in recipe.actions:
        for read in action.reads:
            if isinstance(read, Reference) or (isinstance(read, Tool) and read.definite):
                callers = named.setdefault(_noun(read.name, recipe.language), set())
                if len(callers) < 2:
                    callers.add(action.component)
    return named


def _is_called(component: Component, index: int, named: dict[str, set[int]], language: str) -> bool:
    names = (component.name, *(tool.name for tool in component.prepares))
    return any(named.get(_noun(name, language), set()) - {index} for name in names)


def _noun(name: str, language: str) -> str:
    return nouns(language).singular(name.lower().split(" ")[-1])
