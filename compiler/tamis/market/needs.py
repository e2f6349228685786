"""What the dishes need, food by food.

The same food is measured in grams here, in cups there and by the piece in a third recipe, and it may be written under
three names. The goods' id tells that it is one; a food that the goods do not know is known by its name. What may be
left out is kept apart, and so is what nobody measures: salt to taste, a pinch of nutmeg and flour for the board are
things to have in the house. A measured purpose (oil for frying) must be bought like the rest.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from tamis.market.wholes import as_sold
from tamis.market.words import market_words
from tamis.market.yields import Weights, weights
from tamis.model.names import bare_name, several
from tamis.model.percent import weighed
from tamis.model.recipe import Use
from tamis.quantity.measure import kind
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.table.adding import add_up, scale, scaled
from tamis.table.words import amount_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.market.dishes import Dish
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient
    from tamis.table.rows import Row

_METRIC = frozenset(("g", "kg"))
_US = frozenset(("cup", "tbsp", "tsp", "oz", "lb", "pint", "quart"))


class Need(NamedTuple):
    """One use of a food in a dish (an index in the list); `times` counts repeats and the dish's factor.

    `parts` says that only zest, juice and the like are taken, so that an edible weight would mean nothing.
    """

    dish: int
    item: Ingredient
    times: Fraction
    purpose: str = ""
    parts: bool = False

    def measures(self) -> tuple[Measure, ...]:
        """How much, in the units that the cook wrote."""
        return scaled(self.item, self.times)

    def also(self) -> tuple[Measure, ...]:
        """The same in the second measure, where the cook gave one."""
        return scale(self.item.also, self.times)

    def weights(self, kitchen: Kitchen) -> Weights:
        """As bought and prepared, from whichever measure tells it."""
        found = weights(self.measures(), self.item, self.times, kitchen)
        if found.bought is None and self.item.also:
            found = weights(self.also(), self.item, self.times, kitchen)
        return found._replace(prepared=None) if self.parts else found


def _is_us(need: Need, kitchen: Kitchen) -> bool:
    stick = amount_words(kitchen.language).stick
    return any(measure.unit in _US or measure.unit in stick for measure in need.item.measures)


def _is_by_eye(need: Need, kitchen: Kitchen) -> bool:
    """A knob or a handful, where another dish weighs."""
    units = [measure.unit for measure in need.item.measures]
    return any(unit and not kitchen.units.get(unit) and not kitchen.cupboard.is_tin(unit) for unit in units)


def _is_metric(need: Need) -> bool:
    return any(measure.unit in _METRIC for measure in need.item.measures)


def is_tinned(goods: Goods | None, measures: Sequence[Measure], kitchen: Kitchen) -> bool:
    """Whether fresh food is asked for by the tin or jar: another thing than the fresh one, from another shelf."""
    if goods is None or goods.merchant not in market_words(kitchen.language).fresh:
        return False
    return any(kitchen.cupboard.is_tin(measure.unit) for measure in measures)


class Food(NamedTuple):
    """All needs of one food."""

    name: str
    goods: Goods | None
    needs: tuple[Need, ...]

    def total(self, kitchen: Kitchen, dish: int | None = None) -> tuple[Measure, ...]:
        """The sum, in the first need's kind, or by weight where that is a US measure and another need is weighed in
        metric; of one dish only, if its index is given."""
        needs = [need for need in self.needs if dish is None or need.dish == dish]
        if needs and (_is_us(needs[0], kitchen) or _is_by_eye(needs[0], kitchen)):
            needs.sort(key=lambda need: not _is_metric(need))
        uses = [Use(need.item, 0, 0, need.times) for need in needs]
        return add_up(uses, kitchen).total

    def also(self, kitchen: Kitchen) -> tuple[Measure, ...]:
        """The sum of the second measures, if every need has one."""
        return add_up([Use(need.item, 0, 0, need.times) for need in self.needs], kitchen).also

    @property
    def dishes(self) -> tuple[int, ...]:
        """The dishes that take some of it, in order."""
        return tuple(dict.fromkeys(need.dish for need in self.needs))


class Needs(NamedTuple):
    """Everything that the dishes take: to be bought, optional, and to have in the house (without a measure)."""

    foods: tuple[Food, ...]
    optional: tuple[Food, ...]
    in_house: tuple[Food, ...]


def needs_of(dishes: Sequence[Dish], kitchen: Kitchen) -> Needs:
    """The needs of all dishes, each food once, in order of first use."""
    bought: dict[str, list[Need]] = {}
    optional: dict[str, list[Need]] = {}
    in_house: dict[str, list[Need]] = {}
    for at, dish in enumerate(dishes):
        table = dish.table
        for row in (*as_sold(table.rows, kitchen), *table.purposes):
            _put(bought, in_house, _needs(row, at, dish), row, kitchen)
        for row in table.optional:
            _put(optional, in_house, _needs(row, at, dish), row, kitchen)
        for row in table.unmeasured:
            _put(in_house, in_house, _needs(row, at, dish), row, kitchen)
    # A lemon that is zested and juiced gives no wedges.
    whole = {key for key, needs in bought.items() if not all(need.parts for need in needs)}
    house = {key: needs for key, needs in in_house.items() if key not in whole}
    return Needs(*[tuple(_foods(group, kitchen)) for group in (bought, optional, house)])


def _put(
    measured: dict[str, list[Need]], rest: dict[str, list[Need]], needs: Iterator[Need], row: Row, kitchen: Kitchen
) -> None:
    """Add a row's needs; those without a measure, or with no more than a pinch, go to what must be in the house."""
    words = market_words(kitchen.language)
    if row.goods is not None and row.goods.merchant in words.tap:
        return
    name = _key(row, kitchen.language)
    for need in needs:
        counts = any(kind(measure, kitchen.units) != "nominal" for measure in need.item.measures)
        key = f"{name} tinned" if is_tinned(row.goods, need.item.measures, kitchen) else name
        key = f"{key} cooked" if words.cooked.intersection(need.item.states) else key
        (measured if counts else rest).setdefault(key, []).append(need)


