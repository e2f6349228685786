"""A number without a unit before a food that is not counted: five hundred flour, two salt.

Nobody knows what to weigh, and the food has no weight in the table, in the batch and on the market list.

Write the unit: `[500 g plain flour]`, `[2 tsp fine salt]`. Where pieces are meant, name them: `[2 sage leaves]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.counted import counted, is_small, with_unit
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Reference
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.goods import Goods
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Ingredient

RULE = "unit-missing"
LEVEL: Severity = "error"
ABOUT = ("view bare", "reference")
BAD = """\
title: Soda bread
makes: 1 loaf

# Loaf

Stir [500 plain flour], [1 tsp bicarbonate of soda], [2 fine salt] and [400 buttermilk] together [in a bowl].
[Bake for 45 min at 200 °C] [until the loaf sounds hollow].
"""
GOOD = """\
title: Soda bread
makes: 1 loaf

# Loaf

Stir [500 g plain flour], [1 tsp bicarbonate of soda], [2 tsp fine salt] and [400 ml buttermilk] together [in a bowl].
[Bake for 45 min at 200 °C] [until the loaf sounds hollow].
"""

_SPOONS = 20
"""Fewer may be spoons, cups or ounces; so many are grams or millilitres."""


def check(view: View) -> Iterator[Diagnostic]:
    """Bare numbers before foods that come in no pieces, and before a part of such a food."""
    yield from _parts(view)
    for food, goods, number in view.bare:
        if counted(food, goods, number, view.kitchen) == "measured":
            message = f"“{food.measure_text}” of what? A unit is missing: “{food.name}” is measured, not counted"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, f"write {_hint(food, goods, number)}")


def _parts(view: View) -> Iterator[Diagnostic]:
    """`600 of the chicken stock`: of what comes in no pieces, so many are nothing."""
    for _, read in view.each(Reference):
        share = read.share
        if share is None or share.measure is None or share.measure.unit or share.also:
            continue
        found = view.kitchen.larder.named(read.name)
        if found and (found.goods.liquid or found.goods.flour):
            from tamis.quantity.display import written

            number = written(share.measure, view.recipe.language)
            message = f"“{number}” of what? A unit is missing: “{read.name}” is measured, not counted"
            yield Diagnostic(RULE, LEVEL, read.clause.span, message, "write a unit after the number")


def _hint(food: Ingredient, goods: Goods, number: Amount) -> str:
    """The line mended: with the one unit that fits, or with two and more where the number may be of either."""
    if number.lo < _SPOONS:
        small, large = ("tsp", "tbsp") if is_small(goods) else ("tbsp", "l" if goods.liquid else "kg")
        return f"{with_unit(food, small)}, {with_unit(food, large)} or another unit"
    grams = with_unit(food, "g")
    return f"{with_unit(food, 'ml')} or {grams}" if goods.liquid else grams
