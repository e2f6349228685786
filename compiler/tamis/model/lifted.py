"""Food that is lifted out of a batch: it leaves as an open batch of its own, and the rest stays where it is.

*Lift out [the thighs], boil the sauce down, put [the thighs] back.* In its own line the work goes on with what was
lifted out, until the line turns to what stayed behind: it cooks on and names nothing else, puts food in, or names that.
The next line goes on with what stayed (`rest_of.py`).

What no later line names again does not go its own way: a bay leaf, bones and the like are thrown away, and other food
is taken to stay with the rest; where that is cooked on, the cook is asked.
"""

from __future__ import annotations

from tamis.model.batch import any_of, is_of_kind, matches_food
from tamis.model.effects import Why
from tamis.model.line import Parting
from tamis.model.mass import ONE
from tamis.model.rest_of import LIFTED_OUT, is_rest_word
from tamis.model.words import model_words, plain
from tamis.reading.clauses import Ingredient, Naming, Reference, Target, Tool, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.food import Show
    from tamis.model.batch import Batch, Food
    from tamis.model.called import Key
    from tamis.model.flow import Flow
    from tamis.model.line import Line
    from tamis.reading.reading import Event

Words = tuple[str, ...]

_FLESH: tuple[Show, ...] = ("meat", "fish")
LIFTED_OVER = Why("lifted-over")
_SEASONS: tuple[Show, ...] = ("herb", "spice")


def lift_out(act: Line, reference: Reference, batch: Batch) -> bool:
    """Part the food that is named from the batch in hand; False where the verb lifts nothing out."""
    verb, walker = act.verb, act.walker
    if verb is None or not verb.lifts or reference.preposition or reference.share is not None:
        return False
    if act.parting and act.parting.out:
        return False
    words = plain(reference.name, walker.flow.kitchen.language)
    foods = _named(walker.flow, batch, words)
    if not foods:
        return True  # all of it is in hand, be it lifted out of its tin
    if _comes_back(act, reference, foods, words):
        act.link(batch)
        lifted = walker.lift(batch, foods, words)
        act.parting = Parting(lifted, reference.name, batch)
        _begin(act, reference, lifted)
        return True
    thrown = all(_is_thrown(walker.flow, food) for food in foods)
    flesh = any(food.show in _FLESH for food in foods)
    if thrown or (not flesh and (verb.removes or _is_little(batch, foods))):
        walker.let_go(batch, foods, words)
        return True
    walker.kept_together.append((act.number, reference))
    return True


def lift_too(act: Line, reference: Reference) -> bool:
    """*Lift out [the legs] and [the carrots]*: more of the same batch in one line. Each is open by itself, but under
    one name if the line gives one."""
    parting, flow = act.parting, act.walker.flow
    if parting is None or not parting.out or act.verb is None or not act.verb.lifts or reference.share is not None:
        return False
    words, walker = plain(reference.name, flow.kitchen.language), act.walker
    there = parting.lifted.keys.has(any_of(words, flow.kitchen))
    foods = [] if there else _named(flow, parting.rest, words)
    if not foods:
        return False
    more = walker.lift(parting.rest, foods, words)
    if any(isinstance(event, Naming) and event.kind == "as" for event in act.labour.behind(reference)):
        walker.take(more, reference.clause.span, ONE, ONE, whole=True)
        return True
    walker.put_aside(parting.lifted, "named", parting.name, parting.lifted.span)
    parting.lifted, parting.name = more, reference.name
    _begin(act, reference, more)
    return True


def _named(flow: Flow, batch: Batch, words: Words) -> list[Food]:
    """The foods of a batch that are called so; none where they are all of it."""
    kitchen, foods = flow.kitchen, list(batch.foods)
    gone: list[Food] = []
    for name in _names(words, flow):
        found = [food for food in foods if matches_food(name, food, kitchen)]
        found = found or _of_product(flow, batch, name)
        gone += found or [food for food in foods if is_of_kind(name, food, kitchen)]
    return [] if all(food in gone for food in foods) else [food for food in foods if food in gone]


def _names(words: Words, flow: Flow) -> list[Words]:
    """The foods that a name counts up: *the legs and carrots*."""
    joints, names, after = model_words(flow.kitchen.language).joints, list[Words](), 0
    for at, word in enumerate(words):
        if word in joints:
            names.append(plain(" ".join(words[after:at]), flow.kitchen.language))
            after = at + 1
    return [name for name in (*names, words[after:]) if name]


def _of_product(flow: Flow, batch: Batch, words: Words) -> list[Food]:
    """What went into a batch as one thing of that name: the meatballs in their sauce."""
    for index in reversed(batch.products):
        names = [plain(name, flow.kitchen.language) for name in flow.products[index].names]
        if any(words in (name, name[-1:]) for name in names):
            return list(flow.products[index].foods)
    return []