def _needs(row: Row, at: int, dish: Dish) -> Iterator[Need]:
    if row.parts:
        # Zest here and juice there come off one lemon: the table has counted them together.
        plain = row.first._replace(part="", measures=row.total, also=row.also, piece_word="", percent=None, each=None)
        yield Need(at, plain, dish.factor, parts=True)
        return
    for place in row.uses:
        if place.buys:
            use = dish.recipe.uses[place.use]
            item = weighed(use) if use.ingredient.percent else use.ingredient
            yield Need(at, item._replace(percent=None), use.times * dish.factor, item.purpose)


def _key(row: Row, language: str) -> str:
    if row.goods is not None:
        return row.goods.id
    return f"?{nouns(language).one(row.name.lower())}"


def _foods(groups: dict[str, list[Need]], kitchen: Kitchen) -> Iterator[Food]:
    for needs in groups.values():
        first = needs[0].item
        food = Food(_name(first, kitchen), first.goods, tuple(needs))
        total = food.total(kitchen)
        counted = total and not total[0].unit and total[0].amount.hi > 1
        said = food.name.lower()
        if counted and nouns(kitchen.language).one(said) == said:
            food = food._replace(name=several(food.name, first, kitchen.language))
        yield food


def _name(item: Ingredient, kitchen: Kitchen) -> str:
    """The food as first written, without what is done to it at home: a shop sells onions, whoever chops them, but
    skinless thighs and dry cider as such."""
    from_butcher = item.goods is not None and item.goods.show in ("meat", "fish")
    as_bought = from_butcher or market_words(kitchen.language).bought.issuperset(item.states)
    return item.name if as_bought else bare_name(item)
