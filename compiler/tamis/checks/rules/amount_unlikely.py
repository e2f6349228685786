"""So much or so little of a food, or of all together, that kilos and grams, litres and millilitres were mixed up.

Whoever shops by it carries home a sack of butter, or stands there with a gram of flour.

Check the number and its unit, and what the header says it serves or makes. Where it is meant, allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.counted import MANY, bare
from tamis.checks.limits import SOURCE, limits
from tamis.checks.portions import (
    beside_flour,
    by_the_spoon,
    by_the_vessel,
    least_a_head,
    least_of_piece,
    left_of,
    most_a_head,
    most_of_all,
    thick_of,
    worst_for_a_person,
)
from tamis.diagnostics import Diagnostic, Severity
from tamis.model.mass import weighed
from tamis.model.words import plain
from tamis.quantity.measure import grams, millilitres
from tamis.reading.clauses import Reference
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.food import Goods, Role, Show
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient
    from tamis.source import Span

RULE = "amount-unlikely"
LEVEL: Severity = "warning"
BAD = """\
title: Squash soup
serves: 4

# Soup

Simmer [800 kg squash, diced] in [1 l water] [in a pan] [for 25 min] [until soft].
"""
GOOD = """\
title: Squash soup
serves: 4

# Soup

Simmer [800 g squash, diced] in [1 l water] [in a pan] [for 25 min] [until soft].
"""

_CHECK = "check the numbers and their units"
_NONE = Fraction(0)
_WATERY: tuple[Role, ...] = ("water", "milk", "egg")
_BULKY: tuple[Show, ...] = ("meat", "fish", "grain", "cheese")
_BASIC: tuple[Role, ...] = ("flour", "sugar", "fat")
_BESIDE, _BESIDE_BASIC = 100, 1000
"""So many times as much goes in beside: then so little of a food that is the body of a dish is no measure of it."""
_PIECE_SHARE = 10
_SACK, _TIMES_THE_REST, _TIMES_THE_WHOLE = Fraction(10_000), 20, 5
"""Grams, below which much water boils beside little food; and so many times the rest is no part of it."""
_METRIC = frozenset(("g", "ml"))


def check(view: View) -> Iterator[Diagnostic]:
    """What goes in, by who eats it and what is made of it; each food by itself."""
    whole = view.weight.lo
    yield from _too_little(view, whole)
    if whole:
        most = most_of_all(view)
        told = [*_by_header(view, whole, most), *_by_makes(view, whole, most)]
        number = bare(_heaviest(view)) if told else None
        if number and number.lo >= MANY:
            told = []  # told by count-unlikely
        yield from (
            told
            or by_the_spoon(view)
            or by_the_vessel(view)
            or beside_flour(view, whole)
            or _beside_the_rest(view, whole)
        )


def _heaviest(view: View) -> Ingredient:
    return max(view.batch, key=lambda use: use.mass.lo).ingredient


def _by_header(view: View, whole: Fraction, all_in: Fraction | None) -> Iterator[Diagnostic]:
    """At most one finding: a slip in one food puts all the others out."""
    header, dish = view.recipe.header, limits().dish
    if header.serves and header.serves.hi:
        people = header.serves.hi
        most, thick = most_a_head(view, whole), thick_of(view)
        if whole > most * people or thick > dish["thick"] * people:
            left = left_of(view)
            eaten, limit = (whole - left[0], most) if whole > most * people else (thick - left[1], dish["thick"])
            if eaten > limit * people:
                where = _heaviest(view).clause.span
                yield _say(where, f"{_weight(eaten / people)} of food for each person", limit, "more")
        elif all_in is not None and all_in < (least := least_a_head(view, whole)) * people:
            yield _say(header.span("serves"), f"{_weight(all_in / people)} of food for each person", least, "less")
        else:
            yield from _for_a_person(view, people)
    elif header.makes and not header.makes.measure and whole / header.makes.amount.hi > dish["piece"]:
        each = whole / header.makes.amount.hi
        where = _heaviest(view).clause.span
        yield _say(where, f"{_weight(each)} of food for each that it makes", dish["piece"], "more")


def _for_a_person(view: View, people: Fraction) -> Iterator[Diagnostic]:
    worst = worst_for_a_person(view, people)
    if worst is not None:
        food, each, most = worst
        what = f"{_weight(each)} of {food.name} for each person"
        yield _say(food.clause.span, what, most, "more")


def _beside_the_rest(view: View, whole: Fraction) -> Iterator[Diagnostic]:
    """A food that is many times all the others, for a purpose too; a part of something that is more than all."""
    sack = view.weight.hi > _SACK
    for use in view.recipe.uses:
        if not sack and use.in_batch and use.times == 1 and use.fraction == 1 and use.ingredient.percent is None:
            continue  # it weighs no more than all that goes in
        weight = weighed(use.ingredient, view.kitchen)
        if weight is None or weight.lo <= _SACK:
            continue
        rest = whole - use.mass.lo if use.in_batch else whole
        number = bare(use.ingredient)
        if number and number.lo >= MANY:  # told by count-unlikely
            continue
        if rest and weight.lo > _TIMES_THE_REST * rest:
            message = f"{_weight(weight.lo)} of {use.ingredient.name}, and of all the other foods {_weight(rest)}"
            yield Diagnostic(RULE, LEVEL, use.ingredient.clause.span, message, _CHECK)
    for _, read in view.each(Reference):
        measure = read.share.measure if read.share else None
        part = _in_metric(measure, view) if measure else None
        if part and part.lo > max(_SACK, _TIMES_THE_WHOLE * whole):
            message = f"{_weight(part.lo)} of “{read.name}”, and all that goes in weighs {_weight(whole)}"
            yield Diagnostic(RULE, LEVEL, read.clause.span, message, _CHECK)


def _in_metric(measure: Measure, view: View) -> Amount | None:
    """A measure in grams or millilitres."""
    return grams(measure, view.kitchen.units) or millilitres(measure, view.kitchen.units)


def _by_makes(view: View, whole: Fraction, all_in: Fraction | None) -> Iterator[Diagnostic]:
    """What is made by weight or volume, beside what goes into it."""
    makes, dish = view.recipe.header.makes, limits().dish
    if makes is not None and not makes.measure and all_in is not None:
        number, least = makes.amount.hi, least_of_piece(view, makes.noun, whole)
        if all_in < least * number:
            said = f"{_weight(all_in / number)} of food for each that it makes"
            yield _say(view.recipe.header.span("makes"), said, least, "less")
    measure = (makes.measure or makes.each) if makes else None
    if makes is None or measure is None:
        return
    made = _in_metric(measure, view)
    if made is None:
        return
    made = made if makes.measure else made.times(makes.amount.hi)
    index = _made_of(view, makes.text)
    left = view.recipe.products[index].mass.lo if index is not None else _NONE
    span = view.recipe.header.span("makes")
    if left > dish["boiled-down"] * made.hi:
        yield Diagnostic(RULE, LEVEL, span, f"{_weight(left)} of food go in, and this is made of it", _CHECK)
    elif all_in is not None and all_in < dish["swollen"] * made.lo:
        yield Diagnostic(RULE, LEVEL, span, f"only {_weight(all_in)} of food go in, and this is made of it", _CHECK)


def _made_of(view: View, made: str) -> int | None:
    """The product whose amount is told: of the one component that is called so, *160 g fresh noodles* for a soup; else
    the dish."""
    recipe = view.recipe
    words = plain(made, recipe.language)[-1:]
    named = [one.product for one in recipe.components if words and plain(one.name, recipe.language)[-1:] == words]
    dish = recipe.components[recipe.dish].product if recipe.dish is not None else None
    return named[0] if len(named) == 1 else dish


def _too_little(view: View, whole: Fraction) -> Iterator[Diagnostic]:
    least = limits().least
    plenty = int(max(least.values())) + 1
    for use in view.recipe.uses:
        food = use.ingredient
        if food.goods is None or len(food.measures) != 1 or food.measures[0].unit not in _METRIC:
            continue
        amount = food.measures[0].amount.hi
        top, bottom = amount.as_integer_ratio()
        if top >= bottom * plenty:  # to compare fractions takes longer
            continue
        limit = least["liquid" if food.goods.liquid else "solid"]
        if amount < limit and amount and _is_body(food.goods, amount, whole):
            said = f"{food.measure_text} {food.name}"
            message = f"“{said}” is very little; such food is usually measured in {_larger(food.measures[0].unit)}"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, "check the number and its unit")


def _larger(unit: str) -> str:
    return "kilos or hundreds of grams" if unit == "g" else "litres or hundreds of millilitres"


def _is_body(goods: Goods, amount: Fraction, whole: Fraction) -> bool:
    """Whether a food is the body of a dish, and so little of it nothing beside the rest."""
    if goods.salt or goods.leavener:
        return False
    if goods.role in _WATERY or goods.show in _BULKY:
        return whole > _BESIDE * amount
    if goods.pieces:
        least = min(piece.usual for piece in goods.pieces)
        return _PIECE_SHARE * amount < least and whole > _BESIDE * amount
    return goods.role in _BASIC and whole > _BESIDE_BASIC * amount


def _say(span: Span, message: str, limit: Fraction, way: str) -> Diagnostic:
    return Diagnostic(RULE, LEVEL, span, f"{message}: {way} than {_weight(limit)} is unlikely ({SOURCE})", _CHECK)


def _weight(weight: Fraction) -> str:
    from tamis.quantity.display import grams as written

    return written(weight)
