"""As bought and prepared: what peel, pods, bones and stalks make of a weight.

A recipe that says *400 g carrots, in batons* means carrots as they come from the market; one that says *400 g diced
carrots*, or *2 cups*, or *3 onions* that our lists weigh without their skins, means what is left on the board. Who buys
needs the first, who cooks the second, so both are worked out from the share that is thrown away. The word order is
common practice; the shares are the goods' own, each with its source.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tamis.market.words import market_words
from tamis.quantity.measure import Measure, kind
from tamis.record import NamedTuple
from tamis.table.worth import in_grams
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Ingredient


class Weights(NamedTuple):
    """Grams of one use, its upper end where the recipe gives a range: as bought, and prepared. None: not known."""

    bought: Fraction | None = None
    prepared: Fraction | None = None


def as_purchased(edible: Fraction, share: Fraction) -> Fraction:
    """What must be bought for so much edible portion; `share` is the yield, edible over bought, above nought."""
    return edible / share


def edible_portion(bought: Fraction, share: Fraction) -> Fraction:
    """What is left of so much as bought, at this yield."""
    return bought * share


def portions(available: Fraction, portion: Fraction) -> int:
    """How many whole portions there are: the last, smaller one counts for nobody."""
    return int(available // portion)


def rounded_up(needed: Fraction, step: Fraction) -> Fraction:
    """The least multiple of what is sold that is enough."""
    return -(-needed // step) * step


def yield_of(goods: Goods | None, language: str, states: Sequence[str] = (), preparation: str = "") -> Fraction | None:
    """The edible share of a food as bought in these states and prepared so; None where nothing is published."""
    if goods is None or goods.refuse is None or goods.refuse >= 100:
        return None
    words = market_words(language)
    whole = words.ready.intersection(states) or words.unpeeled.search(preparation)
    return Fraction(1) if whole else 1 - goods.refuse / 100


def weights(measures: Sequence[Measure], item: Ingredient, times: Fraction, kitchen: Kitchen) -> Weights:
    """What these measures of a food weigh as bought and prepared; `times` counts for its stated prepared weight."""
    grams = grams_of(measures, item, kitchen)
    # What comes in a tin or a jar comes without what is thrown away.
    tinned = any(kitchen.cupboard.is_tin(measure.unit) for measure in measures)
    share = Fraction(1) if tinned else yield_of(item.goods, kitchen.language, item.states, item.preparation)
    if item.prepared is not None:
        prepared = grams_of([item.prepared.times(times)], item, kitchen)
        bought = grams if grams is not None or prepared is None or share is None else as_purchased(prepared, share)
        return Weights(bought, prepared)
    if grams is None or share is None:
        return Weights(grams)
    if _without_refuse(measures, item, kitchen):
        return Weights(as_purchased(grams, share), grams)
    return Weights(grams, edible_portion(grams, share))


def grams_of(measures: Sequence[Measure], item: Ingredient, kitchen: Kitchen) -> Fraction | None:
    """The weight of measures that belong together, upper ends; None where a density or a piece's weight is missing."""
    total = Fraction(0)
    for measure in measures:
        worth = in_grams(measure, item, kitchen)
        if worth is None:
            return None
        total += worth.measure.amount.hi
    return total if measures else None


def _without_refuse(measures: Sequence[Measure], item: Ingredient, kitchen: Kitchen) -> bool:
    """Whether the weight is that of the prepared food: cups and pieces by our lists, or a weight said to be so."""
    prepared = market_words(kitchen.language).prepared
    if item.goods is not None and not item.goods.animal and prepared.intersection(item.states):
        return True
    written = item.each is not None or all(kind(measure, kitchen.units) == "mass" for measure in measures)
    return not written
