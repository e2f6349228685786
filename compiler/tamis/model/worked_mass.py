"""How much each verb of a line works on: what was in hand when the next one began, and not all that lies there when the
line is done (*cut [the meat] [into 2-cm pieces] and put it back into [the soup]*)."""

from __future__ import annotations

from itertools import pairwise

from tamis.model.fineness import is_cut, solid
from tamis.model.mass import NOTHING, mass_of
from tamis.model.pieces import named_no_food
from tamis.reading.clauses import Ingredient, Reference, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.line import Line
    from tamis.model.mass import Mass
    from tamis.model.own_parts import OwnPart
    from tamis.reading.reading import Event


def weigh_so_far(act: Line, at: int) -> None:
    """Note what lies in hand before the event at a place, for the verbs behind which food was named by now, and for
    those right before them: *peel and slice [1 kg carrots]*."""
    batch, uses = act.walker.present, list[VerbUse]()
    named, events = False, act.read.events
    for before in range(at - 1, -1, -1):  # by place: a copy of all before each event is a square of the line
        event = events[before]
        if isinstance(event, VerbUse):
            if not named or event.span.start in act.masses:
                break
            uses.append(event)
        elif isinstance(event, Ingredient | Reference):
            named = True
    if uses and batch is not None:
        # Without the stock that food was cooked in, where that matters: to add up the rest takes a while.
        by_weight = any([use.verb.per_kg or use.verb.per_piece or is_cut(use.verb) for use in uses])
        mass = solid(batch, act) if by_weight else batch.mass
        for use in uses:
            act.masses[use.span.start] = mass


def masses_before(act: Line, batch: Batch | None) -> dict[int, Mass]:
    """The mass that a verb works on, by its place, where that is not all in hand at the end."""
    verbs = [use for use in act.labour.verbs if use.verb.per_kg or use.verb.least_per_kg]
    if not verbs:
        return {}
    parts = [use.span.start for use in verbs if is_cut(use.verb) or use.verb.sieved_per_kg or use.verb.least_per_kg]
    masses = dict.fromkeys(parts, solid(batch, act)) if parts and batch else {}
    masses |= dict.fromkeys(named_no_food(act), act.mass_before) | act.masses
    # What only moves, or is dipped into water, is no such work: *scrape it into a tin*.
    masses |= {use.span.start: NOTHING for use in verbs if use.verb.least_per_kg and not _works_food(act, use)}
    return masses | _named(act)


def _works_food(act: Line, use: VerbUse) -> bool:
    """Whether a verb that takes large pieces longer works on food there, and not only puts it somewhere."""
    foods = [read for read in act.labour.clauses_of(use) if isinstance(read, Ingredient | Reference)]
    return not use.verb.moves and (bool(foods) or not use.verb.adds)


def _named(act: Line) -> dict[int, Mass]:
    """What a verb names right behind it, where large pieces take it longer: *rub [2 pork chops] with [salt]*."""
    events = act.labour.events if act.labour.foods else ()
    named = {use.span.start: food for use, food in pairwise(events) if isinstance(use, VerbUse) and _takes(use, food)}
    return {at: mass_of(food, act.walker.flow.kitchen) for at, food in named.items() if isinstance(food, Ingredient)}


def _takes(use: VerbUse, event: Event) -> bool:
    large = use.verb.least_per_kg or (use.verb.per_kg and not is_cut(use.verb))
    return bool(large) and isinstance(event, Ingredient) and event.clause.span.start <= use.span.end + 1


def take_off(act: Line, at: int, own: OwnPart | None) -> None:
    """Give the verb before a place the time that it takes to get a part off its food, by the weight of that, if it is
    known by now; where that is not in hand, it is what all verbs so far work on that name nothing else."""
    before = [number for number, use in enumerate(act.labour.verbs) if use.span.start < at]
    if not before:
        return
    last = act.labour.verbs[before[-1]]
    if own is not None:
        if own.source is not act.walker.present:
            for number in before:
                act.masses.setdefault(act.labour.verbs[number].span.start, own.source.mass)
        from tamis.model.own_parts import weight_of

        act.masses.setdefault(last.span.start, weight_of(own.foods))
    if last.verb.part_per_kg:
        per_kg = last.verb.per_kg + last.verb.part_per_kg
        act.labour.verbs[before[-1]] = last._replace(verb=last.verb._replace(per_kg=per_kg, part_per_kg=0))
