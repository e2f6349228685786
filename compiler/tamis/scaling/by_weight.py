"""From a weight that a cook wants to a factor: of flour, of dough, of portions, of what the recipe makes."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.measure import Measure, base, grams, kind
from tamis.scaling.factor import Wanted
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Product, Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.mass import Mass
    from tamis.model.recipe import Recipe
    from tamis.reading.header import Makes

FINEST = 1000
"""A factor that rests on a weight is taken to a fraction with a denominator up to this."""


def made_measure(first: Quantity, text: str, made: Makes, kitchen: Kitchen) -> Wanted:
    """So much of what the recipe makes by weight or volume, in any unit of the same kind."""
    has = made.measure or (made.each.times(made.amount.lo) if made.each else None)
    wanted = _measure(first, kitchen)
    if has is None or kind(has, kitchen.units) != kind(wanted, kitchen.units):
        return Wanted(problem=f"the recipe makes {made.text}, which cannot be converted to {text}")
    one, other = base(has, kitchen.units), base(wanted, kitchen.units)
    assert one is not None and other is not None, "a mass and a volume have a size"
    return _times(other.lo, one.lo)


def made_weight(text: str, made: Makes, kitchen: Kitchen) -> Wanted:
    """`72 × 6 oz`: so many portions of a weight, where the recipe tells the weight of its own."""
    each = grams(made.each, kitchen.units) if made.each else None
    weight = _weight(text, kitchen)
    if each is None or weight is None:
        return Wanted(problem=f"the recipe makes {made.text}, which cannot be converted to {text}")
    return _times(weight, each.lo * made.amount.lo)


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


def by_flour(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """So much flour, where the header or the ingredients tell how much there is."""
    weight = _weight(text, kitchen)
    if weight is None:
        return Wanted(problem=f"“{text}” is not a weight of flour: expected one such as “2 kg”")
    return _by_header(weight, recipe.header.flour, kitchen) or _by_flour_in(weight, recipe)


def by_dough(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """So much dough, where the header or the ingredients tell how much there is."""
    weight = _weight(text, kitchen)
    if weight is None:
        return Wanted(problem=f"“{text}” is not a weight of dough: expected one such as “12 × 90 g” or “1.5 kg”")
    return _by_header(weight, recipe.header.dough, kitchen) or _by_dough_in(weight, recipe)


def _by_header(weight: Fraction, said: Measure | None, kitchen: Kitchen) -> Wanted | None:
    stated = grams(said, kitchen.units) if said else None
    return _times(weight, stated.lo) if stated else None


def _by_flour_in(weight: Fraction, recipe: Recipe) -> Wanted:
    flours = [use for use in recipe.uses if use.in_batch and use.ingredient.goods and use.ingredient.goods.flour]
    unknown = [name for use in flours for name in use.mass.unknown]
    total = sum(((use.mass.lo + use.mass.hi) / 2 for use in flours), Fraction(0))
    if unknown or not total:
        what = f"the weight of {unknown[0]} is not known" if unknown else "there is no flour in the recipe"
        return Wanted(problem=what)
    return _times(weight, total)


def _by_dough_in(weight: Fraction, recipe: Recipe) -> Wanted:
    mass = _dough_mass(recipe)
    if mass is None:
        return Wanted(problem="there is no dough in the recipe: nothing in which all its flour comes together")
    if mass.unknown or not mass.hi:
        return Wanted(problem=f"the dough's weight is not known, since that of {mass.unknown[0]} is not")
    return _times(weight * 2, mass.lo + mass.hi)


def _times(wanted: Fraction, there: Fraction) -> Wanted:
    return Wanted((wanted / there).limit_denominator(FINEST))


def _dough_mass(recipe: Recipe) -> Mass | None:
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
