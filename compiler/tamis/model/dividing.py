"""The pieces that a batch is divided into, and what each weighs."""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import HOLDS
from tamis.model.mass import NONE, Mass
from tamis.quantity.amount import Amount
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.batch import Batch, Food
    from tamis.model.line import Line
    from tamis.reading.clauses import Division


def divide(act: Line, division: Division) -> None:
    """The batch in hand lies in so many pieces from here on."""
    batch = act.walker.present
    act.walker.emit(division)
    if batch is None:
        return
    if division.of_each:
        act.walker.split(batch, _of_each(act, division, batch))
    elif division.number is not None:
        act.walker.split(batch, (division.number, division.noun))
        mass = _dividend(act, batch) if division.number.lo else None
        if mass is not None:
            act.piece_mass = Mass(mass.lo / division.number.hi, mass.hi / division.number.lo)
    elif batch.pieces:
        act.walker.split(batch, None)  # two sheets cut into squares: nobody knows how many


def _dividend(act: Line, batch: Batch) -> Mass | None:
    """What is cut: the foods behind the verb, where it names some, else all in hand; None where nobody weighed it."""
    uses = act.walker.flow.uses
    named = [index for index in act.uses[act.worked :] if uses[index].in_batch]
    own = bool(named) and act.verb is not None and act.verb.divides and not act.takings
    foods = [food for food in batch.foods if not own or food.use in named]
    if not own:
        return batch.mass if batch.mass.known and _is_weighed(act, foods, batch.mass.hi) else None
    masses = [uses[index].mass for index in named]
    mass = Mass(sum((mass.lo for mass in masses), NONE), sum((mass.hi for mass in masses), NONE))
    return mass if all(mass.known for mass in masses) and _is_weighed(act, foods, mass.hi) else None


def _of_each(act: Line, division: Division, batch: Batch) -> tuple[Amount, str] | None:
    """The pieces where each piece of a batch is divided again: 17 portions of each of six trays. Of how many is not
    known: then nobody can say how many there are, or how heavy."""
    if division.number is None:
        return None
    if batch.pieces:
        whole = batch.pieces[0]
    else:
        held = [tool for tool in act.walker.tools if tool.number > 1 and tool.equipment.kind in HOLDS]
        counted = _counted(act)
        if counted is not None:
            whole = counted
        elif held:
            whole = Amount(held[-1].number, held[-1].number)
        else:
            return None
    return Amount(division.number.lo * whole.lo, division.number.hi * whole.hi), division.noun


def _counted(act: Line) -> Amount | None:
    """How many pieces there are of the one food behind the verb: *cut [2 tenderloins] [into 4 slices each]*."""
    named = [act.walker.flow.uses[index].ingredient for index in act.uses[act.worked :]]
    if len(named) != 1 or len(named[0].measures) != 1 or named[0].measures[0].unit not in ("", named[0].piece_word):
        return None
    return named[0].measures[0].amount


def _is_weighed(act: Line, foods: Sequence[Food], total: Fraction) -> bool:
    """Whether the cook's own weights make up all but a tenth: a guess at a cabbage says nothing of its wedges."""
    units = act.walker.flow.kitchen.units
    guessed = NONE
    for food in foods:
        item = act.walker.flow.uses[food.use].ingredient
        told = item.each or item.also or item.prepared or any(units.get(measure.unit) for measure in item.measures)
        guessed += NONE if told else food.mass.hi
    return guessed * 10 <= total
