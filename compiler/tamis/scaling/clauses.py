"""Every clause of a recipe multiplied, or left as it is.

Food grows, and so does what is measured of it later on: a share (`2 tbsp of the duck fat`), what is kept back, what it
is boiled down to, and the number of pieces where it comes out whole. Times, temperatures, cues, sizes and tools stay.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.model.names import several
from tamis.model.recipe import Recipe
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Cue, Division, Ingredient, Naming, Read, Reference, Target
from tamis.scaling.edits import Edit
from tamis.scaling.foods import SCALED, food_edits
from tamis.scaling.quantities import Scaling, counted, weighed
from tamis.scaling.words import clause_words
from tamis.source import Span
from tamis.syntax.items import Bracket, Item, Quantity


def read_edits(read: Read, scaling: Scaling) -> list[Edit]:
    """The changes in a clause, counted from the start of its text."""
    if isinstance(read, Ingredient):
        return food_edits(read, scaling)
    if isinstance(read, Division):
        return _division(read, scaling)
    measured = (
        (isinstance(read, Reference) and read.share is not None and read.share.measure is not None)
        or (isinstance(read, Naming) and read.measure is not None)
        or (isinstance(read, Target) and read.kind == "measure")
        or (isinstance(read, Cue) and clause_words(scaling.kitchen.language).left.search(read.text) is not None)
    )
    return _first_quantity(read, scaling) if measured else []


def _first_quantity(read: Read, scaling: Scaling) -> list[Edit]:
    for item in read.clause.items.items:
        if isinstance(item, Quantity) and not (isinstance(read, Cue) and item.kind not in SCALED):
            return _quantity(item, read.clause.text, scaling)
    return []


def _quantity(item: Quantity, text: str, scaling: Scaling) -> list[Edit]:
    if item.kind in SCALED:
        return [weighed(item, text, scaling)]
    if item.kind == "pieces" and scaling.pieces:
        return [counted(item.span, item.amount.times(scaling.factor), scaling.kitchen.language)]
    return []


def _division(read: Division, scaling: Scaling) -> list[Edit]:
    """More pieces of the same weight, or as many that are heavier."""
    if read.number is None:
        return []
    items = read.clause.items.items
    if scaling.pieces:
        return _first_quantity(read, scaling)
    each = _weight(items) if read.each is not None else None
    return [weighed(each, read.clause.text, scaling)] if each else []


def _weight(items: tuple[Item, ...]) -> Quantity | None:
    """The weight of a piece, in round brackets or before its name."""
    for item in items:
        if isinstance(item, Quantity) and item.kind in SCALED:
            return item
        if isinstance(item, Bracket) and (found := _weight(item.items)):
            return found
    return None


def reads_of(recipe: Recipe) -> Iterator[Read]:
    """All clauses of a recipe's steps as understood, in order of the text."""
    for action in recipe.actions:
        yield from action.reads


def divisions_whole(recipe: Recipe, scaling: Scaling) -> bool:
    """Whether every number of pieces comes out whole."""
    numbers = [read.number for read in reads_of(recipe) if isinstance(read, Division) and read.number is not None]
    return all((end * scaling.factor).denominator == 1 for number in numbers for end in number)


def recipe_edits(recipe: Recipe, scaling: Scaling) -> list[Edit]:
    """All changes in the steps of a recipe, counted in its file."""
    stay = _pieces_of_tins(recipe)
    reads = (read for read in reads_of(recipe) if read.clause.span not in stay)
    edits = [edit.shifted(read.clause.inner) for read in reads for edit in read_edits(read, scaling)]
    return [*edits, *_parts_of_several(recipe, scaling)]


def _parts_of_several(recipe: Recipe, scaling: Scaling) -> Iterator[Edit]:
    """*The juice of the lemon*, once there are three of them: *of the lemons*, which is all of them."""
    one = nouns(recipe.language).one
    for use in recipe.uses:
        food = use.ingredient
        if not food.definite or len(food.measures) != 1 or food.measures[0].unit not in ("", food.piece_word):
            continue
        name, number = food.name.lower(), food.measures[0].amount
        if one(name) == name and number.hi <= 1 < number.hi * scaling.factor:
            many = several(food.name, food, recipe.language)
            yield Edit(food.name_span, many, many)


def _pieces_of_tins(recipe: Recipe) -> set[Span]:
    """The clauses that take so many pieces of what was divided between tins: tins stay as many as they are."""
    singular = nouns(recipe.language).singular
    divided = {singular(read.noun.lower()) for read in reads_of(recipe) if isinstance(read, Division)}
    tins = {
        index for index, made in enumerate(recipe.products) if made.pieces and singular(made.piece_noun) not in divided
    }
    by_number = {read.clause.span for read in reads_of(recipe) if _takes_pieces(read)}
    return {taking.span for taking in recipe.takings if taking.product in tins and taking.span in by_number}


def _takes_pieces(read: Read) -> bool:
    measure = read.share.measure if isinstance(read, Reference) and read.share else None
    return measure is not None and not measure.unit
