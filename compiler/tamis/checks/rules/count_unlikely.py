"""A number without a unit before a food of which nobody takes so many, or of which one has no known weight.

The unit may be lost: 450 carrots fill a sack and would feed a village; 450 g are four of them.

Write the unit: `[450 g carrots]`. Where pieces are meant, say what one weighs: `[2 kohlrabi (250 g each)]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.counted import MANY, bare, counted, is_several, with_unit
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.measure import grams as grams_of
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.checks.view import View
    from tamis.kitchen.goods import Goods
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Ingredient

RULE = "count-unlikely"
LEVEL: Severity = "warning"
BAD = """\
title: Carrot soup
serves: 4

# Soup

Simmer [450 carrots, sliced] in [1 l water] [in a pan] [for 25 min] [until soft].
"""
GOOD = """\
title: Carrot soup
serves: 4

# Soup

Simmer [450 g carrots, sliced] in [1 l water] [in a pan] [for 25 min] [until soft].
"""

_UNWEIGHED = 100
"""Nobody counts so many of what nobody has weighed."""
_SACK = 5000
_SERVING, _SERVING_PIECES = 500, 30
"""Grams in a whole recipe, grams and pieces for a person, beyond which nobody means pieces (common practice)."""
_FAR = 4


def check(view: View) -> Iterator[Diagnostic]:
    """Bare numbers that are too many, or may be no number of pieces."""
    for food in view.ingredients:
        number = bare(food)
        if number is None or food.goods is None:
            continue
        count = counted(food, food.goods, number, view.kitchen)
        said = f"{food.measure_text} {food.name}"
        if count == "unweighed":
            message = f"“{said}”: what one of them weighs is not known; is a unit missing?"
            hint = f"write the unit, or what one weighs: `[{said} (… g each)]`"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
        elif count == "pieces" and (why := _unlikely(food, food.goods, number, view)):
            hint = (
                f"write {with_unit(food, 'g')} if grams are meant"
                if number.lo > 1
                else "write the unit, or the singular"
            )
            yield Diagnostic(RULE, LEVEL, food.clause.span, f"“{said}” {why}: is a unit missing?", hint)


def _unlikely(food: Ingredient, goods: Goods, number: Amount, view: View) -> str:
    """What speaks against so many pieces; "" if nothing does."""
    if number.hi <= 1:
        one = is_several(food, goods, view.kitchen.language)
        return "is one, in the plural" if one else ""
    piece = view.kitchen.larder.piece(goods, "", food.states)
    if piece is None:
        return "is a large number of pieces" if number.lo >= _UNWEIGHED else ""
    weight = number.lo * piece.usual
    if not _too_many(number.lo, weight, view) and not _disagrees(food, number.lo, weight, view):
        return ""
    from tamis.quantity.display import grams

    return f"would weigh {grams(weight)}"


def _disagrees(food: Ingredient, number: Fraction, weight: Fraction, view: View) -> bool:
    """Whether the weight that stands beside the number is far less."""
    told = [
        measured for each in (*food.also, food.prepared) if each and (measured := grams_of(each, view.kitchen.units))
    ]
    return number >= MANY and any(weight > _FAR * each.hi for each in told)


def _too_many(number: Fraction, weight: Fraction, view: View) -> bool:
    """Whether that is more than anybody eats."""
    serves = view.recipe.header.serves
    if number < MANY:
        return False
    if serves is None or not serves.hi:
        return weight > (_SACK if number < _UNWEIGHED else _SACK / 2)
    many = number >= _UNWEIGHED and number > _SERVING_PIECES * serves.hi
    return many or weight > _SERVING * serves.hi
