"""What things weigh: an interval of grams, and a list of what is not in it.

A measured item without density or piece weight makes the mass unknown and is named; pinches, purposes and what is
optional are counted by nobody and only listed.
"""

from __future__ import annotations

from fractions import Fraction
from itertools import repeat

from tamis.model.words import model_words
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, grams, kind, millilitres
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Ingredient, Tool


class Mass(NamedTuple):
    """Grams as an interval. `unknown` names measured items without a density or piece weight (then the interval
    counts only the rest), `uncounted` what nobody weighs: to taste, pinches, optional, for a purpose."""

    lo: Fraction = Fraction(0)
    hi: Fraction = Fraction(0)
    unknown: tuple[str, ...] = ()
    uncounted: tuple[str, ...] = ()

    @property
    def known(self) -> bool:
        """Whether every measured item in it has a weight."""
        return not self.unknown


ONE = Fraction(1)
NONE = Fraction(0)
NOTHING = Mass()


def is_little(mass: Mass, beside: Mass) -> bool:
    """Whether so much is little beside the rest: eight strips of anchovy pushed into a joint make no eight pieces of it
    (a twentieth: common practice)."""
    return mass.hi * 20 < beside.hi


def plus(one: Mass, other: Mass) -> Mass:
    """Both together."""
    if one is NOTHING:
        return other
    lo = one.lo + other.lo
    return Mass(
        lo,
        lo if one.lo is one.hi and other.lo is other.hi else one.hi + other.hi,
        _joined(one.unknown, other.unknown) if other.unknown else one.unknown,
        _joined(one.uncounted, other.uncounted) if other.uncounted else one.uncounted,
    )


def with_its_rest(one: Mass, name: str) -> Mass:
    """A mass before the rest of that of which some is in it: together they weigh what it weighed."""
    return one._replace(unknown=tuple([other for other in one.unknown if other != name])) if one.unknown else one


def minus(one: Mass, other: Mass) -> Mass:
    """What is left when a part goes: its names go too."""
    return Mass(
        max(Fraction(0), one.lo - other.lo),
        max(Fraction(0), one.hi - other.hi),
        tuple(name for name in one.unknown if name not in other.unknown),
        tuple(name for name in one.uncounted if name not in other.uncounted),
    )


def times(mass: Mass, factor: Fraction) -> Mass:
    """So many times as much."""
    if factor is ONE or factor == 1:
        return mass
    lo = mass.lo * factor
    return mass._replace(lo=lo, hi=lo if mass.lo is mass.hi else mass.hi * factor)


def _joined(one: tuple[str, ...], other: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys((*one, *other)))


def mass_of(food: Ingredient, kitchen: Kitchen) -> Mass:
    """What the measure of an ingredient weighs, as it goes in."""
    if food.purpose or food.optional:
        return Mass(uncounted=(food.name,))
    if food.percent is not None:
        return Mass(unknown=(food.name,))
    if not food.measures:
        return Mass(uncounted=(food.name,))
    amount = weighed(food, kitchen)
    if amount is None:
        nominal = all(kind(measure, kitchen.units) == "nominal" for measure in food.measures)
        return Mass(uncounted=(food.name,)) if nominal else Mass(unknown=(food.name,))
    return Mass(amount.lo, amount.lo) if amount.lo is amount.hi else Mass(min(amount), max(amount))


def cold_water(food: Ingredient, kitchen: Kitchen) -> Fraction:
    """Grams that come to the boil beside the batch: what is put in for boiling and the like, unless it is hot."""
    words = model_words(kitchen.language)  # as goods are bought or drawn they are cold
    if not food.purpose.startswith(words.aside) or not food.measures or not words.hot.isdisjoint(food.states):
        return NONE
    amount = weighed(food, kitchen)
    return min(amount) if amount else NONE