def _comes_back(act: Line, reference: Reference, foods: list[Food], words: Words) -> bool:
    """Whether the text goes on with what is lifted out: the line names it, or puts it on to something, or some later
    line names it again."""
    cupboard = act.walker.flow.kitchen.cupboard
    for event in act.labour.behind(reference):
        if isinstance(event, Naming):
            return True
        if isinstance(event, Reference) and event.preposition and not cupboard.find(event.name.split()):
            return True
    keys: list[Key] = [("name", words), ("word", words[-1])] if words else []
    for food in foods:
        keys += food.keys()
    return act.walker.flow.is_named_after(keys, reference.clause.span.start)


def _is_thrown(flow: Flow, food: Food) -> bool:
    """Whether food that is lifted out and not named again is thrown away: nobody eats bones and bay leaves."""
    return food.show in _SEASONS or not model_words(flow.kitchen.language).thrown.isdisjoint(food.words)


_LITTLE = 10
"""What is a smaller part of a batch flavours it, and is done with when it is lifted out: the onion of a white sauce
(common practice)."""


def _is_little(batch: Batch, foods: Sequence[Food]) -> bool:
    lifted = sum(food.mass.hi for food in foods)
    return all(food.mass.known for food in foods) and lifted * _LITTLE <= sum(food.mass.lo for food in batch.foods)


def _begin(act: Line, reference: Reference, lifted: Batch) -> None:
    lifted.last, lifted.span = act.number, reference.clause.span
    act.walker.turn(lifted, LIFTED_OUT)


def turn_back(act: Line, at: int) -> None:
    """Before an event of a line that has lifted food out: whether from here on it works on the rest."""
    parting, event, flow = act.parting, act.read.events[at], act.walker.flow
    if parting is None or not parting.out or act.walker.present is not parting.lifted:
        return
    if isinstance(event, VerbUse):
        behind = act.labour.clauses_of(event)
        if event.verb.adds and not any(isinstance(one, Ingredient | Reference | Tool) for one in behind):
            _put_back(act, parting)
        elif _cooks_on(event, behind) or _puts_in(event, behind):
            _go_back(act, parting)
    elif isinstance(event, Reference) and act.verb is not None and not act.verb.lifts:
        words = plain(event.name, flow.kitchen.language)
        joins = act.verb.adds and not event.preposition
        asked = any_of(words, flow.kitchen)
        rest = parting.rest.keys.has(asked) or is_rest_word(words, flow)
        if joins if parting.lifted.keys.has(asked) else rest:
            _go_back(act, parting)


def _cooks_on(use: VerbUse, behind: Sequence[Event]) -> bool:
    """*Lift out [the pears] and boil [until thick]*: what is lifted out is off the heat."""
    if any(isinstance(event, Reference | Ingredient) for event in behind):
        return False
    if any(isinstance(event, Tool) and not event.definite for event in behind):
        return False
    boils = use.verb.carries and any(isinstance(event, Target) for event in behind)
    return use.verb.station == "ring" or boils


def _puts_in(use: VerbUse, behind: Sequence[Event]) -> bool:
    """*Lift out [the thighs] and add [200 ml cream]*; what it is sprinkled *with* goes on to the thighs."""
    first = behind[0] if behind else None
    if not use.verb.adds or not isinstance(first, Ingredient) or first.preposition:
        return False
    return first.clause.span.start - use.span.end <= 1


def _go_back(act: Line, parting: Parting) -> None:
    """The line goes on with the rest; what was lifted out stands by, open under its name."""
    parting.out = False
    lifted = parting.lifted
    lifted.last = act.number
    lifted.early = act.before_time and bool(act.labour.times)
    act.walker.put_aside(lifted, "named", parting.name, lifted.span)
    act.walker.turn(parting.rest, LIFTED_OVER)
    act.joined = act.fresh = False


def _put_back(act: Line, parting: Parting) -> None:
    """*… shred, and return to the pot*: it lies in the rest again."""
    parting.out = False
    act.walker.turn(parting.rest, LIFTED_OVER)
    act.walker.take(parting.lifted, parting.lifted.span, ONE, ONE, whole=True)


def settle(act: Line, waits: bool) -> None:
    """At the end of its line: what was lifted out stands by, and the next line goes on with the rest."""
    parting, walker = act.parting, act.walker
    if parting is None or not parting.out or parting.rest.origin == "by-product":
        return
    lifted, rest = parting.lifted, parting.rest
    rest.last, rest.early = act.number, waits
    rest.on_heat, rest.station = parting.heat
    if walker.present is lifted and act.joined:  # it was put on to something: there the work goes on
        walker.put_aside(rest, "left", "", lifted.span, LIFTED_OUT)
        return
    if walker.present is lifted:
        walker.put_aside(lifted, "named", parting.name, lifted.span)
    if walker.present is None:
        walker.turn(rest, LIFTED_OVER)
