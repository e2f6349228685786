"""Flours in percent that don't make up the flour.

Flour is always 100 %: with 85 and 10 % of two flours a twentieth of the flour is missing from the dough, and every
other percentage is of flour that is not there.

Bring the flours to 100 % together; flour that is weighed elsewhere in the recipe may be a part of the header's.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.model.flour import of_flour
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Use

RULE = "percent-whole"
LEVEL: Severity = "warning"
_DOUGH = """\
title: Country loaf
makes: 1 loaf
flour: 1 kg

# Dough

Mix [72 % bread flour], [{} % spelt flour], [66 % water], [1.9 % fine salt] and [1 % instant yeast] [in a tub].
[Rise for 1 h] [until doubled].
[Bake for 35 min] [at 220 °C].
"""
BAD = _DOUGH.format(20)
GOOD = _DOUGH.format(28)


def check(view: View) -> Iterator[Diagnostic]:
    """Percentages of the header's flour, if there are any: the flours among them must make 100."""
    header = view.recipe.header
    if header.flour is None and header.dough is None:
        return
    weighed = {use.component for use in view.recipe.uses if _is_flour(use) and use.ingredient.percent is None}
    percents = [
        u for u in view.recipe.uses if of_flour(u.ingredient, view.recipe.language) and u.component not in weighed
    ]
    if not percents:
        return
    flours = [use for use in percents if _is_flour(use)]
    said = sum((_percent(use) for use in flours), Fraction(0))
    if said == 100 or _with_weighed(view, flours):
        return
    from tamis.quantity.numerals import decimal

    labels = tuple(Label(use.ingredient.clause.span, "and this") for use in flours[1:])
    span = (flours or percents)[0].ingredient.clause.span
    message = f"the flours make {decimal(said)} % of the flour, not 100" if flours else "none of the flour goes in"
    hint = (
        "change them so that they make 100 % together"
        if flours
        else f"put it in: {example(view.recipe.language, 'flour_percent')}"
    )
    yield Diagnostic(RULE, LEVEL, span, message, hint, labels)


def _with_weighed(view: View, flours: list[Use]) -> bool:
    """Whether they and the flour that is weighed in other components make the header's flour together."""
    from tamis.quantity.measure import grams

    header = view.recipe.header
    whole = grams(header.flour, view.kitchen.units) if header.flour else None
    if whole is None:
        return False
    weighed = [use for use in view.recipe.uses if _is_flour(use) and use.ingredient.percent is None]
    there = sum((use.mass.hi for use in (*flours, *weighed)), Fraction(0))
    return bool(weighed) and there == whole.hi


def _is_flour(use: Use) -> bool:
    goods = use.ingredient.goods
    return use.in_batch and goods is not None and goods.flour


def _percent(use: Use) -> Fraction:
    assert use.ingredient.percent is not None
    return use.ingredient.percent.amount.hi * use.times
