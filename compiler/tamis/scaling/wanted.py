"""From what a cook wants to a factor: so many portions, so many loaves, so much flour, dough of a certain weight.

Every way is a division of what is wanted by what the recipe has; what differs is where the recipe says it, and what
to tell a cook when it does not.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.nouns import nouns
from tamis.quantity.number import parse, problem
from tamis.scaling.factor import Wanted
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Product, Quantity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe

LEAST, MOST = Fraction(1, 1000), 1000


def factor_for(way: str, text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    """The factor for a wish: `way` is by, serves, makes, flour or dough, `text` what the cook wrote."""
    if way == "by":
        return number_of(text, kitchen.language)
    return _within(_asked(way, text.strip(), recipe, kitchen))


def _asked(way: str, text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    if way in _BY_NUMBER:
        return _BY_NUMBER[way](text, recipe, kitchen)
    from tamis.scaling.by_weight import by_dough, by_flour

    return (by_flour if way == "flour" else by_dough)(text, recipe, kitchen)


def _within(wanted: Wanted) -> Wanted:
    if not wanted.problem and not LEAST <= wanted.factor <= MOST:
        return Wanted(problem=f"that is {float(wanted.factor):.3g} times the recipe: expected 1/1000 to 1000")
    return wanted


def number_of(text: str, language: str) -> Wanted:
    """A factor that is given as such: `1.5`, `×2`, `1/3`."""
    number = parse(text.lstrip("×x* "), language)
    if not number:
        reason = problem(text) or "expected a number such as 1.5, 2 or 1/3"
        return Wanted(problem=f"“{text}” is not a factor: {reason}")
    return _within(Wanted(number))


def _serves(text: str, recipe: Recipe, kitchen: Kitchen) -> Wanted:
    number = _single(text, kitchen.language)
    if number is None:
        return Wanted(problem=f"“{text}” is not a number of people: expected one such as 6")
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
        from tamis.scaling.by_weight import made_weight

        return made_weight(text, made, kitchen)
    unreadable = Wanted(problem=f"“{text}” cannot be read: expected an amount such as “{made.text}”")
    if not isinstance(first, Quantity) or not first.amount.single or not first.amount.lo:
        return unreadable
    if first.kind in ("mass", "volume"):
        from tamis.scaling.by_weight import made_measure

        return made_measure(first, text, made, kitchen)
    noun = text[first.span.end :].partition("(")[0].strip(" ,")
    if first.kind != "pieces" or (made.measure is not None):
        return unreadable
    if noun and _one(noun, recipe.language) != _one(made.noun, recipe.language):
        return Wanted(problem=f"the recipe makes {made.text}, no {noun}")
    return Wanted(first.amount.lo / made.amount.lo)


def _one(noun: str, language: str) -> str:
    return nouns(language).one(noun.lower())


_BY_NUMBER = {"serves": _serves, "makes": _makes}
"""The ways that mostly take a number, no weight."""
