"""From what a cook wants to a factor: so many portions, so many loaves, so much flour, dough of a certain weight.

Every way is a division of what is wanted by what the recipe has; what differs is where the recipe says it, and what
to tell a cook when it does not.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.measure import Measure, base, grams, kind
from tamis.quantity.nouns import nouns
from tamis.quantity.number import parse, problem
from tamis.record import NamedTuple
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Product, Quantity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.mass import Mass
    from tamis.model.recipe import Recipe

FINEST = 1000
"""A factor that rests on a weight is taken to a fraction with a denominator up to this."""
LEAST, MOST = Fraction(1, 1000), 1000


class Wanted(NamedTuple):
    """The factor, or else what is wrong with the wish, in words for the cook."""

    factor: Fraction = Fraction(1)
    problem: str = ""


def factor_for(way: str, text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """The factor for a wish: `way` is by, serves, makes, flour or dough, `text` what the cook wrote."""
    if way == "by":
        return number_of(text, kitchen.language)
    ways = {"serves": _serves, "makes": _makes, "flour": _flour, "dough": _dough}
    return _within(ways[way](text.strip(), recipe, kitchen))


def _within(wanted: Wanted) -> Wanted:
    if not wanted.problem and not LEAST <= wanted.factor <= MOST:
        return Wanted(problem=f"that is {float(wanted.factor):.3g} times the recipe: expected 1/1000 to 1000")
    return wanted


def number_of(text: str, language: str) -> Wanted:
    """A factor that is given as such: `1.5`, `×2`, `1/3`."""
    number = parse(text.lstrip("×x* "), language)
    if not number:
        reason = problem(text) or "expected a number such as 1.5, 2 or 1/3"
        return Wanted(problem=f"“{text}” is no factor: {reason}")
    return _within(Wanted(number))


def _serves(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    number = _single(text, kitchen.language)
    if number is None:
        return Wanted(problem=f"“{text}” is no number of people: expected one such as 6")
    serves = recipe.header.serves
    if serves is None:
        other = f"; it makes {recipe.header.makes.text}: `--makes`" if recipe.header.makes else ""
        return Wanted(problem=f"the recipe does not say how many it serves (`serves: 4` in its header){other}")
    # Of a range the smaller number: better some left than somebody hungry.
    return Wanted(number / serves.lo)


def _single(text: str, language: str) -> Fraction | None:
    number = parse(text, language)
    return number or None


def _makes(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    made = recipe.header.makes
    if made is None:
        said = example(recipe.language, "made").strip("`")
        return Wanted(problem=f"the recipe does not say what it makes (`makes: {said}` in its header)")
    items = parse_clause(text, kitchen.language).items
    first = items[0] if items else None
    if isinstance(first, Product):
        return _made_weight(text, recipe, kitchen)
    unreadable = Wanted(problem=f"“{text}” cannot be read: expected an amount such as “{made.text}”")
    if not isinstance(first, Quantity) or not first.amount.single or not first.amount.lo:
        return unreadable
    if first.kind in ("mass", "volume"):
        return _made_measure(first, text, recipe, kitchen)
    noun = text[first.span.end :].partition("(")[0].strip(" ,")
    if first.kind != "pieces" or (made.measure is not None):
        return unreadable
    if noun and _one(noun, recipe.language) != _one(made.noun, recipe.language):
        return Wanted(problem=f"the recipe makes {made.text}, no {noun}")
    return Wanted(first.amount.lo / made.amount.lo)


def _one(noun: str, language: str) -> str:
    return nouns(language).one(noun.lower())


def _made_measure(first: Quantity, text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """So much of what the recipe makes by weight or volume, in any unit of the same kind."""
    made = recipe.header.makes
    assert made is not None
    has = made.measure or (made.each.times(made.amount.lo) if made.each else None)
    wanted = _measure(first, kitchen)
    if has is None or kind(has, kitchen.units) != kind(wanted, kitchen.units):
        return Wanted(problem=f"the recipe makes {made.text}, which is not told as {text}")
    one, other = base(has, kitchen.units), base(wanted, kitchen.units)
    assert one is not None and other is not None, "a mass and a volume have a size"
    return Wanted((other.lo / one.lo).limit_denominator(FINEST))


def _made_weight(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """`72 × 6 oz`: so many portions of a weight, where the recipe tells the weight of its own."""
    made = recipe.header.makes
    assert made is not None
    each = grams(made.each, kitchen.units) if made.each else None
    weight = _weight(text, kitchen)
    if each is None or weight is None:
        return Wanted(problem=f"the recipe makes {made.text}, which is not told as {text}")
    return Wanted((weight / (each.lo * made.amount.lo)).limit_denominator(FINEST))


def _measure(quantity: Quantity, kitchen: Kitchen) -> Measure:
    unit = kitchen.units.get(quantity.unit)
    return Measure(quantity.amount, unit.id if unit else quantity.unit)


def _weight(text: str, kitchen: Kitchen) -> Fraction | None:
    """Grams of `2 kg`, `1 lb 8 oz`, `12 × 90 g`; None if it is none."""
    items = parse_clause(text, kitchen.language).items
    item = items[0] if len(items) == 1 else None
    if isinstance(item, Product) and item.kind == "mass" and len(item.factors) == 2:
        unit = kitchen.units.get(item.unit)
        return item.factors[0].lo * item.factors[1].lo * unit.factor if unit else None
    if not isinstance(item, Quantity) or item.kind != "mass":
        return None
    parts = [grams(_measure(part, kitchen), kitchen.units) for part in (item, *item.then)]
    return sum((part.lo for part in parts if part), Fraction(0)) or None


def _flour(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    weight = _weight(text, kitchen)
    if weight is None:
        return Wanted(problem=f"“{text}” is no weight of flour: expected one such as “2 kg”")
    stated = grams(recipe.header.flour, kitchen.units) if recipe.header.flour else None
    if stated:
        return Wanted((weight / stated.lo).limit_denominator(FINEST))
    flours = [use for use in recipe.uses if use.in_batch and use.ingredient.goods and use.ingredient.goods.flour]
    unknown = [name for use in flours for name in use.mass.unknown]
    total = sum(((use.mass.lo + use.mass.hi) / 2 for use in flours), Fraction(0))
    if unknown or not total:
        what = f"nothing tells what {unknown[0]} weighs" if unknown else "there is no flour in the recipe"
        return Wanted(problem=what)
    return Wanted((weight / total).limit_denominator(FINEST))


def _dough(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    weight = _weight(text, kitchen)
    if weight is None:
        return Wanted(problem=f"“{text}” is no weight of dough: expected one such as “12 × 90 g” or “1.5 kg”")
    stated = grams(recipe.header.dough, kitchen.units) if recipe.header.dough else None
    if stated:
        return Wanted((weight / stated.lo).limit_denominator(FINEST))
    mass = dough_mass(recipe)
    if mass is None:
        return Wanted(problem="there is no dough in the recipe: nothing in which all its flour comes together")
    if mass.unknown or not mass.hi:
        return Wanted(problem=f"the dough's weight is not known: nothing tells what {mass.unknown[0]} weighs")
    return Wanted((weight * 2 / (mass.lo + mass.hi)).limit_denominator(FINEST))


def dough_mass(recipe: Recipe) -> Mass | None:
    """What the dough weighs: the first thing made in which all the flour has come together."""
    flour = {
        at
        for at, use in enumerate(recipe.uses)
        if use.in_batch and use.ingredient.goods is not None and use.ingredient.goods.flour
    }
    if not flour:
        return None
    whole = (product for product in recipe.products if flour <= set(product.uses))
    return next((product.mass for product in whole), None)
