"""Far more salt, spice, baking powder or soda than the flour or the dish can take.

A tablespoon for a teaspoon makes a cake that tastes of soap, or a dish that goes into the bin.

Check the number and the spoon. A salt crust or a cure is meant so: allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.limits import SOURCE, Limits, limits
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.checks.view import View
    from tamis.kitchen.food import Goods, Role, Show
    from tamis.model.recipe import Use

RULE = "seasoning-range"
LEVEL: Severity = "warning"
BAD = """\
title: Plain scones
makes: 8 scones

# Scones

Rub [450 g self-raising flour], [4 tbsp baking powder] and [100 g cold butter] together [in a bowl].
Stir in [250 ml milk] and cut [into 8 pieces].
[Bake for 12 min at 220 °C] [until golden].
"""
GOOD = """\
title: Plain scones
makes: 8 scones

# Scones

Rub [450 g self-raising flour], [1 tsp baking powder] and [100 g cold butter] together [in a bowl].
Stir in [250 ml milk] and cut [into 8 pieces].
[Bake for 12 min at 220 °C] [until golden].
"""

# Less flour thickens a sauce, or binds what is raised by other means (oats, nuts), and is no measure of a leavener.
_LEAST_FLOUR = 50
_LEAST_SHARE = Fraction(15, 100)
_FLAVOUR: Role = "flavour"
_BY_THE_JAR: Literal["spices"] = "spices"  # the merchant
_SPICE: Show = "spice"


def check(view: View) -> Iterator[Diagnostic]:
    """Leaveners by the flour of the whole recipe, salt by all that goes in."""
    uses = [use for use in view.recipe.uses if use.in_batch and use.ingredient.goods]
    yield from _leaveners(uses, limits())
    yield from _salt(view, uses, limits())
    yield from _spices(view, uses, limits())


def _leaveners(uses: Sequence[Use], known: Limits) -> Iterator[Diagnostic]:
    flours = [use for use in uses if use.ingredient.goods and use.ingredient.goods.flour]
    flour = sum((use.mass.hi for use in flours), Fraction(0))
    whole = sum((use.mass.hi for use in uses), Fraction(0))
    if flour < _LEAST_FLOUR or flour < _LEAST_SHARE * whole or any(not use.mass.known for use in flours):
        return
    raising = any(use.ingredient.goods and use.ingredient.goods.id in known.raising_flours for use in flours)
    most = known.beside_raising if raising else known.leaveners
    for use in uses:
        goods = use.ingredient.goods
        limit = most.get(goods.id) if goods else None
        if goods and limit and use.mass.lo * 100 > limit * flour:
            beside = ", which has some in it" if raising else ""
            message = f"more {goods.name} than {limit} % of the flour{beside} ({SOURCE})"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number, and tsp or tbsp")


def _salt(view: View, uses: Sequence[Use], known: Limits) -> Iterator[Diagnostic]:
    whole = sum((use.mass.hi for use in uses), Fraction(0))
    unknown = any(not use.mass.known for use in view.recipe.uses)
    foods = [use.ingredient.goods for use in uses if use.ingredient.goods]
    flour = sum((use.mass.hi for use in uses if use.ingredient.goods and use.ingredient.goods.flour), Fraction(0))
    flour = flour if flour >= _LEAST_FLOUR and flour >= _LEAST_SHARE * whole else Fraction(0)
    serves = view.recipe.header.serves
    dish = any(food.liquid or food.flour for food in foods)  # else it may be a herb salt
    for use in uses if dish and not unknown else ():
        if use.ingredient.goods is None or not use.ingredient.goods.salt:
            continue
        message = ""
        if use.mass.lo * 100 > known.salt * whole:
            message = f"more than {known.salt} % of all that goes in is salt ({SOURCE})"
        elif flour and use.mass.lo * 100 > known.salt_of_flour * flour:
            message = f"more salt than {known.salt_of_flour} % of the flour ({SOURCE})"
        elif serves and use.mass.lo > known.salt_serving * serves.hi:
            message = f"more salt than {known.salt_serving} g for each of those it serves ({SOURCE})"
        if message:
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number and its unit")


def _spices(view: View, uses: Sequence[Use], known: Limits) -> Iterator[Diagnostic]:
    if any(not use.mass.known for use in view.recipe.uses):
        return
    whole = sum((use.mass.hi for use in uses), Fraction(0))
    spices = [use for use in uses if use.ingredient.goods and _is_spice(use.ingredient.goods)]
    if sum((use.mass.lo for use in spices), Fraction(0)) * 100 > known.blend * whole:
        return
    for use in spices:
        goods = use.ingredient.goods
        if goods and goods.id not in known.more_spice and use.mass.lo * 100 > known.spice * whole:
            message = f"more than {known.spice} % of all that goes in is {goods.name} ({SOURCE})"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number, and tsp or tbsp")


def _is_spice(goods: Goods) -> bool:
    """What is sold by the jar, and flavours by the spoon."""
    return goods.role == _FLAVOUR or (goods.show == _SPICE and goods.merchant == _BY_THE_JAR and not goods.salt)
