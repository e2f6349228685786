"""A market list as plain data: for other programs, for a spreadsheet, for a text that is passed on.

Figures are exact (a fraction as text) with the nearest decimal beside them; money is in hundredths, so that nobody's
float changes a sum. Yields name their source.
"""

from __future__ import annotations

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
    ready_text,
    title_of,
    totals_text,
    unpriced_text,
    weights_text,
)
from tamis.table.markdown import plain
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.market.lines import Line
    from tamis.market.market_list import MarketList
    from tamis.quantity.measure import Measure

FORMAT = 1
Data = dict[str, Any]
HEADS = (
    "list", "merchant", "item", "buy", "needed", "bought g", "prepared g", "yield source", "cost used", "cost to buy",
    "where", "note",
)  # fmt: skip


def list_data(found: MarketList, kitchen: Kitchen) -> Data:
    """Everything that the list knows, as dictionaries, lists, texts and numbers."""
    costs = costs_of(found)
    return {
        "format": FORMAT,
        "currency": kitchen.settings.publish.currency,
        "dishes": [
            {
                "stem": dish.recipe.stem,
                "title": dish.title,
                "factor": _figure(dish.factor),
                "portions": _figure(dish.portions),
                "used_by": dish.used_by,
            }
            for dish in found.dishes
        ],
        "lines": [_line(line, found, kitchen) for line in found.lines],
        "optional": [_line(line, found, kitchen) for line in found.optional],
        "in_house": [in_house_text(line) for line in found.in_house],
        "ready": [ready_text(ready) for ready in found.ready],
        "cost": {
            "used": _hundredths(costs.used),
            "to_buy": _hundredths(costs.paid),
            "portions": _figure(costs.portions),
            "portion": _hundredths(costs.each),
            "without_price": [line.name for line in costs.unpriced],
        },
    }


def list_csv(found: MarketList, kitchen: Kitchen) -> str:
    """One row a food, for a spreadsheet; costs in plain figures with a point."""
    import csv
    import io

    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(HEADS)
    for name, lines in (("buy", found.lines), ("optional", found.optional)):
        writer.writerows(_row(name, line, found, kitchen) for line in lines)
    blank = [""] * 8
    writer.writerows(["check you have", line.merchant, in_house_text(line), "", *blank] for line in found.in_house)
    writer.writerows(["ready", "", ready_text(ready), "", *blank] for ready in found.ready)
    return out.getvalue()


def list_markdown(found: MarketList, kitchen: Kitchen) -> str:
    """The list to be passed on: a heading a merchant, a line to tick a food."""
    currency, costs = kitchen.settings.publish.currency, costs_of(found)
    blocks = ["# Market list", "\n".join(f"- {plain(dish_text(dish))}" for dish in found.dishes)]
    groups = [(merchant_text(name), lines) for name, lines in found.by_merchant().items()]
    for head, lines in [*groups, *([("Optional", list(found.optional))] if found.optional else [])]:
        blocks += [f"## {head}", "\n".join(_ticks(lines, found, kitchen))]
    if found.in_house:
        blocks.append("Check you have: " + plain(", ".join(in_house_text(line) for line in found.in_house)) + ".")
    blocks += [f"Have ready: {plain(ready_text(ready))}." for ready in found.ready]
    if sums := totals_text(costs, currency):
        blocks.append(plain(sums))
        if costs.unpriced:
            blocks.append(f"Not priced: {plain(unpriced_text(costs, kitchen))}.")
    return "\n\n".join(blocks) + "\n"


def _ticks(lines: Iterable[Line], found: MarketList, kitchen: Kitchen) -> Iterator[str]:
    currency = kitchen.settings.publish.currency
    for line in lines:
        paid = f" — {money(line.paid, currency)}" if line.paid is not None else ""
        where = places_text(line, found, kitchen, title_of) if len(found.dishes) > 1 else needed_text(line, kitchen)
        more = "; ".join(word for word in (where, weights_text(line, kitchen)) if word)
        yield f"- [ ] **{plain(buy_text(line, kitchen))}** {plain(name_text(line))}{paid}  \n  {plain(more)}"


def _row(name: str, line: Line, found: MarketList, kitchen: Kitchen) -> list[str]:
    used = money(line.used) if line.used is not None else ""
    paid = money(line.paid) if line.paid is not None else ""
    bought, prepared = ("" if grams is None else f"{float(grams):.6g}" for grams in line.weights)
    amounts = (buy_text(line, kitchen), needed_text(line, kitchen), bought, prepared, line.yield_source, used, paid)
    return [name, line.merchant, name_text(line), *amounts, places_text(line, found, kitchen, title_of), line.why]


def _line(line: Line, found: MarketList, kitchen: Kitchen) -> Data:
    return {
        "name": line.name,
        "goods": line.goods.id if line.goods else None,
        "merchant": line.merchant,
        "alternatives": list(line.alternatives),
        "buy": buy_text(line, kitchen),
        "packs": _figure(line.packs),
        "needed": needed_text(line, kitchen),
        "bought_g": _figure(line.weights.bought),
        "prepared_g": _figure(line.weights.prepared),
        "refuse": _refuse(line),
        "cost_used": _hundredths(line.used),
        "cost_to_buy": _hundredths(line.paid),
        "note": line.why,
        "places": [
            {
                "dish": place.dish,
                "amount": [_measure(measure) for measure in place.amount],
                "purposes": list(place.purposes),
            }
            for place in line.places
        ],
    }


def _refuse(line: Line) -> Data | None:
    """What is thrown away, in percent of the weight as bought, with its source; only where the list reckons with it."""
    if line.goods is None or line.goods.refuse is None or not line.yield_source or line.stated:
        return None
    return {"percent": float(line.goods.refuse), "source": line.goods.refuse_source}


def _measure(measure: Measure) -> Data:
    return {"lo": _figure(measure.amount.lo), "hi": _figure(measure.amount.hi), "unit": measure.unit}


def _figure(value: Fraction | None) -> Data | None:
    return None if value is None else {"exact": str(value), "value": float(f"{float(value):.6g}")}


def _hundredths(value: Fraction | None) -> int | None:
    return None if value is None else int(cents(value) * 100)
