"""A market list as a page: what to buy for dishes, stall by stall, to be ticked on a telephone or on paper.

For a small house the site carries one list for all its dishes. Where there are many, nobody shops for all of them at
once, and the page would tell of every pinch of salt a hundred times; there `tamis market` makes the list wanted.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from fractions import Fraction

from tamis.market.market_list import MarketList, costs_of
from tamis.market.money import money
from tamis.market.wording import (
    buy_text,
    in_house_text,
    measures_text,
    merchant_text,
    name_text,
    portions_text,
    ready_text,
    totals_text,
    unpriced_text,
    weights_text,
)
from tamis.publish.paths import page_link
from tamis.publish.templates import template
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen
    from tamis.market.dishes import Dish
    from tamis.market.lines import Line

PAGE = "market.html"
MOST_DISHES = 40
"""More dishes than this have no list in common."""


class DishView(NamedTuple):
    """A dish of the list; `key` is the letter by which lines refer to it, `href` its page, if it has one."""

    key: str
    title: str
    href: str
    note: str


class PlaceView(NamedTuple):
    """Where some of it goes."""

    key: str
    title: str
    amount: str


class LineView(NamedTuple):
    """A line to tick."""

    id: str
    buy: str
    name: str
    paid: str
    places: list[PlaceView]
    weights: str


class StallView(NamedTuple):
    """A merchant, with the sum to pay there."""

    name: str
    paid: str
    lines: list[LineView]


class MarketView(NamedTuple):
    """All that `market.html` shows."""

    dishes: list[DishView]
    stalls: list[StallView]
    in_house: str
    ready: list[str]
    totals: str
    unpriced: str
    yields: list[str]


def house_market_page(recipes: Sequence[Compiled], kitchen: Kitchen, pages: Collection[str]) -> str | None:
    """The page of one list for all recipes of a house, each made once; None where there are too many or none."""
    from tamis.market.dishes import Dish
    from tamis.market.market_list import market_list

    if not 0 < len(recipes) <= MOST_DISHES:
        return None
    dishes = [Dish(each.recipe, each.table) for each in recipes]
    known = {dish.recipe.stem: dish for dish in dishes}
    return market_page(market_list(dishes, known, kitchen), kitchen, pages)


def market_page(found: MarketList, kitchen: Kitchen, pages: Collection[str]) -> str:
    """The HTML of a market list; `pages` are the stems of the recipes that have a page."""
    publish = kitchen.settings.publish
    address = f"{publish.address.rstrip('/')}/{PAGE}" if publish.address else ""
    view = market_view(found, kitchen, pages)
    return template("market.html").render(market=view, root="", house=publish.name, address=address)


def market_view(found: MarketList, kitchen: Kitchen, pages: Collection[str]) -> MarketView:
    """A market list in words."""
    currency, costs = kitchen.settings.publish.currency, costs_of(found)
    groups = [(merchant_text(name), lines) for name, lines in found.by_merchant().items()]
    if found.optional:
        groups.append(("Optional", list(found.optional)))
    stalls = [_stall(at, name, lines, found, kitchen) for at, (name, lines) in enumerate(groups)]
    totals = totals_text(costs, currency)
    sources = (
        f"{line.name}: {line.yield_source}" for line in (*found.lines, *found.optional) if weights_text(line, kitchen)
    )
    return MarketView(
        dishes=[_dish(at, dish, pages) for at, dish in enumerate(found.dishes)],
        stalls=stalls,
        in_house=", ".join(in_house_text(line) for line in found.in_house),
        ready=[ready_text(ready) for ready in found.ready],
        totals=totals,
        unpriced=unpriced_text(costs, kitchen) if totals else "",
        yields=list(dict.fromkeys(sources)),
    )


def letters(at: int) -> str:
    """A short key for the dish of this index: A to Z, then AA, AB …"""
    head, last = divmod(at, 26)
    return (letters(head - 1) if head else "") + chr(ord("A") + last)


def _dish(at: int, dish: Dish, pages: Collection[str]) -> DishView:
    href = page_link(dish.recipe.stem) if dish.recipe.stem in pages else ""
    said = [f"for {portions_text(dish.portions)}"] if dish.portions and not dish.used_by else []
    if dish.used_by:
        said.append(f"for {dish.used_by}")
    return DishView(letters(at), dish.title, href, ", ".join(said))


def _stall(at: int, name: str, lines: Sequence[Line], found: MarketList, kitchen: Kitchen) -> StallView:
    currency = kitchen.settings.publish.currency
    paid = sum((line.paid for line in lines if line.paid is not None), Fraction(0))
    views = [_line(f"{at}-{number}", line, found, kitchen) for number, line in enumerate(lines)]
    return StallView(name, money(paid, currency) if paid else "", views)


def _line(id: str, line: Line, found: MarketList, kitchen: Kitchen) -> LineView:
    places = []
    for place in line.places:
        amount = measures_text(place.amount, line.name, kitchen)
        words = " ".join(word for word in (amount, " and ".join(place.purposes)) if word)
        places.append(PlaceView(letters(place.dish), found.dishes[place.dish].title, words))
    paid = money(line.paid, kitchen.settings.publish.currency) if line.paid is not None else ""
    return LineView(f"item-{id}", buy_text(line, kitchen), name_text(line), paid, places, weights_text(line, kitchen))
