"""Names given to batches, what they leave behind, and the pieces they are divided into."""

from __future__ import annotations

from fractions import Fraction

from tamis.diagnostics import Diagnostic
from tamis.kitchen.equipment import HOLDS
from tamis.model.batch import Batch, answering
from tamis.model.effects import Why
from tamis.model.mass import NOTHING, Mass
from tamis.model.recipe import Product
from tamis.model.words import plain
from tamis.quantity.amount import Amount
from tamis.quantity.measure import grams
from tamis.reading.clauses import Division, Ingredient, Naming, Reference
from tamis.typed import TYPE_CHECKING

ZERO = Fraction(0)
SAME_BATCH = Why("same-batch")

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.batch import Food
    from tamis.model.line import Line


def name_batch(act: Line, naming: Naming) -> None:
    walker = act.walker
    span = naming.clause.span
    if naming.kind == "leaving":
        _leave(act, naming)
        return
    if walker.present is None:
        _name_nothing(act, naming)
        return
    if naming.kind == "as" and _names_coating(act):
        _keep_coating(act, naming, walker.present)
        return
    batch = walker.present
    act.link(batch, SAME_BATCH)
    batch.last = act.number
    if naming.kind == "as":
        walker.name(batch, plain(naming.name, act.walker.flow.kitchen.language))
        walker.put_aside(batch, "named", naming.name, span)
    else:
        walker.put_aside(batch, "set-aside", "", span)
    act.product, act.named = batch.product, batch


def _name_nothing(act: Line, naming: Naming) -> None:
    """There is nothing to name: told, unless it follows from what the line could not take up."""
    walker = act.walker
    message = "there is no batch here that could be named or set aside"
    if not _takes_up_nothing_known(act):
        act.say("product-unknown", naming.clause, message, "")
        return
    walker.note(Diagnostic("product-unknown", "error", naming.clause.span, message))
    if naming.kind == "as":
        walker.flow.lost.add(plain(naming.name, walker.flow.kitchen.language))


def _takes_up_nothing_known(act: Line) -> bool:
    """Whether a name of the line was not known, or a clause could not be read."""
    for entry in reversed(act.walker.flow.log):
        if entry.action != act.number:
            break
        if isinstance(entry.effect, Diagnostic) and entry.effect.rule == "product-unknown":
            return True
    return bool(act.labour.unread(act.walker.flow.kitchen))


def _names_coating(act: Line) -> bool:
    """Whether a line names what it puts on to the food in hand: *brush with [1 egg] [as egg wash]*."""
    events = act.read.events
    first = next((at for at, event in enumerate(events) if isinstance(event, Ingredient)), 0)
    batch = act.walker.present
    if act.verb is None or not act.verb.coats or batch is None or not first:
        return False
    if any(isinstance(event, Reference) for event in events[first:]):
        return False
    return any(food.use not in act.uses for food in batch.foods)


def _keep_coating(act: Line, naming: Naming, coated: Batch) -> None:
    """The foods of the line are left behind under their name; some of them, counted as all, is on what they coat."""
    walker = act.walker
    foods = [food._replace(mass=NOTHING) for food in coated.foods if food.use in act.uses]
    batch = walker.part("coating", "by-product", foods, source=coated)
    walker.name(batch, plain(naming.name, walker.flow.kitchen.language))
    batch.last, batch.span = act.number, naming.clause.span
    product = Product(naming.name, (naming.name,), "by-product", walker.component, act.number, naming.clause.span)
    walker.close(batch, product, opened=False)


def _leave(act: Line, naming: Naming) -> None:
    """A by-product parts from the batch as it stands: before the line's time it exists before the wait."""
    walker, source = act.walker, act.walker.present
    kitchen = walker.flow.kitchen
    parting = act.parting if act.parting is not None and act.parting.out else None
    if parting and naming.measure is None:
        _leave_rest(act, naming, parting.rest)
        return
    source = parting.rest if parting else source
    words = plain(naming.name, kitchen.language)
    foods: list[Food] = []
    if source and source.keys.has(answering(words, kitchen)):
        foods = [food for food in source.foods if _same_food(words, food)]
    weight = grams(naming.measure, kitchen.units) if naming.measure else None
    mass = Mass(weight.lo, weight.hi) if weight else Mass(unknown=(naming.name,))
    batch = walker.part("by-product", "by-product", foods, mass, source, less=weight is not None)
    batch.measure = naming.measure
    batch.last, batch.span = act.number, naming.clause.span
    batch.early = act.before_time and bool(act.labour.times)
    walker.name(batch, words)
    if source and foods and naming.measure is None:
        walker.lose(source, words)
    product = Product(
        naming.name, (naming.name,), "by-product", walker.component, act.number, naming.clause.span, batch.early
    )
    walker.close(batch, product, opened=False)


def _leave_rest(act: Line, naming: Naming, rest: Batch) -> None:
    """*Lift out [the legs], [leaving the sauce]*: so all that stays behind is called."""
    walker, span = act.walker, naming.clause.span
    rest.origin = "by-product"
    rest.last, rest.span = act.number, span
    rest.early = act.before_time and bool(act.labour.times)
    walker.name(rest, plain(naming.name, walker.flow.kitchen.language))
    product = Product(naming.name, (naming.name,), "by-product", walker.component, act.number, span, rest.early)
    walker.close(rest, product, opened=False)


def divide(act: Line, division: Division) -> None:
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
    mass = Mass(sum((mass.lo for mass in masses), ZERO), sum((mass.hi for mass in masses), ZERO))
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
    guessed = ZERO
    for food in foods:
        item = act.walker.flow.uses[food.use].ingredient
        told = item.each or item.also or item.prepared or any(units.get(measure.unit) for measure in item.measures)
        guessed += ZERO if told else food.mass.hi
    return guessed * 10 <= total


def _same_food(words: tuple[str, ...], food: Food) -> bool:
    return words == food.words or (len(words) == 1 and food.words[-1:] == words)
