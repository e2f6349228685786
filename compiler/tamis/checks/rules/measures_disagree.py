"""Two measures of one amount that are not the same amount.

A cook with scales and a cook with cups would make two different dishes from one recipe.

Weigh a cup of it and write what the scales say, or drop one of the two. The check allows 15 % between
weight and volume, 30 % for light powders, since cups are filled so differently, and half the last digit
of a metric figure.
"""

# The tolerances are a judgement drawn from USDA SR28, WEIGHT.txt: of 316 foods with a cup and a tablespoon
# weight, 95 % agree with themselves within 16.5 %; the worst are powders (dry milk 38.7 %).

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.model.words import model_words
from tamis.quantity.amount import Amount
from tamis.quantity.measure import base, kind, plus
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.goods import Density
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient

RULE = "measures-disagree"
LEVEL: Severity = "warning"
ABOUT = ("view also",)
BAD = """\
title: Sugar syrup
makes: 500 ml

# Syrup

Stir [400 g (1 cup) granulated sugar] with [250 ml boiling water] [in a jug] [until clear, about 2 min].
"""
GOOD = """\
title: Sugar syrup
makes: 500 ml

# Syrup

Stir [400 g (2 cups) granulated sugar] with [250 ml boiling water] [in a jug] [until clear, about 2 min].
"""

_TOLERANCE = Fraction(15, 100)
_POWDER_TOLERANCE = Fraction(30, 100)
_LIGHT = Fraction(65, 100)
"""Grams per millilitre under which a powder holds so much air that filling decides: flour is 0.5."""
_METRIC = ("g", "kg", "ml", "l")


def check(view: View) -> Iterator[Diagnostic]:
    """Ingredients whose second measure lies beyond the tolerance of the first."""
    for food in view.also:
        if len(food.measures) != 1 or not _uneven(view).isdisjoint(food.measure_text.lower().replace("(", " ").split()):
            continue
        other = _in_all(view, food.also)
        if other is not None:
            found = [list(_disagree(view, said, other)) for said in _ways_measured(view, food)]
            yield from min(found, key=len)


def _in_all(view: View, parts: Sequence[Measure]) -> Measure | None:
    """The second writing of a measure as one: 1 lb 2 oz."""
    whole: Measure | None = parts[0]
    for part in parts[1:]:
        whole = whole and plus(whole, part, view.kitchen.units)
    return whole


def _uneven(view: View) -> frozenset[str]:
    """The words of spoons and cups of which nobody knows how full they are: generous, scant."""
    from tamis.table.words import amount_words

    words = amount_words(view.recipe.language)
    return words.uneven | words.nearly


def _ways_measured(view: View, food: Ingredient) -> Iterator[Ingredient]:
    """The food as its name says it is, and as what stands behind the comma says: a cup of walnuts, chopped, may have
    been filled before the knife or after it."""
    yield food
    yield from _as_pieces(view, food)
    words = tuple(food.preparation.lower().replace(",", " ").split())
    if words:
        yield food._replace(states=(*words, *_cut_so(view, food, words), *food.states))


def _as_pieces(view: View, food: Ingredient) -> Iterator[Ingredient]:
    """A cup of nuts of which it is not said how they are may be of whole ones, halves or pieces; ground ones are called
    so."""
    goods, larder = food.goods, view.kitchen.larder
    if goods is None or goods.show != "nut" or any(density.state in food.states for density in goods.densities):
        return
    for density in goods.densities:
        if density.state and not larder.is_minced(goods, (density.state,)):
            yield food._replace(states=(density.state, *food.states))


def _cut_so(view: View, food: Ingredient, words: Sequence[str]) -> list[str]:
    """The states that a food has a density for, where its pieces are called by their nouns: *cut into slivers*."""
    language = view.recipe.language
    one, cuts = nouns(language).singular, model_words(language).cuts
    pieces = {one(word) for word in words}
    states = [density.state for density in food.goods.densities] if food.goods else []
    verbs = [(state, view.kitchen.verbs.participle(state)) for state in states]
    return [state for state, verb in verbs if verb and not pieces.isdisjoint(cuts.get(verb.base, ()))]


