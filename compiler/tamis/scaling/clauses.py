"""Every clause of a recipe multiplied, or left as it is.

Food grows, and so does what is measured of it later on: a share (`2 tbsp of the duck fat`), what is kept back, what it
is boiled down to, and the number of pieces where it comes out whole; so does that of tins and plates of no said size.
Into how many *each* piece is cut stays, as do times, temperatures, cues and sizes. The number of batches is said anew
to the reader only.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._again import cut_again
from tamis.checks.scaling._kept import kept, taken_by_number
from tamis.checks.scaling._medium import staying
from tamis.checks.scaling._pans import by_the_piece
from tamis.kitchen.house import Kitchen
from tamis.model.names import several
from tamis.model.recipe import Recipe
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Cue, Division, Ingredient, Naming, Read, Reference, Repeat, Target, Tool
from tamis.scaling.edits import Edit
from tamis.scaling.foods import food_edits
from tamis.scaling.quantities import SCALED, Scaling, counted, multiplied, twin_edits, weighed
from tamis.scaling.words import clause_words
from tamis.source import Span
from tamis.syntax.items import Bracket, Item, Product, Quantity


def read_edits(read: Read, scaling: Scaling) -> list[Edit]:
    """The changes in a clause, counted from the start of its text."""
    if isinstance(read, Ingredient):
        return food_edits(read, scaling)
    if isinstance(read, Division):
        return _division(read, scaling)
    if isinstance(read, Tool):
        return _numbered(read, scaling) if scaling.tools and grows(read, scaling.kitchen) else []
    if isinstance(read, Repeat):
        return _batches(read, scaling)
    measured = (
        (isinstance(read, Reference) and read.share is not None and read.share.measure is not None)
        or (isinstance(read, Naming) and read.measure is not None)
        or (isinstance(read, Target) and read.kind == "measure")
        or (isinstance(read, Cue) and clause_words(scaling.kitchen.language).left.search(read.text))
    )
    return _first_quantity(read, scaling) if measured else []


def _first_quantity(read: Read, scaling: Scaling) -> list[Edit]:
    items = read.clause.items.items
    for at, item in enumerate(items):
        if isinstance(item, Quantity) and not (isinstance(read, Cue) and item.kind not in SCALED):
            twins = twin_edits(items[at + 1 :], read.clause.text, scaling) if item.kind in SCALED else []
            return [*_quantity(item, read.clause.text, scaling), *twins]
    return []


def grows(tool: Tool, kitchen: Kitchen) -> bool:
    """Whether more food takes more of these: several tins, trays or plates of no said size, or what is used by the
    piece, as jars of any size are; no pans, which stand on rings."""
    equipment = tool.equipment
    holds = equipment.kind == "vessel" and equipment.station in ("oven", "")
    return tool.number > 1 and (by_the_piece(tool, kitchen) or (not tool.size and (holds or equipment.grows)))


def _counted_item(read: Tool | Repeat) -> Quantity | None:
    quantities = (item for item in read.clause.items.items if isinstance(item, Quantity))
    return next((item for item in quantities if item.amount.lo == item.amount.hi == read.number), None)


def _numbered(tool: Tool, scaling: Scaling) -> list[Edit]:
    products = (item for item in tool.clause.items.items if isinstance(item, Product))
    product = next((item for item in products if item.factors[0].lo == tool.number), None)
    if product:  # 5 × 340 g jars
        return [multiplied(product, tool.clause.text, scaling)]
    item = _counted_item(tool)
    return [counted(item.span, item.amount.times(scaling.factor), scaling.kitchen.language)] if item else []


def _batches(read: Repeat, scaling: Scaling) -> list[Edit]:
    """As many batches more as there is more food; the plan of the file goes on counting those that are written."""
    item = _counted_item(read) if read.kind in ("batches", "loads") else None
    if item is None:
        return []
    wanted = int(-(-read.number * scaling.factor // 1))
    written = read.clause.text[item.span.start : item.span.end]
    return [Edit(item.span, written, str(wanted))] if wanted > read.number else []


def _quantity(item: Quantity, text: str, scaling: Scaling) -> list[Edit]:
    if item.kind in SCALED:
        return [weighed(item, text, scaling)]
    if item.kind == "pieces" and scaling.pieces:
        return [counted(item.span, item.amount.times(scaling.factor), scaling.kitchen.language)]
    return []


def _division(read: Division, scaling: Scaling) -> list[Edit]:
    """More pieces of the same weight, or as many that are heavier; what each of them is cut into stays."""
    if read.number is None or read.of_each:
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
    divisions = (read for read in reads_of(recipe) if isinstance(read, Division) and not read.of_each)
    stay = {span for span, of_each in cut_again(recipe) if of_each} | {one.read.clause.span for one in kept(recipe)}
    numbers = [read.number for read in divisions if read.number is not None and read.clause.span not in stay]
    return all((end * scaling.factor).denominator == 1 for number in numbers for end in number)


def tools_whole(recipe: Recipe, factor: Fraction, kitchen: Kitchen) -> bool:
    """Whether there may be more of all tins and the like: their numbers come out whole, and nothing takes what is in
    them by its number, as one layer of two."""
    tools = (read for read in reads_of(recipe) if isinstance(read, Tool) and grows(read, kitchen))
    whole = all((tool.number * factor).denominator == 1 for tool in tools)
    return factor > 1 and whole and not taken_by_number(recipe)


def recipe_edits(recipe: Recipe, scaling: Scaling) -> list[Edit]:
    """All changes in the steps of a recipe, counted in its file."""
    media = staying(recipe, scaling.kitchen)
    scaling = scaling._replace(stay=frozenset(medium.food.clause.span for medium in media))
    stay = taken_by_number(recipe) | {span for span, of_each in cut_again(recipe) if of_each}
    if scaling.pieces:  # more pieces, and each gets as much as before
        stay |= {use.ingredient.clause.span for use in recipe.uses if use.ingredient.for_each is not None}
    stay |= _filled_again(recipe)
    larger = {one.read.clause.span for one in kept(recipe)}
    edits = []
    for read in reads_of(recipe):
        if read.clause.span not in stay:
            own = scaling._replace(pieces=scaling.pieces and read.clause.span not in larger)
            edits += [edit.shifted(read.clause.inner) for edit in read_edits(read, own)]
    each = dict.fromkeys(edits)  # what two foods of a bracket both ask for: 1 onion stuck with 3 cloves
    return [*each, *_parts_of_several(recipe, scaling)]


def _filled_again(recipe: Recipe) -> set[Span]:
    """The trays and tins that go into the oven load after load: more food takes more loads of as many."""
    again = {
        action.component
        for action in recipe.actions
        for read in action.reads
        if isinstance(read, Repeat) and read.kind in ("batches", "loads")
        if recipe.places.lines[action.number].station == "oven"
    }
    lines = (action for action in recipe.actions if action.component in again)
    tools = (read for action in lines for read in action.reads if isinstance(read, Tool))
    return {tool.clause.span for tool in tools if tool.equipment.station == "oven"}


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
