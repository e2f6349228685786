"""Far more salt, spice, baking powder or soda than the flour or the dish can take.

A tablespoon for a teaspoon makes a cake that tastes of soap, or a dish that goes into the bin.

Check the number and the spoon. A salt crust or a cure is meant so: allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.dough import bread
from tamis.checks.limits import SOURCE, limits
from tamis.checks.portions import PASTE, most_of_all
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.amount import total
from tamis.quantity.numerals import decimal
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.checks.view import View
    from tamis.kitchen.food import Goods, Role, Show
    from tamis.model.recipe import Action, Use

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
_DRAWN, _CURED = 1200, 36000
"""Seconds after which salt has drawn juice out of food, and has cured it (common practice)."""
_HERB_SALT = 4
"""Of what part of all is salt, it may be a seasoning."""
_SUGAR: Role = "sugar"
_WATER: Role = "water"


def check(view: View) -> Iterator[Diagnostic]:
    """Leaveners by the flour of the whole recipe, salt by all that goes in."""
    known = limits()
    uses = [(use, goods) for use in view.batch if (goods := use.ingredient.goods)]
    leaveners = [(use, goods) for use, goods in uses if goods.id in known.leaveners]
    salts = [use for use, goods in uses if goods.salt]
    spices = [(use, goods) for use, goods in uses if _is_spice(goods)]
    if not (leaveners or salts or spices):
        return
    whole = view.weight.hi if len(uses) == len(view.batch) else total([use.mass.hi for use, _ in uses])
    flours = [(use, goods) for use, goods in uses if goods.flour]
    flour = total([use.mass.hi for use, _ in flours])
    if flour < _LEAST_FLOUR or flour < _LEAST_SHARE * whole:
        flour = Fraction(0)
    elif leaveners and not any([use.mass.unknown for use, _ in flours]):
        meal = total([use.mass.hi for use, goods in uses if goods.id in known.meals and not goods.flour])
        yield from _leaveners(leaveners, flour + meal, any([goods.id in known.raising_flours for _, goods in flours]))
    if any([use.mass.unknown for use in view.batch]):
        whole = most_of_all(view) or Fraction(0)
    if whole and not any([use.mass.unknown for use in view.recipe.uses if not use.in_batch]):
        salted = total([use.mass.hi for use in salts]) * _HERB_SALT < whole
        if salted or any([goods.liquid or goods.flour for _, goods in uses]):
            yield from _salt(view, salts, whole, flour)
        yield from _spices(spices, whole)


def _leaveners(uses: Sequence[tuple[Use, Goods]], flour: Fraction, raising: bool) -> Iterator[Diagnostic]:
    most = limits().beside_raising if raising else limits().leaveners
    for use, goods in uses:
        limit = most.get(goods.id)
        if limit and use.mass.lo * 100 > limit * flour:
            beside = ", which has some in it" if raising else ""
            message = f"more {goods.name} than {decimal(limit)} % of the flour{beside} ({SOURCE})"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number, and tsp or tbsp")


def _salt(view: View, uses: Sequence[Use], whole: Fraction, flour: Fraction) -> Iterator[Diagnostic]:
    of_dish = _most_of_dish(view, whole)
    for use in uses:
        message = _too_salty(view, use, whole, flour, of_dish)
        if message:
            message = f"more salt than {message} ({SOURCE})"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number and its unit")


def _too_salty(view: View, use: Use, whole: Fraction, flour: Fraction, of_dish: Fraction) -> str:
    """What a salt is more than, `of_dish` percent of all among others; "" where it may be meant."""
    most, serves, salt = limits().salt, view.recipe.header.serves, use.mass.lo
    if salt * 100 > most["all"] * whole:
        return f"{decimal(most['all'])} % of all that goes in"
    if flour:
        of_flour = _most_of_flour(salt, whole)
        if salt * 100 > of_flour * flour:
            told = of_flour != most["flour"] and bread(view) is not None  # by salt-band
            return "" if told else f"{decimal(of_flour)} % of the flour"
    if serves and salt > most["serving"] * serves.hi:
        return f"{decimal(most['serving'])} g for each of those it serves"
    more = ""
    if salt * 100 > of_dish * whole:
        more = f"{decimal(of_dish)} % of all that goes in"
    elif serves and salt > most["head"] * serves.hi and salt * 100 > most["head-share"] * whole:
        more = f"{decimal(most['head'])} g for each of those it serves"
    return more if more and whole >= PASTE and _stays(view, use) else ""


def _stays(view: View, use: Use) -> bool:
    """Whether all of a salt is eaten, as far as the lines tell: no brine, no water to cook in, none that nobody
    measures in its component, no cure, and no time in which it draws the juice out."""
    waters = [one for one in view.recipe.uses if one.ingredient.goods and one.ingredient.goods.role == _WATER]
    for water in waters:
        if water.action == use.action if water.mass.hi else water.component == use.component and not water.in_batch:
            return False
    later = view.recipe.actions[use.action :]
    if any([action.work.wait is not None and action.work.wait.lo > _CURED for action in later]):
        return False
    lines = [action for action in later[:3] if action.component == use.component]
    if any([_draws(action) for action in lines]):
        return False
    return not any([said.verb.base in limits().salt_leaves for action in lines for said in action.verbs])


def _draws(action: Action) -> bool:
    """Whether food lies in its salt, unheated, for longer than it takes to make the next thing."""
    wait = action.work.wait
    return wait is not None and wait.lo >= _DRAWN and not any([said.verb.heat for said in action.verbs])


def _most_of_dish(view: View, whole: Fraction) -> Fraction:
    """The most of salt in a dish: less in a sweet one, and in one of which each gets a plateful."""
    most, serves = limits().salt, view.recipe.header.serves
    sugar = total([one.mass.hi for one in view.batch if one.ingredient.goods and one.ingredient.goods.role == _SUGAR])
    if sugar * 100 >= most["sweet-share"] * whole:
        return most["sweet"]
    return most["plate" if serves and whole >= most["plate-weight"] * serves.hi else "dish"]


def _most_of_flour(salt: Fraction, whole: Fraction) -> Fraction:
    """The most of salt beside flour; less in a dough than where flour is the lesser part."""
    most = limits().salt
    return most["dough" if salt * 100 > most["dough-share"] * whole else "flour"]


def _spices(spices: Sequence[tuple[Use, Goods]], whole: Fraction) -> Iterator[Diagnostic]:
    known = limits()
    if not spices or total([use.mass.lo for use, _ in spices]) * 100 > known.blend * whole:
        return
    for use, goods in spices:
        most = known.strong.get(goods.id, known.spice)
        if goods.id not in known.more_spice and use.mass.lo * 100 > most * whole:
            message = f"more than {decimal(most)} % of all that goes in is {goods.name} ({SOURCE})"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, "check the number, and tsp or tbsp")


def _is_spice(goods: Goods) -> bool:
    """What is sold by the jar, and flavours by the spoon."""
    return goods.role == _FLAVOUR or (goods.show == _SPICE and goods.merchant == _BY_THE_JAR and not goods.salt)
