"""How much of a batch a line brings to its heat: what is hot already, or cooks there, takes no time."""

from __future__ import annotations

from fractions import Fraction
from itertools import takewhile
from math import ceil

from tamis.model.mass import NONE, mass_of
from tamis.model.words import model_words
from tamis.reading.clauses import Ingredient, Tool
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from tamis.model.batch import Batch
    from tamis.model.line import Line
    from tamis.model.mass import Mass
    from tamis.model.recipe import Action
    from tamis.reading.clauses import VerbUse

_COLD_AGAIN, _A_KILO_MORE = 1200, 300
"""Seconds off the heat in which hot food is hot no more, and for each kilo of it; common practice."""


def heated_by(act: Line, batch: Batch | None) -> Fraction | None:
    """Grams that a line warms; None where that is all of the batch, or its verb warms nothing in particular."""
    use = act.labour.time_verb
    if use is None or batch is None or not (use.verb.estimate_per_kg and use.verb.water_per_kg):
        return None
    if not act.uses and not act.takings and any(_is_empty_pan(tool) for tool in act.tools):
        return NONE
    own = _own(act, use)
    if own and not use.verb.waits:
        return own
    hot = model_words(act.walker.flow.kitchen.language).hot
    last = _last_heated(act, batch)
    cold = batch.mass.lo - _came_hot(act) if last < 0 else NONE
    for there in reversed(act.walker.flow.uses):
        if there.action <= last or there.component != act.walker.component:
            break
        warm = not hot.isdisjoint(there.ingredient.states) and not _cooled_since(act, there.action)
        if there.in_batch and warm == (last < 0):  # of all of it, less what is hot; else, what is cold
            cold += -there.mass.lo if warm else there.mass.lo
    return max(NONE, cold)


def _is_empty_pan(tool: Tool) -> bool:
    """*Heat [a frying pan]*: nothing lies in it yet."""
    return tool.equipment.kind == "vessel" and bool(tool.equipment.station) and not (tool.preposition or tool.definite)


def _own(act: Line, use: VerbUse) -> Fraction:
    """Grams of the foods that stand behind a verb: *melt [60 g butter]* warms the butter, whatever lies beside it."""
    foods = [read for read in act.labour.clauses_of(use) if isinstance(read, Ingredient)]
    return sum((mass_of(food, act.walker.flow.kitchen).lo for food in foods), NONE)


def _before(act: Line) -> Iterator[Action]:
    """The lines of the component before this one, the last first."""
    return _lines_up_to(act.walker.flow.actions, act.number - 1, act.walker.component)


def _last_heated(act: Line, batch: Batch) -> int:
    """The last line in which what is on the heat, or was a moment ago, came to the boil or cooked there; -1 where none
    did."""
    return _boiled(act, _before(act), set(act.after), batch.on_heat, 0, batch.mass)


def _boiled(act: Line, lines: Iterable[Action], worked: set[int], on_heat: bool, stood: int, mass: Mass) -> int:
    """The last of some lines, from the last one on, in which food came to the boil or cooked that those of `worked` had
    in hand, and that has `stood` so many seconds since; -1 where none did, or it has gone cold."""
    verbs = act.walker.flow.kitchen.verbs
    cold = _COLD_AGAIN + _A_KILO_MORE * mass.lo / 1000
    for action in lines:
        if not on_heat and action.number not in worked:
            continue
        verb = verbs.of_base(action.work.verb) if action.work.wait is not None else None
        boils = verb is not None and (verb.scalds or (verb.waits and verb.water_per_kg))
        cooks = verb is not None and on_heat and verb.heat and verb.cooks  # browned, it is cold within
        if boils or cooks or (verb is not None and on_heat):
            return action.number if boils or cooks else -1
        stood += _length(action)
        worked.update(action.after)
        if stood >= cold and not on_heat:
            return -1
    return -1


def _length(action: Action) -> int:
    return action.work.handling + (ceil(action.work.wait.lo) if action.work.wait is not None else 0)


def _lines_up_to(actions: Mapping[int, Action], number: int, component: int) -> Iterator[Action]:
    """The lines of a component up to one of them, the last first."""
    for at in range(number, -1, -1):
        if at not in actions or actions[at].component != component:
            return
        yield actions[at]


def _came_hot(act: Line) -> Fraction:
    """Grams of what a line takes that was made elsewhere a moment ago, and boiled there."""
    flow, hot = act.walker.flow, NONE
    for index in act.takings:
        taking = flow.takings[index]
        product = flow.products[taking.product]
        if product.made_by is None or taking.fraction is None or product.made_by not in flow.actions:
            continue
        between = (flow.actions[at] for at in range(product.made_by + 1, act.number) if at in flow.actions)
        there = _lines_up_to(flow.actions, product.made_by, product.component)
        if _boiled(act, there, {product.made_by}, False, sum(map(_length, between)), product.mass) >= 0:
            hot += product.mass.lo * taking.fraction
    return hot


def _cooled_since(act: Line, number: int) -> bool:
    """Whether what went in hot has stood off the heat since."""
    for action in takewhile(lambda one: one.number >= number, _before(act)):
        wait = action.work.wait
        if wait is not None and not action.work.station and wait.lo >= _COLD_AGAIN:
            return True
    return False
