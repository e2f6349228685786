"""A measure that each of several pieces gets: `top each with [50 g sauce]`, `[1 olive] on each bun`."""

from __future__ import annotations

from itertools import islice

from tamis.diagnostics import Diagnostic
from tamis.model.words import plain
from tamis.quantity.measure import kind
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.model.line import Line
    from tamis.reading.clauses import Ingredient

# In a batch of more foods than these nobody counts pieces.
_MOST = 12


def how_many(act: Line, food: Ingredient) -> Fraction | None:
    """Of how many pieces each gets so much; None where it is asked, and the measure counts once.

    Whole pieces of food that are cut up (*the middle of each nest with [2 celery hearts, cut small]*) may be meant for
    all together, and so may anything where nobody knows how many there are.
    """
    kitchen = act.walker.flow.kitchen
    language = kitchen.language
    number = _pieces(act, plain(food.for_each or "", language))
    cut = not food.measures[0].unit and bool(food.preparation)
    if number is not None and not cut:
        return number
    said = food.measure_text or food.clause.text
    message = f"“{said}”: for each, or for all together? It is counted once"
    altogether = example(language, "altogether", food=food.name)
    hint = f"write what goes in altogether, and in plain words how it is shared out: {altogether}"
    act.walker.tell(Diagnostic("measure-for-each", "warning", food.clause.span, message, hint))
    return None


def _pieces(act: Line, noun: tuple[str, ...]) -> Fraction | None:
    """How many there are of what is in hand, or of the vessels of this name; None if nobody can know."""
    walker = act.walker
    rules = nouns(walker.flow.kitchen.language)
    batch = walker.present
    if batch is not None and batch.pieces is not None:
        number, called = batch.pieces
        if number.single and (not noun or rules.singular(called.split(" ")[-1].lower()) == rules.singular(noun[-1])):
            return number.lo
    tool = walker.tool_called(noun[-1]) if noun else None
    if tool is not None and tool.number > 1:
        return tool.number
    return _counted(act, rules.singular(noun[-1]) if noun else "") if batch is not None else None


def _counted(act: Line, noun: str) -> Fraction | None:
    """How many pieces of food were counted into what is in hand, where that is one food: 4 slices of bread, 6 buns."""
    walker = act.walker
    kitchen, uses = walker.flow.kitchen, walker.flow.uses
    rules = nouns(kitchen.language)
    found = []
    for food in islice(walker.present.foods if walker.present else (), _MOST):
        use = uses[food.use] if food.use >= 0 else None
        measure = use.ingredient.measures[0] if use and use.ingredient.measures else None
        if use is None or measure is None or kind(measure, kitchen.units) != "count" or not measure.amount.single:
            continue
        if not noun or noun in (measure.unit, rules.singular(plain(use.ingredient.name, kitchen.language)[-1])):
            found.append(measure.amount.lo * use.times)
    return found[0] if len(found) == 1 and found[0] > 1 else None
