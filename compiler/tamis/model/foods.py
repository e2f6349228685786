"""Food going in: an ingredient clause acts on the present batch."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.batch import Food, part_of_goods
from tamis.model.effects import Weighs
from tamis.model.kept import made_for_others
from tamis.model.mass import ONE, Mass, cold_water, mass_of, minus, times
from tamis.model.recipe import Taking, Use
from tamis.model.words import model_words, plain
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient
from tamis.reading.plain import plain_of
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.line import Line
    from tamis.reading.clauses import Reference


def put_in(act: Line, food: Ingredient) -> None:
    """An ingredient goes in, unless it is for a purpose; the rest of a shared measure stays open."""
    walker, flow = act.walker, act.walker.flow
    index = len(flow.uses)
    same = computed = None
    food = act.only_part(food)
    if food.definite:
        from tamis.model.parts import of_one_counted

        food, same = of_one_counted(flow, food, index)
    only, apart = food.part, _is_separated(act, food)
    food = food._replace(part="") if apart else food
    share = food.share if food.share is not None and food.share.kind == "fraction" else None
    fraction, weighed = ONE if share is None else share.fraction, food
    act.fresh = False
    if food.percent:
        from tamis.model.percent import as_weighed, weigh

        computed = weigh(act, food)
        weighed = as_weighed(food, computed) if computed else food
    whole = mass_of(weighed, flow.kitchen)
    factor = act.repeats
    if food.for_each is not None:
        from tamis.model.for_each import how_many

        many = how_many(act, food)
        food = food if many else food._replace(for_each=None)
        factor *= many or 1
    mass = times(whole, factor if share is None else fraction * factor)
    aside = bool(food.purpose)
    shared = share is not None and fraction * factor <= 1  # all the shares of one measure
    often, part = (ONE, fraction * factor) if shared else (factor, fraction)
    flow.uses.append(
        Use(food, act.number, walker.component, often, part, same, not aside and not food.optional, mass, computed)
    )
    act.uses.append(index)
    if flow.parts_ahead:
        from tamis.model.parts import buy_once

        mass = minus(mass, buy_once(flow, index))
        flow.uses[index] = flow.uses[index]._replace(mass=mass)
    words = plain(food.name, flow.kitchen.language)
    flow.uses_of.setdefault(words[-1] if words else "", []).append(index)
    flow.uses_in.setdefault(walker.component, set()).update(words)
    if aside:
        act.cold_water += cold_water(food, flow.kitchen)
        walker.set_by(index)
    if computed and food.percent:
        walker.emit(Weighs(index, food.percent.of, computed))
    if apart:
        _separate(act, food._replace(part=only), index)
        return
    if share is not None:
        kept = mass_of(weighed._replace(purpose=""), flow.kitchen) if aside else whole
        _keep_rest(act, index, Food.of(index, food, words, kept, flow.kitchen), fraction, factor)
    if not aside or (walker.present is None and made_for_others(flow, walker.component)):
        walker.give(walker.present or walker.begin(), Food.of(index, food, words, mass, flow.kitchen))


def _keep_rest(act: Line, use: int, food: Food, fraction: Fraction, often: Fraction) -> None:
    """What is left of a food of a written measure, of which a fraction was taken so often, stays open for *the rest of
    it*."""
    walker = act.walker
    taken = fraction * often * walker.again
    left = 1 - (taken if taken <= 1 else fraction)  # else each time of a new one
    if left <= 0:
        return
    mass = times(food.mass, left)
    rest = walker.part("rest", "share", [food._replace(mass=mass)], mass, left=left)
    rest.rest_of, rest.rest_was, rest.span = use, left, walker.flow.uses[use].ingredient.clause.span
    walker.open.rest(rest)


def take_ahead(act: Line, reference: Reference) -> bool:
    """*1 tbsp of the flour*, which is weighed further on: it is of that, and so much less goes in there."""
    walker, flow, share = act.walker, act.walker.flow, reference.share
    if share is None or share.kind != "measure" or share.measure is None:
        return False
    from tamis.model.parts import counted_ahead

    item = counted_ahead(flow, reference)
    if item is None:
        return False
    food = item._replace(clause=reference.clause, name_span=reference.name_span, measures=(share.measure,))
    index, mass = len(flow.uses), times(mass_of(food, flow.kitchen), act.repeats)
    words = plain(food.name, flow.kitchen.language)
    flow.uses.append(Use(food, act.number, walker.component, act.repeats, ONE, None, True, mass, None))
    act.uses.append(index)
    flow.parts_ahead.append(index)
    flow.uses_in.setdefault(walker.component, set()).update(words)
    walker.give(walker.present or walker.begin(), Food.of(index, food, words, mass, flow.kitchen))
    act.fresh = False
    return True


def take_other_part(act: Line, reference: Reference) -> bool:
    """*The juice*, where the zest of a lemon went in before: it is of the same lemon."""
    flow = act.walker.flow
    kitchen, words = flow.kitchen, plain(reference.name, flow.kitchen.language)
    said = kitchen.larder.find(words[:-1]) if len(words) > 1 else None
    if not words or reference.share is not None or (len(words) > 1 and said is None):
        return False
    for use in reversed(flow.uses):
        item = use.ingredient
        if item.goods is None or not item.part or words[-1] in item.part.split():
            continue
        here = use.component == act.walker.component if said is None else said.goods is item.goods
        if here and part_of_goods(item.goods, words[-1], kitchen) is not None:
            put_in(
                act,
                Ingredient(reference.clause, item.name, reference.name_span, item.goods, part=words[-1], definite=True),
            )
            return True
    return False


def _is_separated(act: Line, food: Ingredient) -> bool:
    """`[4 eggs, separated]`: a food of several parts, each of which goes its own way."""
    separated = model_words(act.walker.flow.kitchen.language).separated if food.preparation else ()
    return food.goods is not None and bool(food.goods.parts) and any(word in food.preparation for word in separated)


def _separate(act: Line, food: Ingredient, use: int) -> None:
    """`[4 eggs, separated]` makes the yolks and the whites: two batches, both open, but for one that the words behind
    the bracket name: *whisk [2 eggs, separated] – the whites first*."""
    assert food.goods is not None
    count = sum((measure.amount.hi for measure in food.measures), Fraction(0)) or Fraction(1)
    for part in food.goods.parts:
        goods = act.walker.flow.kitchen.larder.get(part.id)
        if goods is None:
            continue
        mass = Mass(part.lo * count, part.hi * count)
        there = Food.known_as(use, plain(goods.name, act.walker.flow.kitchen.language), goods, mass)
        batch = act.walker.part("separated", "present", [there], mass)
        batch.last = act.number
        act.walker.put_aside(batch, "part", goods.name, food.clause.span)
        if _goes_in(act, food, there.words[-1]):
            assert batch.product is not None
            act.takings.append(len(act.walker.flow.takings))
            act.walker.flow.takings.append(Taking(batch.product, act.number, food.clause.span, ONE))
            act.walker.take(batch, food.clause.span, ONE, ONE, whole=True, taking=act.takings[-1])


def _goes_in(act: Line, food: Ingredient, part: str) -> bool:
    """Whether the first word behind a bracket, but for *only the*, is this part, or it is *the yolks of* the food."""
    parts, kitchen = act.read.parts, act.walker.flow.kitchen
    at = next((at for at, one in enumerate(parts) if one is food.clause), len(parts))
    behind = ("", *parts, "", "")[at + 2]
    words, one = model_words(kitchen.language), nouns(kitchen.language).singular
    if food.part and one(food.part.split()[-1]) == part:
        return True
    if not isinstance(behind, Text):
        return False
    first = next((word for word in plain_of(behind.text, kitchen).words if word and word not in words.only), "")
    return one(first) == part