def water_in(tool: Tool, kitchen: Kitchen) -> Fraction:
    """Grams of cold liquid in a pan that nobody measures: *bring [a large pan of salted water] [to the boil]*."""
    found = kitchen.larder.named(tool.contains) if tool.equipment.station else None
    if found is None or not found.goods.liquid:
        return NONE
    is_cold = model_words(kitchen.language).hot.isdisjoint(tool.contains.lower().split())
    if not is_cold:
        return NONE
    from tamis.kitchen.pans import water_in_pan

    return water_in_pan(tool.adjectives)


def weighed(food: Ingredient, kitchen: Kitchen) -> Amount | None:
    """Grams by the surest way: a weight as written, else by piece or by density."""
    if food.prepared:
        weight = grams(food.prepared, kitchen.units)
        if weight:
            return weight
    if food.part:
        return _part(food, kitchen)
    units = kitchen.units
    for measures in (food.measures, food.also):
        weight = _sum(map(grams, measures, repeat(units))) if measures else None
        if weight:
            return weight
    if food.each and len(food.measures) == 1:
        weight = grams(food.each, kitchen.units)
        count = food.measures[0].amount
        if weight:
            return Amount(weight.lo * count.lo, weight.hi * count.hi)
    if food.goods is None:
        return None
    return _sum([_of_goods(measure, food, food.goods, kitchen) for measure in food.measures])


def _of_goods(measure: Measure, food: Ingredient, goods: Goods, kitchen: Kitchen) -> Amount | None:
    """Grams of a measure; pieces may be named by the last word of the name: `12 sage leaves`, `3 trout fillets`."""
    weight = measure_grams(measure, goods, states_as_cut(food, goods, kitchen), kitchen)
    if weight or measure.unit:
        return weight
    word = nouns(kitchen.language).singular(food.name.lower().rpartition(" ")[2])
    return measure_grams(measure._replace(unit=word), goods, food.states, kitchen)


def states_as_cut(food: Ingredient, goods: Goods, kitchen: Kitchen) -> tuple[str, ...]:
    """The states of a food; of one that is known by measure only as it is cut, those that its preparation says too:
    `3 cups celery, cut in small pieces` is chopped celery."""
    if not food.preparation or not goods.densities or kitchen.larder.density(goods, food.states):
        return food.states
    cuts = model_words(kitchen.language).cuts
    words = food.preparation.lower().replace(",", " ").split()
    said = frozenset((*words, *map(nouns(kitchen.language).singular, words)))
    states = list(food.states)
    for state in (density.state for density in goods.densities):
        verb = kitchen.verbs.participle(state)
        if state in said or (verb is not None and not said.isdisjoint(cuts.get(verb.base, ()))):
            states.append(state)
    return tuple(states)


def _sum(amounts: Iterable[Amount | None]) -> Amount | None:
    total: Amount | None = None
    for amount in amounts:
        if amount is None:
            return None
        total = amount if total is None else total.plus(amount)
    return total


def measure_grams(measure: Measure, goods: Goods, states: tuple[str, ...], kitchen: Kitchen) -> Amount | None:
    """Grams of a measure of a food: by its density if a volume, by its piece weight if counted; None if unknown."""
    weight = grams(measure, kitchen.units)
    if weight:
        return weight
    volume = millilitres(measure, kitchen.units)
    if volume:
        density = kitchen.larder.density(goods, states)
        return volume.times(density.usual) if density else None
    if kind(measure, kitchen.units) != "count":
        return None
    piece = kitchen.larder.piece(goods, measure.unit, states)
    return measure.amount.times(piece.usual) if piece else None


def _part(food: Ingredient, kitchen: Kitchen) -> Amount | None:
    """Juice, zest or leaves off pieces: what one plain piece gives, times their number."""
    if food.goods is None or len(food.measures) != 1 or food.measures[0].unit:
        return None
    one = nouns(kitchen.language).singular
    words = {form for word in food.part.split() for form in (word, one(word))}
    parts = [part for part in food.goods.parts if part.id.rpartition("-")[2] in words]
    if not parts:
        return None
    count = food.measures[0].amount
    each = Amount(sum((p.lo for p in parts), Fraction(0)), sum((p.hi for p in parts), Fraction(0)))
    return Amount(each.lo * count.lo, each.hi * count.hi)
