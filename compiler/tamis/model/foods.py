"""Food going in: an ingredient clause acts on the present batch."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.batch import Batch, Food
from tamis.model.mass import ONE, cold_water, mass_of, times
from tamis.model.percent import as_weighed, weigh
from tamis.model.recipe import Mass, Use
from tamis.model.words import model_words, plain
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.act import Act
    from tamis.reading.clauses import Ingredient


def put_in(act: Act, food: Ingredient) -> None:
    """An ingredient goes in, unless it is for a purpose; the rest of a shared measure stays open.

    The history tells into which batch, and which batches it opened.
    """
    walker, flow = act.walker, act.walker.flow
    share = food.share if food.share and food.share.kind == "fraction" else None
    fraction = share.fraction if share else ONE
    act.fresh = False
    computed = weigh(act, food) if food.percent else None
    whole = mass_of(as_weighed(food, computed) if computed else food, flow.kitchen)
    factor = act.repeats
    mass = times(whole, fraction * factor if share else factor)
    aside = bool(food.purpose)
    note = flow.history.note
    index = len(flow.uses)
    in_batch = not aside and not food.optional
    flow.uses.append(Use(food, act.number, walker.component, factor, fraction, None, in_batch, mass, computed))
    act.uses.append(index)
    if aside:
        act.cold_water += cold_water(food, flow.kitchen)
    if aside and walker.present:
        note("aside", act.number, walker.present, use=index)
    separated = any(word in food.preparation for word in model_words(flow.kitchen.language).separated)
    if separated and food.goods and food.goods.parts:
        _separate(act, food, index)
        return
    if aside:
        return
    if walker.present is None:
        walker.present = Batch()
    there = Food.of(index, food, mass, flow.kitchen.language)
    walker.present.add(there)
    note("food", act.number, walker.present, use=index, goods=there.goods)
    if share and fraction < 1:
        rest = Batch("share")
        rest.add(Food.of(index, food, times(whole, 1 - fraction), flow.kitchen.language))
        rest.left, rest.shared, rest.rest_of = 1 - fraction, True, index
        rest.last, rest.span = None, food.clause.span
        flow.index.enter(rest, rest.keys)
        walker.open.open(rest)
        note("food", act.number, rest, use=index, goods=there.goods)


def _separate(act: Act, food: Ingredient, use: int) -> None:
    """`[4 eggs, separated]` makes the yolks and the whites: two batches, both open."""
    assert food.goods is not None
    count = sum((measure.amount.hi for measure in food.measures), Fraction(0)) or Fraction(1)
    for part in food.goods.parts:
        goods = act.walker.flow.kitchen.larder.get(part.id)
        if goods is None:
            continue
        batch = Batch()
        mass = Mass(part.lo * count, part.hi * count)
        batch.add(Food(use, plain(goods.name, act.walker.flow.kitchen.language), goods, mass))
        batch.last = act.number
        act.walker.put_aside(batch, "part", goods.name, food.clause.span)
        act.walker.flow.history.note("food", act.number, batch, use=use, goods=goods.id)
