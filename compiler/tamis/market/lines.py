"""From needs to what is carried home: so many packs, so much weighed out, and what that costs.

A recipe asks for 7 tbsp of butter and the shop sells 250 g. How much must be bought follows from how a food is sold,
and whether that can be told depends on what is known of it; so every line either says what to buy, or says why it
cannot and gives the measure as the recipes have it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from tamis.kitchen.sale import Sale, Unsaleable, sale_of
from tamis.market.money import cents
from tamis.market.needs import is_tinned
from tamis.market.words import market_words
from tamis.market.yields import Weights, rounded_up
from tamis.quantity.amount import exactly
from tamis.quantity.display import plural
from tamis.quantity.measure import Measure, kind
from tamis.record import NamedTuple
from tamis.table.worth import in_grams
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.market.needs import Food, Need


class Place(NamedTuple):
    """Where some of it goes: the index of the dish, how much, and for what, if it serves a purpose."""

    dish: int
    amount: tuple[Measure, ...]
    purposes: tuple[str, ...] = ()


class Line(NamedTuple):
    """One food on the list.

    `needed` adds up what the recipes say. `weights` are grams as bought and prepared. `amount` is the same in the unit
    of sale, exact, and `buy` rounded up to what is sold; both None where `goods.toml` gives no pack or price, or the
    one cannot be told in the other (`why`). `also` adds up the second measures, where every use has one; `stated`: a
    recipe itself gives the prepared weight; `uncounted` is what `amount` leaves out, since nothing turns it;
    `merchant`: who sells it, empty for a food that the goods do not know; `each`: what a recipe says that a piece
    weighs.
    """

    name: str
    goods: Goods | None
    needed: tuple[Measure, ...]
    places: tuple[Place, ...]
    weights: Weights
    sale: Sale | None = None
    amount: Fraction | None = None
    why: str = ""
    alternatives: tuple[str, ...] = ()
    also: tuple[Measure, ...] = ()
    stated: bool = False
    uncounted: tuple[Measure, ...] = ()
    merchant: str = ""
    each: Measure | None = None

    @property
    def yield_source(self) -> str:
        """Who says what is left of it once prepared; empty where the list does not reckon with that."""
        if self.weights.prepared is None or self.goods is None:
            return ""
        return "the recipe" if self.stated else self.goods.refuse_source

    @property
    def buy(self) -> Fraction | None:
        """What must be bought, in the unit of sale."""
        if self.amount is None or self.sale is None:
            return None
        return rounded_up(self.amount, self.sale.step)

    @property
    def packs(self) -> Fraction | None:
        """How many packs, or steps of what is weighed out."""
        return self.buy / self.sale.step if self.buy is not None and self.sale is not None else None

    @property
    def used(self) -> Fraction | None:
        """What the dishes use of it costs, exact."""
        return _cost(self.amount, self.sale)

    @property
    def paid(self) -> Fraction | None:
        """What must be paid for it, to the cent."""
        cost = _cost(self.buy, self.sale)
        return cents(cost) if cost is not None else None


def line_of(food: Food, kitchen: Kitchen) -> Line:
    """The line of one food."""
    places = tuple(_place(food, dish, kitchen) for dish in food.dishes)
    line = Line(food.name, food.goods, food.total(kitchen), places, _weights(food, kitchen))
    line = line._replace(alternatives=tuple(_instead(food, kitchen)), also=food.also(kitchen))
    each = {need.item.each for need in food.needs if not need.item.piece_word}
    line = line._replace(each=each.pop() if len(each) == 1 else None)
    stated = any(need.item.prepared is not None for need in food.needs)
    line = line._replace(stated=stated, merchant=_merchant(food, kitchen))
    sale = _sale(food.goods, kitchen)
    if sale is None:
        return line._replace(why="`goods.toml` gives no pack or price")
    amounts = [_in_sale(need, sale, kitchen) for need in food.needs]
    known = [amount for amount in amounts if amount is not None]
    lost = tuple(need for need, amount in zip(food.needs, amounts, strict=True) if amount is None)
    why = _unknown(sale, kitchen.language) if lost else "" if sale.price is not None else "it has no price"
    if not known:
        return line._replace(sale=sale, why=why)
    left = food._replace(needs=lost).total(kitchen) if lost else ()
    return line._replace(sale=sale, amount=sum(known, Fraction(0)), why=why, uncounted=left)


def _instead(food: Food, kitchen: Kitchen) -> list[str]:
    """What may be taken instead: of all of it, or of a part."""
    from tamis.table.wording import alternative_text, amount_text

    said = []
    for need in food.needs:
        for other in need.item.alternatives:
            everywhere = all(any(each.name == other.name for each in one.item.alternatives) for one in food.needs)
            part = "" if everywhere else amount_text(need.measures(), need.item, kitchen)
            text = alternative_text(other, kitchen)
            said.append(f"{text} for {part} of it" if part else text)
    return list(dict.fromkeys(said))


def _merchant(food: Food, kitchen: Kitchen) -> str:
    """Who sells it. Food that others sell fresh comes by the tin or the jar from a shop of its own."""
    if is_tinned(food.goods, food.needs[0].item.measures, kitchen):
        return market_words(kitchen.language).tinned
    return food.goods.merchant if food.goods else ""


def _cost(amount: Fraction | None, sale: Sale | None) -> Fraction | None:
    return amount * sale.price if amount is not None and sale is not None and sale.price is not None else None


def _place(food: Food, dish: int, kitchen: Kitchen) -> Place:
    purposes = dict.fromkeys(need.purpose for need in food.needs if need.dish == dish and need.purpose)
    return Place(dish, food.total(kitchen, dish), tuple(purposes))


def _weights(food: Food, kitchen: Kitchen) -> Weights:
    """The sums of the needs' weights; a sum with an unknown part is unknown."""
    found = [need.weights(kitchen) for need in food.needs]
    return Weights(_sum([each.bought for each in found]), _sum([each.prepared for each in found]))


