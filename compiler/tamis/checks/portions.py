"""What goes in, by those whom it serves and by what else goes in, against the figures of `grammar/limits.toml`."""

from __future__ import annotations

from fractions import Fraction

from tamis.checks.limits import SOURCE, limits
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.amount import total
from tamis.quantity.measure import millilitres
from tamis.quantity.numerals import decimal
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.food import Role, Show
    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Taking, Use
    from tamis.reading.clauses import Ingredient

RULE = "amount-unlikely"
LEVEL: Severity = "warning"
_SMALL: tuple[Show, ...] = ("spice", "herb")
_BULKY: tuple[Show, ...] = ("meat", "fish", "grain", "cheese")
_GREEN: Show = "vegetable"
_POURED: tuple[Role, ...] = ("water", "milk")
_LIQUID: Show = "liquid"
_EGG: Role = "egg"
_FAT: Role = "fat"
_SUGAR: Role = "sugar"
_BULK, _GREENS, _DOUGH, _BREAD, _PRESERVED = 3, 2, 6, 5, 5
"""Of what part of a dish are such foods, for it to be one."""
PASTE = Fraction(150)
"""Grams, of less than which it is a paste or a relish."""
_HEAVIEST, _PINCH = Fraction(3, 2), Fraction(5)
"""Grams in a millilitre of a heavy syrup; grams of a spice of which nobody knows the weight."""


def most_of_all(view: View) -> Fraction | None:
    """The most grams that all of it may weigh; None if nobody knows. What is only measured is no heavier than syrup."""
    found = [use.mass.hi if not use.mass.unknown else _most_of(use, view) for use in view.batch]
    return None if None in found else total([mass for mass in found if mass is not None])


def _most_of(use: Use, view: View) -> Fraction | None:
    food = use.ingredient
    if food.goods is not None and (food.goods.show in _SMALL or food.goods.salt):
        return _PINCH
    poured = [millilitres(measure, view.kitchen.units) for measure in food.measures]
    if not poured or None in poured:
        return None
    return total([ml.hi for ml in poured if ml is not None]) * _HEAVIEST * use.times


def least_of_piece(view: View, noun: str, whole: Fraction) -> Fraction:
    """The least that one of what a recipe makes weighs, in grams, by what it is called."""
    made = check_words(view.recipe.language).made.get(noun.lower().split(" ")[-1]) if noun else None
    if not made:
        return limits().dish["crumb"]
    return limits().piece.get(made) or least_a_head(view, whole)  # a portion


def is_poured(use: Use) -> bool:
    """Whether it is water, milk, stock or wine."""
    goods = use.ingredient.goods
    return goods is not None and (goods.role in _POURED or goods.show == _LIQUID)


def thick_of(view: View) -> Fraction:
    """Grams of all that is not poured."""
    return view.weight.lo - total([use.mass.lo for use in view.batch if is_poured(use)])


def left_of(view: View) -> tuple[Fraction, Fraction]:
    """Grams of what went into something of which only a part is taken and the rest is left, a stock of which so much
    goes into the soup: of all, and of what is not poured. Where nobody knows how large a part is, all of it."""
    recipe = view.recipe
    left: dict[int, Fraction] = {}
    of_product: dict[int, list[Taking]] = {}
    for taking in recipe.takings:
        of_product.setdefault(taking.product, []).append(taking)
    for index, taken in sorted(of_product.items()):
        product = recipe.products[index]
        if product.dish or any([taking.rest for taking in taken]):
            continue
        known = [taking.fraction for taking in taken if taking.fraction is not None]
        part = 1 - total(known) if len(known) == len(taken) else Fraction(1)
        if part > 0:
            left.update({use: max(part, left.get(use, part)) for use in product.uses})
    masses = [(recipe.uses[use], recipe.uses[use].mass.lo * part) for use, part in left.items()]
    masses = [(use, mass) for use, mass in masses if use.in_batch]
    return total([mass for _, mass in masses]), total([mass for use, mass in masses if not is_poured(use)])


def least_a_head(view: View, whole: Fraction) -> Fraction:
    """The least that anybody is served, in grams: by what it is made of, and by its course."""
    least = limits().head
    foods = [(use.mass.lo, goods) for use in view.batch if (goods := use.ingredient.goods) is not None]
    found = [least["bite"]]
    if total([mass for mass, goods in foods if goods.show in _BULKY or goods.role == _EGG]) * _BULK >= whole:
        found.append(least["bulk"])
    if total([mass for mass, goods in foods if goods.flour]) * _DOUGH >= whole:
        found.append(least["dough"])
    preserves = total([mass for mass, goods in foods if goods.role == _SUGAR or goods.show == _LIQUID])
    if (
        total([mass for mass, goods in foods if goods.show == _GREEN]) * _GREENS
        >= whole
        > max(PASTE, preserves * _PRESERVED)
    ):
        found.append(least["green"])
    found += [least[meal] for meal in _courses(view)]
    return max(found)


