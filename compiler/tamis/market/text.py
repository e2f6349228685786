"""A market list and a costing for a terminal.

A shopper goes from stall to stall with the list in one hand: what to ask for stands first, why and for which dish below
it. Who prices a dish reads one column of figures that adds up to the sum under it.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from tamis.market.market_list import costs_of
from tamis.market.money import cents, money
from tamis.market.wording import (
    buy_text,
    dish_text,
    in_house_text,
    merchant_text,
    name_text,
    needed_text,
    places_text,
    portions_text,
    price_text,
    ready_text,
    stem_of,
    totals_text,
    unpriced_text,
    weights_text,
)
from tamis.quantity.wrapping import wrap
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.market.lines import Line
    from tamis.market.market_list import Costs, MarketList

GAP = "   "
WIDEST = 24
LEFT = "      "


def list_text(found: MarketList, kitchen: Kitchen, width: int = 80) -> str:
    """The list, merchant by merchant, with what the house must have and what it costs."""
    currency = kitchen.settings.publish.currency
    blocks = ["\n".join(line for dish in found.dishes for line in wrap(dish_text(dish), width, "    ", "  "))]
    for merchant, lines in found.by_merchant().items():
        paid = sum((line.paid for line in lines if line.paid is not None), Fraction(0))
        head = merchant_text(merchant)
        sums = money(paid, currency) if paid else ""
        heading = f"{head}{sums:>{max(width - len(head), 0)}}" if sums else head
        blocks.append(f"{heading}\n{_lines(lines, found, kitchen, width)}")
    if found.optional:
        blocks.append("Optional\n" + _lines(found.optional, found, kitchen, width))
    blocks += _apart(found, costs_of(found), kitchen, width)
    return "\n\n".join(blocks) + "\n"


def cost_text(found: MarketList, kitchen: Kitchen, width: int = 80) -> str:
    """What the dish costs: a line a food, the sum, a portion."""
    currency, costs = kitchen.settings.publish.currency, costs_of(found)
    priced = [line for line in found.lines if line.used is not None]
    rows = [
        (needed_text(line, kitchen), line.name, price_text(line, currency), _used(line, currency)) for line in priced
    ]
    blocks = ["\n".join(line for dish in found.dishes for line in wrap(dish_text(dish), width, "  "))]
    sums = [("Cost of what is used", money(costs.used, currency))]
    if costs.each is not None and costs.portions is not None:
        sums.append((f"One portion of {portions_text(costs.portions)}", money(costs.each, currency)))
    sums.append(("Cost of what must be bought", money(costs.paid, currency)))
    if priced:
        blocks.append(_costing(rows, sums, width))
    blocks += _apart(found, costs, kitchen, width, totals=False)
    return "\n\n".join(blocks) + "\n"


def _costing(rows: list[tuple[str, str, str, str]], sums: list[tuple[str, str]], width: int) -> str:
    figures = max(len(row[-1]) for row in (*rows, *sums))
    widths = [min(max(len(row[at]) for row in rows), WIDEST) for at in range(2)]
    out = []
    for row in rows:
        left = GAP.join((row[0].ljust(widths[0]), row[1].ljust(widths[1]), row[2])).rstrip()
        out.append(_flush(left, row[3], width))
    out.append(" " * (width - figures) + "─" * figures)
    return "\n".join([*out, *(_flush(name, figure, width) for name, figure in sums)])


def _flush(left: str, right: str, width: int) -> str:
    """A figure at the right edge; below the words where they leave it no room."""
    left = "  " + left
    room = width - len(left) - len(right)
    return left + " " * room + right if room >= 2 else f"{left}\n{right:>{width}}"


def _used(line: Line, currency: str) -> str:
    return money(cents(line.used), currency) if line.used is not None else ""


def _lines(lines: Iterable[Line], found: MarketList, kitchen: Kitchen, width: int) -> str:
    currency = kitchen.settings.publish.currency
    rows = [(buy_text(line, kitchen), line) for line in lines]
    first = min(max(len(buy) for buy, _ in rows), WIDEST)
    out = []
    for buy, line in rows:
        paid = money(line.paid, currency) if line.paid is not None else ""
        out.append(_flush(f"{buy.ljust(first)}{GAP}{name_text(line)}", paid, width).rstrip())
        if more := _more(line, buy, found, kitchen):
            out += wrap(more, width, LEFT + "  ", LEFT)
    return "\n".join(out)


def _more(line: Line, buy: str, found: MarketList, kitchen: Kitchen) -> str:
    """What is needed of it and where it goes, as far as that says more than what is bought."""
    needed, weights = needed_text(line, kitchen), weights_text(line, kitchen)
    several = len(found.dishes) > 1
    if several or any(place.purposes for place in line.places):
        places = places_text(line, found, kitchen, stem_of)
        one = len(line.places) == 1
        needed = places.removesuffix(f" {buy}") if one else places if needed == buy else f"{needed}: {places}"
    elif needed == buy:
        needed = ""
    return "; ".join(word for word in (needed, weights) if word)


def _apart(found: MarketList, costs: Costs, kitchen: Kitchen, width: int, totals: bool = True) -> list[str]:
    """What must be in the house, what must be ready, and what the sums leave out."""
    currency, said = kitchen.settings.publish.currency, []
    if found.in_house:
        said.append("Check you have: " + ", ".join(in_house_text(line) for line in found.in_house) + ".")
    said += [f"Have ready: {ready_text(ready)}." for ready in found.ready]
    if totals and (sums := totals_text(costs, currency)):
        said.append(sums)
    if not totals and found.optional:
        said.append("Not counted, since optional: " + ", ".join(line.name for line in found.optional) + ".")
    if costs.unpriced and (costs.paid or not totals):
        said.append(f"Not priced: {unpriced_text(costs, kitchen)}.")
    if not totals and not costs.used:
        said.append(PRICES)
    return ["\n".join(wrap(line, width, "  ")) for line in said]


PRICES = (
    "Packs and prices stand in goods.toml beside the recipes, one table for each food: [butter], with the lines "
    'pack = "250 g" and price = 2.40 (for the pack), or price = "9.60 per kg".'
)