def _disagree(view: View, food: Ingredient, other: Measure) -> Iterator[Diagnostic]:
    worth = _in_kind_of(view, food.measures[0], other, food)
    if worth is not None:
        yield from _compared(view, food, other, *worth)


def _compared(
    view: View, food: Ingredient, other: Measure, first: Amount, second: Amount, tolerance: Fraction
) -> Iterator[Diagnostic]:
    if first.hi * (1 + tolerance) >= second.lo and second.hi * (1 + tolerance) >= first.lo:
        return
    from tamis.quantity.display import written

    language = view.recipe.language
    factor = second.lo / first.hi if second.lo > first.hi else first.lo / second.hi
    message = (
        f"{written(food.measures[0], language)} and {written(other, language)} of {food.name} are not the same amount: "
        f"one is {float(factor):.1f} times the other"
    )
    yield Diagnostic(RULE, LEVEL, food.clause.span, message, _advice(view, food, other))


def _in_kind_of(view: View, one: Measure, other: Measure, food: Ingredient) -> tuple[Amount, Amount, Fraction] | None:
    """Both measures in grams (of two volumes.

    Millilitres) and the tolerance; None if they cannot be compared.
    """
    units = view.kitchen.units
    first, second = _with_digits(view, one), _with_digits(view, other)
    kinds = kind(one, units), kind(other, units)
    if first is None or second is None or not set(kinds) <= {"mass", "volume"}:
        return None
    if kinds[0] == kinds[1]:
        return first, second, _TOLERANCE
    density = view.kitchen.larder.density(food.goods, food.states) if food.goods else None
    if density is None:
        return None
    worths = ((one, first), (other, second))
    weighed = [_weight(worth, density) if kind(said, units) == "volume" else worth for said, worth in worths]
    light = food.goods is not None and food.goods.show == "powder" and density.usual < _LIGHT
    return weighed[0], weighed[1], _POWDER_TOLERANCE if light else _TOLERANCE


def _weight(volume: Amount, density: Density) -> Amount:
    return Amount(volume.lo * density.lo, volume.hi * density.hi)


def _with_digits(view: View, measure: Measure) -> Amount | None:
    """What a measure may mean, half the last digit either way where it is metric."""
    worth = base(measure, view.kitchen.units)
    unit = view.kitchen.units.get(measure.unit)
    if worth is None or unit is None or measure.unit not in _METRIC:
        return worth
    slack = _last_digit(measure.amount) * unit.factor / 2
    return Amount(max(Fraction(0), worth.lo - slack), worth.hi + slack)


def _last_digit(amount: Amount) -> Fraction:
    """The worth of the last decimal place that was written.

    1 for 12, 1/10 for 1.5, 0 for what is no decimal.
    """
    digit = Fraction(1)
    for _ in range(4):
        if (amount.lo / digit).denominator == 1 and (amount.hi / digit).denominator == 1:
            return digit
        digit /= 10
    return Fraction(0)


def _advice(view: View, food: Ingredient, other: Measure) -> str:
    """What the kitchen's own figure says, with its source."""
    density = view.kitchen.larder.density(food.goods, food.states) if food.goods else None
    units = view.kitchen.units
    volume = next((m for m in (food.measures[0], other) if kind(m, units) == "volume"), None)
    same = kind(food.measures[0], units) == kind(other, units)
    worth = base(volume, units) if volume and not same else None
    if density is None or volume is None or worth is None:
        return "fix one of the two, or leave it out"
    from tamis.quantity.display import grams, written

    return f"{written(volume, view.recipe.language)} is usually {grams(worth.lo * density.usual)} ({density.source})"