def most_a_head(view: View, whole: Fraction) -> Fraction:
    """The most that anybody is served, in grams, by what it is made of, and by its course."""
    most = limits().head_most
    found = [most[meal] for meal in _courses(view) if meal in most]
    foods = [(use.mass.lo, use.ingredient.goods) for use in view.batch]
    if total([mass for mass, goods in foods if goods and goods.flour]) * _BREAD >= whole:
        found.append(most["dough"])
    return min(found, default=limits().dish["serving"])


def _courses(view: View) -> list[str]:
    """What the header calls it: its course, or without one its tags."""
    meals, header = check_words(view.recipe.language).meals, view.recipe.header
    said = [header.course] if header.course else header.tags
    return [meal for word in said if (meal := meals.get(word.lower()))]


def worst_for_a_person(view: View, people: Fraction) -> tuple[Ingredient, Fraction, Fraction] | None:
    """The food of which each gets most beyond what anybody does, with how much, and the most: a slip in who is served
    puts several out."""
    most, by_handful = limits().person, limits().more_spice
    worst: tuple[Use, Fraction] | None = None
    for use in view.batch:
        goods = use.ingredient.goods
        limit = next((most[key] for key in (goods.id, goods.role, goods.show) if key in most), None) if goods else None
        if (
            limit is None
            or goods is None
            or use.mass.lo <= limit * people
            or goods.salt
            or goods.leavener
            or goods.id in by_handful
        ):
            continue
        if worst is None or use.mass.lo * worst[1] > worst[0].mass.lo * limit:
            worst = use, limit
    return (worst[0].ingredient, worst[0].mass.lo / people, worst[1]) if worst is not None else None


def by_the_spoon(view: View) -> list[Diagnostic]:
    """Food that is measured by so many spoons, pinches or sprigs that a larger measure was meant."""
    most, serves = limits().spoons, view.recipe.header.serves
    if serves and serves.hi > most["serves"]:
        return []
    found = []
    for use in view.recipe.uses:
        food = use.ingredient
        for measure in food.measures if len(food.measures) == 1 else ():
            limit = most.get(measure.unit)
            if limit is None or measure.amount.lo <= limit * (2 if food.goods and food.goods.role == _FAT else 1):
                continue
            message = f"nobody measures “{food.measure_text}” ({SOURCE})"
            found.append(Diagnostic(RULE, LEVEL, food.clause.span, message, "check the number and its unit"))
    return found


def by_the_vessel(view: View) -> list[Diagnostic]:
    """So many tins, trays or jars that next to nothing comes into each."""
    known, found = limits().vessels, []
    for action in view.recipe.actions:
        for tool in action.tools:
            number, least = tool.number, known.get(tool.equipment.id) if tool.equipment else None
            if number is None or least is None or number < known["many"] or view.weight.hi >= least * number:
                continue
            from tamis.quantity.display import grams

            message = f"{grams(view.weight.hi / number)} of food for each of them ({SOURCE})"
            found.append(Diagnostic(RULE, LEVEL, tool.clause.span, message, "check the number"))
    return found


def beside_flour(view: View, whole: Fraction) -> list[Diagnostic]:
    """More eggs, fat or sugar than any dough, batter or cake has, by its flour."""
    known = limits().beside_flour
    foods = [(use, goods) for use in view.batch if (goods := use.ingredient.goods) is not None]
    flour = total([use.mass.hi for use, goods in foods if goods.flour])
    if not flour or any([use.mass.unknown for use, goods in foods if goods.flour]):
        return []
    return [
        Diagnostic(RULE, LEVEL, worst.ingredient.clause.span, message, "check the number and its unit")
        for role in (_EGG, _FAT, _SUGAR)
        for worst, message in _too_much(role, foods, flour, whole, known)
    ]


def _too_much(
    role: Role, foods: list[tuple[Use, Goods]], flour: Fraction, whole: Fraction, known: dict[str, Fraction]
) -> list[tuple[Use, str]]:
    uses = [use for use, goods in foods if goods.role == role]
    mass = total([use.mass.lo for use in uses])
    if mass * 100 <= known[role] * flour or flour * 100 < known["share"] * (whole - mass):
        return []
    worst = max(uses, key=lambda use: use.mass.lo)
    message = f"more {worst.ingredient.name} than {decimal(known[role])} % of the flour ({SOURCE})"
    return [(worst, message)]
