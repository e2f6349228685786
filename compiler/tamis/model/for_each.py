"""A measure that each of several pieces gets: `top each with [50 g sauce]`, `[1 olive] on each bun`."""

from __future__ import annotations

from itertools import islice

from tamis.diagnostics import Diagnostic
from tamis.model.mass import mass_of
from tamis.model.words import plain
from tamis.quantity.measure import kind
from tamis.quantity.nouns import nouns
from tamis.quantity.number_words import number_words
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Batch, Food
    from tamis.model.flow import Flow
    from tamis.model.line import Line
    from tamis.model.recipe import Use
    from tamis.reading.clauses import Ingredient, Tool

Words = tuple[str, ...]

# In a batch of more foods than these nobody counts pieces.
_MOST = 12


def how_many(act: Line, food: Ingredient) -> Fraction | None:
    """Of how many pieces each gets so much; None where it is asked, and the measure counts once.

    Whole pieces of food that are cut up (*the middle of each nest with [2 celery hearts, cut small]*) may be meant for
    all together, and so may anything where nobody knows how many there are.
    """
    kitchen = act.walker.flow.kitchen
    language = kitchen.language
    number = _pieces(act, food, plain(food.for_each or "", language))
    cut = not food.measures[0].unit and bool(food.preparation)
    if number is not None and not cut:
        return number
    said = food.measure_text or food.clause.text
    message = f"“{said}”: for each, or for all together? It is counted once"
    altogether = example(language, "altogether", food=food.name)
    hint = f"write what goes in altogether, and in plain words how it is shared out: {altogether}"
    act.walker.tell(Diagnostic("measure-for-each", "warning", food.clause.span, message, hint))
    return None


def _pieces(act: Line, food: Ingredient, noun: Words) -> Fraction | None:
    """How many there are of what is in hand, or of the vessels of this name; None if nobody can know."""
    walker = act.walker
    rules = nouns(walker.flow.kitchen.language)
    batch = walker.present
    if batch is not None and batch.pieces is not None:
        pieces, called = batch.pieces
        if pieces.single and (not noun or rules.singular(called.split(" ")[-1].lower()) == rules.singular(noun[-1])):
            return pieces.lo
    tool = walker.tool_called(noun[-1]) if noun else None
    if tool is not None and (number := max(tool.number, _made_ready(walker.flow, tool))) > 1:
        return number
    if batch is None:
        several = [tool.number for tool in walker.tools if tool.number > 1] if not noun else []
        return several[0] if len(several) == 1 else None
    if not noun:
        return _one_kind(act, batch, food)
    return _called(act, batch, rules.singular(noun[-1]))


def _made_ready(flow: Flow, tool: Tool) -> Fraction:
    """How many of them were made ready: *the jars* are the 7 pint jars that were washed."""
    at = flow.ready(tool.equipment.name) if tool.definite else None
    ready = flow.actions[at].tools if at is not None else ()
    return max([one.number for one in ready if one.equipment.name == tool.equipment.name], default=tool.number)


def _one_kind(act: Line, batch: Batch, food: Ingredient) -> Fraction | None:
    """Where but one food of what is in hand can be meant: 4 slices of bread, 6 apples stuck with 24 almonds. A piece
    that is lighter than what each gets is not, nor what is little beside the rest: the 2 eggs in a dough."""
    found = [use for use in _counted(act, batch) if _number(use) > 1]
    gets = mass_of(food, act.walker.flow.kitchen)
    if len(found) > 1 and gets.known:
        found = [use for use in found if not use.mass.known or use.mass.hi >= gets.lo * _number(use)]
    numbers = {_number(use) for use in found}
    if len(numbers) != 1:
        return None
    pieces = sum(use.mass.hi for use in found)
    rest = batch.mass.hi - sum(one.mass.hi for one in batch.foods if _is_loose(act, one)) - pieces
    return numbers.pop() if not pieces or rest <= pieces else None


def _is_loose(act: Line, food: Food) -> bool:
    goods = act.walker.flow.kitchen.larder.get(food.goods) if food.goods else None
    return goods is not None and goods.liquid


def _called(act: Line, batch: Batch, noun: str) -> Fraction | None:
    """The pieces of this name that were counted in: on each slice, in each half."""
    kitchen = act.walker.flow.kitchen
    rules, counted = nouns(kitchen.language), _counted(act, batch)
    found = [use for use in counted if noun in (_unit(use), rules.singular(_name(use, kitchen)[-1]))]
    if found:
        return _number(found[0]) if len(found) == 1 and _number(found[0]) > 1 else None
    part = number_words(kitchen.language).parse(noun)
    wholes = counted if part and part < 1 else []
    return _number(wholes[0]) / part if part and len(wholes) == 1 else None


def _counted(act: Line, batch: Batch) -> list[Use]:
    """What was counted into a batch, and not for each of something there."""
    flow = act.walker.flow
    uses = [flow.uses[food.use] for food in islice(batch.foods, _MOST) if food.use >= 0]
    return [use for use in uses if use.ingredient.for_each is None and _is_counted(use, flow.kitchen)]


def _is_counted(use: Use, kitchen: Kitchen) -> bool:
    measures = use.ingredient.measures
    return bool(measures) and kind(measures[0], kitchen.units) == "count" and measures[0].amount.single


def _number(use: Use) -> Fraction:
    return use.ingredient.measures[0].amount.lo * use.times


def _unit(use: Use) -> str:
    return use.ingredient.measures[0].unit


def _name(use: Use, kitchen: Kitchen) -> Words:
    return plain(use.ingredient.name, kitchen.language)