def _sum(values: Sequence[Fraction | None]) -> Fraction | None:
    known = [value for value in values if value is not None]
    return sum(known, Fraction(0)) if len(known) == len(values) and values else None


def _sale(goods: Goods | None, kitchen: Kitchen) -> Sale | None:
    """How the house says that it is sold. What cannot be read was told where the house's files are read."""
    if goods is None:
        return None
    try:
        return sale_of(goods.pack, goods.price, kitchen.units)
    except Unsaleable:
        return None


def _unknown(sale: Sale, language: str) -> str:
    if sale.unit == "g":
        return "its weight is not known"
    many = "millilitres" if sale.unit == "ml" else plural(sale.unit or "piece", language)
    return f"it is not known how many {many} that is"


def _in_sale(need: Need, sale: Sale, kitchen: Kitchen) -> Fraction | None:
    """One need in the unit of sale: by the measure that fits exactly, else by way of the food's weight."""
    for measures in (need.measures(), need.also()):
        exact = [_exact(measure, sale, kitchen) for measure in measures]
        if (total := _sum(exact)) is not None:
            return total
    found = need.weights(kitchen)
    if sale.unit == "g":
        return found.bought
    return _by_weight(found, need, sale, kitchen)


def _exact(measure: Measure, sale: Sale, kitchen: Kitchen) -> Fraction | None:
    """The measure in the unit of sale where that takes no weight: litres in millilitres, eggs in eggs, cans in cans."""
    hi = measure.amount.hi
    if sale.unit == "ml" and kind(measure, kitchen.units) == "volume":
        unit = kitchen.units.get(measure.unit)
        return hi * unit.factor if unit else None
    if sale.unit not in ("g", "ml") and measure.unit == sale.unit:
        return hi
    return hi * sale.step if sale.word and measure.unit == sale.word else None


def _by_weight(found: Weights, need: Need, sale: Sale, kitchen: Kitchen) -> Fraction | None:
    """Pieces and millilitres from grams: a piece's weight in our lists is that without its refuse."""
    grams = found.prepared if found.prepared is not None else found.bought
    if grams is None:
        return None
    # The cook's own weight of a piece is of one as bought; ours, of one prepared.
    if sale.unit == "" and need.item.each is not None:
        grams = found.bought if found.bought is not None else grams
    worth = in_grams(Measure(exactly(1), sale.unit), need.item, kitchen)
    return grams / worth.measure.amount.hi if worth is not None else None
