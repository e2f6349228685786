"""Weights for what a recipe gives in percent.

A baker writes `72 %` and means the flour's weight; a cook who salts cabbage writes `2 % of its weight` and means what
lies in the bowl at that moment. The first is known before anything is done, since flour is weighed once a component
(or in the header); the second only while the batches are followed, left to right. So both are worked out as the food
goes in, and the clause stays as it was written.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.batch import Food, is_of_kind, matches_food
from tamis.model.effects import Why
from tamis.model.flour import foods_of
from tamis.model.lookup import look_up
from tamis.model.mass import NOTHING, Mass, mass_of, plus, times
from tamis.model.words import ModelWords, model_words, plain
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, grams
from tamis.reading.clauses import Ingredient, Percent, Reference
from tamis.typed import TYPE_CHECKING
from tamis.words import example, named

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Batch
    from tamis.model.line import Line
    from tamis.model.recipe import Use

RULE = "percent-without-base"
KILO = Fraction(1000)
WEIGHED = Why("weighed")


def weigh(act: Line, food: Ingredient) -> Measure | None:
    """What a percentage comes to where it stands, once; None (and, without any base, a finding) where that is open."""
    percent = food.percent
    if percent is None:
        return None
    of = _plain_base(percent, act.walker.flow.kitchen.language)
    if " ".join(of) in _words(act).flour:
        base = act.walker.flow.flour.base(act.walker.component)
        if base is None:
            _no_flour(act, food)
        return _part(percent, base, KILO) if base else None
    mass = _mass_named(act, food, of)
    if mass is None:
        _no_base(act, food, " ".join(of))
        return None
    if not mass.known or not mass.lo:
        _not_weighed(act, food, mass)
        return None
    each = _grams_of_base(act, food, percent)
    return _part(percent, Amount(mass.lo, mass.hi), each) if each else None


def _grams_of_base(act: Line, food: Ingredient, percent: Percent) -> Fraction | None:
    """What a rate is of, in grams: a kilo, a litre of the food named; None, and a finding, without its density."""
    base, kitchen = percent.base, act.walker.flow.kitchen
    if base is None:
        return KILO
    weight = grams(base, kitchen.units)
    if weight is not None:
        return weight.lo
    named = food._replace(percent=None, purpose="", optional=False, measures=(base,))
    found = kitchen.larder.named(percent.of)
    mass = mass_of(named._replace(goods=found.goods, states=found.states), kitchen) if found else NOTHING
    if not mass.known or not mass.lo:
        _not_weighed(act, food, Mass(unknown=(percent.of,)))
        return None
    return mass.lo


def _plain_base(percent: Percent, language: str) -> tuple[str, ...]:
    """The words that name the base: `cabbage` of `the cabbage's`, `ducks'`, `duck, on all sides`."""
    words = percent.of.partition(",")[0].replace("’", "'").strip().lower()
    return plain(model_words(language).possessive.sub("", words), language)


def _part(percent: Percent, base: Amount, each: Fraction) -> Measure:
    """So much of a base in grams; `each` is what a rate is of."""
    if percent.per_kg is not None:
        rate = percent.per_kg
        return Measure(_times(rate.amount, base.times(1 / each)), rate.unit)
    return Measure(_times(percent.amount.times(Fraction(1, 100)), base), "g")


def _times(one: Amount, other: Amount) -> Amount:
    return Amount(one.lo * other.lo, one.hi * other.hi)


def _mass_named(act: Line, food: Ingredient, words: tuple[str, ...]) -> Mass | None:
    """The mass of what lies in the batch, or of the food named, as it stands; None where there is no such thing."""
    present = act.walker.present
    if not words or words[0] in _words(act).batch:
        return present.mass if present and present.foods else None
    if present:
        found = _in_batch(present, words, act.walker.flow.kitchen)
        if found is not None:
            return found
    aside = _put_aside(act, words)
    if aside is not None:
        return aside
    elsewhere = _weighed_elsewhere(act, food, words)
    if elsewhere is not None:
        return elsewhere
    meaning = look_up(act.walker, Reference(food.clause, " ".join(words), food.clause.span))
    other = meaning.batch if meaning else None
    if other is not None and other is not present and other.last is not None:
        act.wait_for(other.last, WEIGHED)  # what is made must be weighed first
    return times(other.mass, other.left) if other else None


def _put_aside(act: Line, words: tuple[str, ...]) -> Mass | None:
    """The mass of what is there for a purpose: `4 l water, for boiling`, which goes into no batch."""
    flow, component = act.walker.flow, act.walker.component
    total = None
    for use in flow.uses:
        item = use.ingredient
        if use.component == component and item.purpose and words[-1:] == plain(item.name, flow.kitchen.language)[-1:]:
            weighed_food = mass_of(item._replace(purpose=""), flow.kitchen)
            total = plus(total or NOTHING, times(weighed_food, use.times))
    return total


def _weighed_elsewhere(act: Line, food: Ingredient, words: tuple[str, ...]) -> Mass | None:
    """`18 g salt per kg of the duck`, where the duck comes in a later component: only its weight is asked for, so that
    nothing has to be made first. Of duck legs and duck fat it is the flesh that is salted."""
    flow = act.walker.flow
    if food.percent is None:
        return None
    found: list[tuple[int, Mass, bool]] = []
    for at, component in enumerate(flow.reading.components):
        if at == act.walker.component:
            continue
        for item, factor in foods_of(component):
            if item.percent is None and not item.purpose and _is_called(item, words, flow.kitchen):
                flesh = item.goods is not None and item.goods.hazard != ""
                found.append((at, times(mass_of(item, flow.kitchen), factor), flesh))
    those = found if len(found) == 1 else [row for row in found if row[2]]
    if not those:
        return _component_weighed(act, words)
    total = NOTHING
    for _, mass, _ in those:
        total = plus(total, mass)
    return total if len({at for at, _, _ in those}) == 1 and total.known and total.lo else None


def _is_called(item: Ingredient, words: tuple[str, ...], kitchen: Kitchen) -> bool:
    """Whether a food is called so, or is of that kind: *the duck* of duck legs, *the meat*."""
    name = plain(item.name, kitchen.language)
    return set(words) <= set(name) or is_of_kind(words, Food.of(-1, item, name, NOTHING, kitchen), kitchen)


def _component_weighed(act: Line, words: tuple[str, ...]) -> Mass | None:
    """The weight of a component that is not made yet and holds only foods, and what is to be made here."""
    flow, own = act.walker.flow, act.walker.component
    homes = [at for at in flow.homes.get(words, ()) if at != own and at not in flow.component_batches]
    if len(homes) != 1:
        return None
    component = flow.reading.components[homes[0]]
    references = [reference for line in flow.lines_of(homes[0]) for reference in line.references]
    asked = {plain(reference.name, flow.kitchen.language) for reference in references}
    others = {name for at, name in enumerate(flow.component_names) if at not in (own, homes[0])}
    if not asked.isdisjoint(others) or (homes[0] not in flow.doing and flow.component_names[own] not in asked):
        return None
    total = NOTHING
    for item, factor in foods_of(component):
        if item.percent is None:
            total = plus(total, times(mass_of(item, flow.kitchen), factor))
    return total if total.known and total.lo else None


def _in_batch(batch: Batch, words: tuple[str, ...], kitchen: Kitchen) -> Mass | None:
    if batch.is_named(words):
        return batch.mass
    foods = [food for food in batch.foods if matches_food(words, food, kitchen)]
    # `per kg of the duck` for duck legs: on the scales nobody takes the duck for another food.
    foods = foods or [food for food in batch.foods if set(words) <= set(food.words)]
    total = NOTHING
    for food in foods:
        total = plus(total, food.mass)
    return total if foods else None


def _no_flour(act: Line, food: Ingredient) -> None:
    message = f"{_said(act, food)} of which flour? None is weighed in this component, and the header names none"
    language = act.walker.flow.kitchen.language
    flour = example(language, "flour")
    its = example(language, "its_weight", percent=_said(act, food).strip("“”"), food=food.name)
    hint = (
        f"weigh the flour here ({flour}), or write `flour: 1 kg` or `dough: 1.7 kg` in the header; "
        f"for a share of what is already in the batch: {its}"
    )
    act.say(RULE, food.clause, message, hint)


def _no_base(act: Line, food: Ingredient, name: str) -> None:
    if not name or name in _words(act).batch:
        message, hint = (
            f"{_said(act, food)} of what? The batch is empty here",
            "first put in the food that the percentage is of",
        )
    else:
        message = f"{_said(act, food)} of the weight of “{name}”: nothing is called so here"
        its = named(act.walker.flow.kitchen.language, "its_weight")
        hint = f"the base must be in the batch, or made before; {its} means all that is in the batch"
    act.say(RULE, food.clause, message, hint)


def _not_weighed(act: Line, food: Ingredient, mass: Mass) -> None:
    """No fault: the cook has scales. But no table can say how much it is."""
    what = " and ".join(mass.unknown or mass.uncounted) or "the batch"
    message = f"{_said(act, food)}: the weight of {what} is not known, so only the percentage can be shown"
    one = what.rpartition(" ")[2]
    weighed = example(act.walker.flow.kitchen.language, "each_weighed", food=one)
    hint = f"if the table is to say grams, give the weight as well: {weighed}"
    act.walker.find(RULE, "information", food.clause.span, message, hint)


def _said(act: Line, food: Ingredient) -> str:
    said = food.measure_text or food.name
    return f"“{_words(act).percent_in.sub('', said)}”"


def _words(act: Line) -> ModelWords:
    return model_words(act.walker.flow.kitchen.language)


def as_weighed(food: Ingredient, computed: Measure) -> Ingredient:
    """The food as if the weight had been written."""
    return food._replace(measures=(computed,), percent=None)


def weighed(use: Use) -> Ingredient:
    """The ingredient of a use with the weight that its percentage comes to as its measure.

    The percentage stays beside it, for whoever prints both; where the weight is not known there is no measure.
    """
    food = use.ingredient
    if food.percent is None:
        return food
    return food._replace(measures=(use.computed,) if use.computed else ())
