"""The pieces of food: how many a hand works one by one, and the one that a time by weight (`20 min per 500 g`) goes by.

A joint takes its time whatever lies round it, and two birds side by side take no longer than the heavier one.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from math import ceil

from tamis.model.fineness import cut_in_words, shape_of
from tamis.model.many import makes_many
from tamis.model.mass import NONE, NOTHING, ONE, Mass, mass_of
from tamis.model.paces import EACH, counted
from tamis.model.words import model_words
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Division, Ingredient, Reference, Target, Time, VerbUse
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch, Food
    from tamis.model.line import Line
    from tamis.reading.clauses import Cue, Pause
    from tamis.reading.reading import Event


_HANDFUL = 40
"""Grams of small things that are worked as one; common practice."""
_FASTEST = 4
"""Small things that are counted, cloves of garlic to be peeled, take no less than the fourth part of a usual piece's
time each; common practice."""


def heaviest_piece(act: Line, time: Time | Cue | Pause | None, batch: Batch | None) -> Mass | None:
    """The weight of the heaviest piece; None where no time goes by it. An unknown weight is reported."""
    if not isinstance(time, Time) or time.per is None or batch is None:
        return None
    if batch.pieces and batch.mass.known and batch.pieces[0].lo:
        number = batch.pieces[0]
        return Mass(batch.mass.lo / number.hi, batch.mass.hi / number.lo)
    uses = act.walker.flow.uses
    foods = [(food, uses[food.use].ingredient) for food in batch.foods]
    # What is raw and a hazard is what such times are given for; other food in the tin cooks beside it.
    flesh = [(food, item) for food, item in foods if item.goods and item.goods.hazard]
    pieces = [_piece(food, item) for food, item in flesh or foods]
    known = [piece for piece in pieces if piece.known and piece.hi]
    if len(known) < len(pieces) or not known:
        _unknown(act, time, [item.name for _, item in flesh or foods])
        return None
    return max(known, key=lambda piece: (piece.hi, piece.lo))


def _piece(food: Food, item: Ingredient) -> Mass:
    """One of so many: a bird of two, a leg of six; a weight is one piece."""
    measure = item.measures[0] if item.measures else None
    if measure is None or not food.mass.known or (item.each is None and measure.unit not in ("", item.piece_word)):
        return food.mass
    number = measure.amount
    return Mass(food.mass.lo / number.hi, food.mass.hi / number.lo) if number.lo else food.mass


def _unknown(act: Line, time: Time, names: list[str]) -> None:
    what = " and ".join(dict.fromkeys(names)) or "the batch"
    message = f"a time by weight, but the weight of {what} is not known: the timeline counts this time only once"
    one, each = (example(act.walker.flow.kitchen.language, key) for key in ("weighed", "weighed_each"))
    hint = f"give the weight of the piece that cooks: {one}, {each}"
    act.walker.find("time-by-weight", "warning", time.clause.span, message, hint)


def one_by_one(verb: Verb, item: Ingredient, mass: Mass, kitchen: Kitchen) -> Fraction:
    """Seconds that a verb takes for the pieces of a food: those counted, else those that its weight comes to. Small
    ones are worked several at a time, large ones take longer; of what is only weighed, the first takes its time, the
    rest goes by weight."""
    takes = _one_by_one(verb, item, mass, kitchen) if verb.per_piece and item.measures else NONE
    return max(takes, verb.least_per_kg * mass.lo / 1000) if verb.least_per_kg else takes


def _one_by_one(verb: Verb, item: Ingredient, mass: Mass, kitchen: Kitchen) -> Fraction:
    most = verb.most_per_kg * mass.hi / 1000 if verb.most_per_kg and mass.known else None
    unit = item.measures[0].unit
    if kitchen.units.get(unit) is None and not (mass.known and unit in model_words(kitchen.language).gathered):
        each = verb.per_piece * item.measures[0].amount.hi
        least = Fraction(verb.per_piece) if verb.per_kg else max(Fraction(verb.per_piece), each / _FASTEST)
        return each if not most else min(each, max(least, most))
    if verb.moves or (item.goods is not None and item.goods.liquid):
        return NONE  # what is weighed is laid or dropped by the handful
    if verb.per_kg:
        return Fraction(verb.per_piece if mass.known else 0)
    piece = kitchen.larder.piece(item.goods, "", item.states) if item.goods else None
    if piece is None or most is None:
        return most / 2 if most and verb.prepares and not verb.divides else Fraction(0)  # neither large nor small
    return min(verb.per_piece * mass.hi / piece.usual, most)


def worked_one_by_one(act: Line, batch: Batch | None, worked: Mapping[int, Mass]) -> dict[int, int]:
    """Seconds that the verbs of a line take for the food named after each, by the verb's place; where none is named,
    for the pieces of the only food in hand: *peel and slice*. `worked` is what they work on where that is not all."""
    found: dict[int, Fraction] = {}
    masses: dict[int, list[Mass]] = {}
    whole = batch.mass if batch is not None else NOTHING
    labour, kitchen, use = act.labour, act.walker.flow.kitchen, None
    finer = cut_in_words(act, kitchen)
    events = labour.events if "per_piece" in labour.does or labour.divisions else ()
    for at, event in enumerate(events):
        if isinstance(event, VerbUse):
            use = event
            verb = _shaped(use.verb, events[at + 1 : at + 3], kitchen) if labour.divisions else use.verb
            names = isinstance(next(iter(events[at + 1 : at + 2]), None), Ingredient)
            verb = finer.pop(use.span.start, verb) if names else verb
        elif use is not None and isinstance(event, Division) and event.number and _builds(use.verb):
            found[use.span.start] = EACH * event.number.hi
        elif use is None or not use.verb.per_piece:
            continue
        elif isinstance(event, Ingredient):
            mass = mass_of(event, kitchen)
            by_weight = NONE if _cuts_else(act, use, event) else verb.per_kg * mass.lo / 1000
            takes = one_by_one(verb, event, mass, kitchen) + by_weight
            masses.setdefault(use.span.start, []).append(mass)
            found[use.span.start] = found.get(use.span.start, Fraction(0)) + takes
            if _makes_one(verb, masses[use.span.start]):
                found[use.span.start] = Fraction(verb.per_piece)
        elif _cuts_up(event) and batch is not None and not batch.pieces and use.span.start not in found:
            each = isinstance(event, Division) and event.of_each and not verb.per_kg
            number = max(1, counted(act, batch)) if each else 1
            found[use.span.start] = (
                Fraction(verb.per_piece * number) + verb.per_kg * worked.get(use.span.start, whole).lo / 1000
            )
    for place, made in finer.items():
        weighs = worked.get(place, whole).lo
        found[place] = max(found.get(place, NONE), made.per_piece + made.per_kg * weighs / 1000)
    if "divides" in labour.does and not labour.divisions:
        found |= _cut_out(act, batch, found)
    found |= _in_hand(act, batch, worked, found) if "per_piece" in labour.does else {}
    return {at: ceil(seconds) for at, seconds in found.items()}


def _in_hand(
    act: Line, batch: Batch | None, worked: Mapping[int, Mass], found: Mapping[int, Fraction]
) -> dict[int, Fraction]:
    """The other verbs, for what the line has counted before them, or for the only food in hand."""
    single = [one for one in act.labour.verbs if one.verb.per_piece and not one.verb.occasional]
    rest = [one for one in single if one.span.start not in found and worked.get(one.span.start) is not NOTHING]
    alone = only_food(act, batch) if rest else None
    takes: dict[int, Fraction] = {}
    for use in rest:
        food = _just_counted(act, use) or alone
        if food is not None:
            by_weight = 0 if use.verb.divides else use.verb.per_kg * food[1].lo / 1000
            takes[use.span.start] = one_by_one(use.verb, *food, act.walker.flow.kitchen) + by_weight
    return takes


def _cuts_else(act: Line, use: VerbUse, food: Ingredient) -> bool:
    """Whether something else is cut on a food or off it: *cut a cross in the base of [5 tomatoes]*, *the crust off*."""
    flow = act.walker.flow
    if not use.verb.divides:
        return False
    between = flow.reading.document.source.text[use.span.end : food.clause.span.start].lower().split()
    return not nouns(flow.kitchen.language).articles.isdisjoint(between)


def _just_counted(act: Line, use: VerbUse) -> tuple[Ingredient, Mass] | None:
    """The food that a line has counted right before it works on *them*: *cut [24 almonds] into slivers and stick them
    into [the apples]*."""
    flow = act.walker.flow
    behind = flow.reading.document.source.text[use.span.end : act.read.span.end].split()[:1]
    before = [food for food in act.labour.foods if food.clause.span.end <= use.span.start]
    if not before or model_words(flow.kitchen.language).them.isdisjoint(behind):
        return None
    measure = before[-1].measures[0] if before[-1].measures else None
    counted = measure is not None and flow.kitchen.units.get(measure.unit) is None and measure.amount.hi > 1
    return (before[-1], mass_of(before[-1], flow.kitchen)) if counted else None


def _cut_out(act: Line, batch: Batch | None, found: Mapping[int, Fraction]) -> dict[int, Fraction]:
    """The verbs that make many of what is in hand, though no bracket says so: as many as the recipe makes, else as the
    weight gives: *stamp out rounds*."""
    cuts: dict[int, Fraction] = {}
    for use in act.labour.verbs:
        if use.verb.divides and use.span.start not in found and makes_many(act, use):
            by_weight = batch.mass.hi / _HANDFUL if batch is not None and batch.mass.known else ONE
            cuts[use.span.start] = use.verb.per_piece * (Fraction(counted(act, batch)) or by_weight)
    return cuts


def before_it_is_cut(act: Line) -> frozenset[int]:
    """The places of the verbs that work on the whole before their line cuts it: *roll out and cut [into 60 rolls]*."""
    if act.pieces_before or "divides" not in act.labour.does:
        return frozenset()
    whole: list[int] = []
    for event in act.read.events:
        if isinstance(event, VerbUse) and event.verb.divides:
            return frozenset(whole)
        if isinstance(event, VerbUse):
            whole.append(event.span.start)
        elif isinstance(event, Division):
            break
    return frozenset()


def _builds(verb: Verb) -> bool:
    """Whether pieces that a verb makes are put together one by one: *put them together [into 36 roses]*."""
    return not verb.divides and not verb.per_piece and not verb.waits


def _makes_one(verb: Verb, masses: Sequence[Mass]) -> bool:
    """Whether a verb makes one piece of several foods: a handful of spices is tied once."""
    if not verb.prepares or verb.divides or verb.most_per_kg:
        return False
    told = len(masses) > 1 or all([mass.known for mass in masses])
    return told and sum([mass.hi for mass in masses]) <= _HANDFUL


def named_no_food(act: Line) -> list[int]:
    """The places of the verbs before all food of a line that name none themselves: *chop the flesh and stir it into
    [the mince]* chops what was in hand already, *chop and stir in [the nuts]* does not."""
    labour = act.labour
    if len(labour.verbs) < 2 or not (labour.foods or labour.references) or not act.mass_before.lo:
        return []
    uses: list[VerbUse] = []
    for event in labour.events:
        if isinstance(event, VerbUse):
            uses.append(event)
        elif isinstance(event, Ingredient | Reference):
            source = act.walker.flow.reading.document.source
            behind = ((use, source.text[use.span.end : after.span.start].split()) for use, after in pairwise(uses))
            return [use.span.start for use, words in behind if len(words) > 1]
    return []


def _shaped(verb: Verb, behind: Sequence[Event], kitchen: Kitchen) -> Verb:
    """`Cut [800 g aubergines] [into 2-cm cubes]` is dicing, in which every piece is cut three ways."""
    shapes = [event.noun for event in behind if isinstance(event, Division) and event.number is None]
    if not verb.divides or not shapes:
        return verb
    made = shape_of(shapes[0].split()[-1:], kitchen)
    return made if made is not None and (made.per_kg or made.divides) else verb


def _cuts_up(event: Event) -> bool:
    """Whether the batch becomes pieces of a size, however many: `[into 2-cm cubes]`, into slices `[5 mm thick]`."""
    return isinstance(event, Division) or (isinstance(event, Target) and event.kind == "size")


def only_food(act: Line, batch: Batch | None) -> tuple[Ingredient, Mass] | None:
    """The food of a batch that nothing else lies in, but liquids and what nobody weighs."""
    if batch is None or batch.pieces:
        return None
    uses = act.walker.flow.uses
    found: tuple[Ingredient, Mass] | None = None
    for food in batch.foods:
        item = uses[food.use].ingredient if food.use >= 0 else None
        if item is None or not food.mass.hi or (item.goods and item.goods.liquid):
            continue
        if found is not None:
            return None
        found = item, food.mass
    return found


def batches_of(act: Line, batch: Batch | None, size: Fraction) -> Fraction:
    """How many batches there are of so many pieces: of those that the recipe makes, else of those in hand."""
    makes = act.walker.flow.reading.header.makes
    alone = only_food(act, batch)
    if makes is not None and makes.noun and makes.amount.hi > size:
        pieces = makes.amount.hi
    elif batch is not None and batch.pieces:
        pieces = batch.pieces[0].hi
    elif alone and not alone[0].measures[0].unit:
        pieces = alone[0].measures[0].amount.hi
    else:
        return ONE
    return Fraction(max(1, ceil(pieces / size)))
