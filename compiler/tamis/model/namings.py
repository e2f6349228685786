"""Names given to batches, and what they leave behind."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic
from tamis.model.batch import Batch, answering
from tamis.model.effects import Why
from tamis.model.mass import NOTHING, Mass
from tamis.model.recipe import Product
from tamis.model.words import model_words, plain
from tamis.quantity.measure import grams
from tamis.reading.clauses import Ingredient, Naming, Reference
from tamis.typed import TYPE_CHECKING

SAME_BATCH, LEFT = Why("same-batch"), Why("takes-over")

if TYPE_CHECKING:
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
    walker = act.walker
    parting = act.parting if act.parting is not None and act.parting.out else None
    if parting and naming.measure is None:
        parting.rest.origin = "by-product"
        _put_by(act, naming, parting.rest)
    elif not _leave_part(act, naming):
        _put_by(act, naming, _left(act, naming, parting.rest if parting else walker.present))


def _leave_part(act: Line, naming: Naming) -> bool:
    """*Take out [the yolks], [keeping the whites]*: so all that is left of a parted food is called, or what is parted
    off here."""
    walker, language = act.walker, act.walker.flow.kitchen.language
    words = plain(naming.name, language)
    if naming.measure is not None or not words or words[-1] not in model_words(language).part_words:
        return False
    from tamis.model.kept_parts import all_left, part_kept

    rest, present = all_left(walker, words), walker.present
    if rest is not None:
        walker.turn(rest, LEFT)
        rest.origin = "by-product"
        _put_by(act, naming, rest)
        walker.turn(present, LEFT)
        return True
    part = part_kept(walker, words)
    if part is not None:
        _put_by(act, naming, part)
    return part is not None


def _left(act: Line, naming: Naming, source: Batch | None) -> Batch:
    """What is left of a batch beside it: a food that is in it, or what only its name tells of."""
    walker, kitchen = act.walker, act.walker.flow.kitchen
    words = plain(naming.name, kitchen.language)
    foods: list[Food] = []
    if source and source.keys.has(answering(words, kitchen)):
        foods = [food for food in source.foods if _same_food(words, food)]
    weight = grams(naming.measure, kitchen.units) if naming.measure else None
    mass = Mass(weight.lo, weight.hi) if weight else Mass(unknown=(naming.name,))
    batch = walker.part("by-product", "by-product", foods, mass, source, less=weight is not None)
    batch.measure = naming.measure
    if source and foods and naming.measure is None:
        walker.lose(source, words)
    return batch


def _put_by(act: Line, naming: Naming, batch: Batch) -> None:
    """It is called so from here on, and put by."""
    walker, span = act.walker, naming.clause.span
    batch.last, batch.span = act.number, span
    batch.early = act.before_time and bool(act.labour.times)
    walker.name(batch, plain(naming.name, walker.flow.kitchen.language))
    product = Product(naming.name, (naming.name,), "by-product", walker.component, act.number, span, batch.early)
    walker.close(batch, product, opened=False)


def _same_food(words: tuple[str, ...], food: Food) -> bool:
    return words == food.words or (len(words) == 1 and food.words[-1:] == words)
