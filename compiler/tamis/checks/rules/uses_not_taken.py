"""A recipe stands under `uses:`, and nothing is taken from it.

Its food, its allergens and its time then count for nothing in this dish; mostly it was written like bought food.

Take from it with *of the* and its title, `[4 tbsp of the curry paste]`, or take it out of `uses:`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.registry import Files
from tamis.diagnostics import Diagnostic, Severity
from tamis.source import Span
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Supply
    from tamis.reading.clauses import Ingredient

RULE = "uses-not-taken"
LEVEL: Severity = "warning"
ABOUT = ("view used",)
_STOCK = """\
title: Brown stock
makes: 2 l

# Stock

Simmer [1 kg beef bones] [in 3 l water] [in a stockpot] [for 4 h].
Strain.
"""
BAD: Files = {
    "broth.tamis": """\
title: Carrot broth
serves: 2
uses: brown-stock

# Broth

Simmer [500 g carrots] with [500 ml brown stock] [in a saucepan] [for 20 min].
""",
    "brown-stock.tamis": _STOCK,
}
GOOD: Files = {
    "broth.tamis": """\
title: Carrot broth
serves: 2
uses: brown-stock

# Broth

Simmer [500 g carrots] with [500 ml of the brown stock] [in a saucepan] [for 20 min].
""",
    "brown-stock.tamis": _STOCK,
}


def check(view: View) -> Iterator[Diagnostic]:
    """Stems of known recipes that no reference takes from; the food that bears the name is marked, if there is one."""
    if not view.used:
        return
    taken = {view.recipe.products[taking.product].recipe for taking in view.recipe.takings}
    for stem in view.recipe.header.uses:
        supply = view.used.get(stem)
        if supply is None or stem in taken:
            continue
        food = _meant(view, supply)
        message = f"nothing is used from “{supply.title}”, which is listed under `uses:`"
        if food is None:
            the = example(view.recipe.language, "the", name=supply.title.lower())
            hint = f"use it, for example {the}, or take it out of `uses:`"
            yield Diagnostic(RULE, LEVEL, _span(view, stem), message, hint)
        else:
            said = f"{food.measure_text} of the {food.name}" if food.measure_text else f"the {food.name}"
            message = f"“{food.name}” is read as bought food here; {message}"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, f"write `[{said}]`")


def _meant(view: View, supply: Supply) -> Ingredient | None:
    """The first food that is called like the used recipe, or like its file."""
    names = {supply.title.lower(), supply.stem.replace("-", " ")}
    return next((food for food in view.ingredients if food.name.lower() in names), None)


def _span(view: View, stem: str) -> Span:
    whole = view.recipe.header.span("uses")
    at = view.source.slice(whole).find(stem)
    return Span(whole.start + at, whole.start + at + len(stem)) if at >= 0 else whole
