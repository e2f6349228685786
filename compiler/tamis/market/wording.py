"""What the lines of a market list say, whoever prints them.

Terminal, Markdown, page and table of commas set the same words; the words are made here.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from tamis.market.dishes import Dish, Ready
from tamis.market.money import money
from tamis.market.yields import rounded_up
from tamis.quantity.amount import Amount
from tamis.quantity.display import number, written
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.quantity.weights import grams, millilitres
from tamis.table.scaled import countable, scaled_text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.market.lines import Line
    from tamis.market.market_list import Costs, MarketList

METRIC = {"g": 1, "kg": 1000}
UNKNOWN = "Other"
Label = Callable[[Dish], str]


def title_of(dish: Dish) -> str:
    """A dish by its title, where a guest reads."""
    return dish.title


def stem_of(dish: Dish) -> str:
    """A dish by its file, which is shorter, where the cook reads who called the file by it."""
    return dish.recipe.stem


def merchant_text(merchant: str) -> str:
    """A merchant as a heading."""
    return merchant[:1].upper() + merchant[1:] if merchant else UNKNOWN


def buy_text(line: Line, kitchen: Kitchen) -> str:
    """What to ask for: "2 × 500 g", "2 cans of 400 g", "450 g", "3"; without a pack what is needed, pieces whole."""
    if line.buy is None or line.sale is None or line.packs is None:
        return _whole(line, kitchen)
    if not line.sale.packed:
        return (grams if line.sale.unit == "g" else millilitres)(line.buy)
    return packs_text(line.packs, line.sale.label, kitchen.language)


def packs_text(packs: Fraction, label: str, language: str) -> str:
    """So many packs: "3", "500 g", "2 × 500 g", "2 bunches", "2 cans of 400 g"."""
    if not label:
        return number(packs)
    word, *rest = label.split(" ")
    if re.match(r"\d", label):
        return label if packs == 1 else f"{number(packs)} × {label}"
    one = nouns(language).singular(word)
    many = nouns(language).plural(one) if packs > 1 else one
    return " ".join((number(packs), many, *rest))


def needed_text(line: Line, kitchen: Kitchen) -> str:
    """What the recipes ask for, added up: "1 cup and 50 g"; empty where they give no measure."""
    return measures_text(line.needed, line.name, kitchen)


def measures_text(measures: tuple[Measure, ...], name: str, kitchen: Kitchen) -> str:
    """Sums of several kinds in words a kitchen has."""
    return " and ".join(scaled_text((measure,), name, kitchen.units) for measure in measures)


def weights_text(line: Line, kitchen: Kitchen) -> str:
    """The weight as bought and its edible portion, where both are known and the measure does not say so already."""
    bought, prepared = line.weights
    if line.each is not None and not line.needed[0].unit:
        return f"{written(line.each, kitchen.language)} each"
    if bought is None or prepared is None or bought == prepared:
        return ""
    said = {measure.amount.hi * METRIC.get(measure.unit, 0) for measure in line.needed[:1]}
    if bought in said:
        return f"{_about(prepared)} edible"
    return f"{_about(bought)} as bought" + ("" if prepared in said else f", {_about(prepared)} edible")


def places_text(line: Line, found: MarketList, kitchen: Kitchen, label: Label) -> str:
    """Where it goes: "duck-with-prunes 400 g; brown-stock ¼ for the tin"."""
    said = []
    for place in line.places:
        amount = measures_text(place.amount, line.name, kitchen)
        words = (label(found.dishes[place.dish]), amount, " and ".join(place.purposes))
        said.append(" ".join(word for word in words if word))
    return "; ".join(said)


def name_text(line: Line) -> str:
    """The food, with what may be taken instead."""
    return " or ".join((line.name, *line.alternatives))


def in_house_text(line: Line) -> str:
    """What goes in without a measure: "salt to taste", "rye flour for dusting"."""
    purposes = dict.fromkeys(purpose for place in line.places for purpose in place.purposes)
    return " ".join((line.name, *([" and ".join(purposes)] if purposes else [])))


def ready_text(ready: Ready) -> str:
    """A dish that must stand ready, for which, and why it is not shopped for."""
    times = "" if ready.times == 1 else f" × {factor_text(ready.times)}"
    return f"{ready.words}{times}, for {ready.dish} ({ready.why})"


def dish_text(dish: Dish) -> str:
    """A dish of the list with how much of it is made."""
    if dish.used_by:
        share = f"{factor_text(dish.factor)} of the recipe"
        return f"{dish.title}: {share}, for {dish.used_by}"
    portions = f", for {portions_text(dish.portions)}" if dish.portions else ""
    times = "" if dish.factor == 1 else f" (× {factor_text(dish.factor)})"
    return f"{dish.title}{portions}{times}"


def portions_text(portions: Fraction) -> str:
    """A number of portions: to the quarter, where a recipe was multiplied to something odd."""
    return number(countable(portions))


def factor_text(factor: Fraction) -> str:
    """How many times: "1½", "3/20"; an odd fraction in decimals."""
    return number(factor)


def totals_text(costs: Costs, currency: str) -> str:
    """The sums in a sentence; empty where nothing has a price."""
    if not costs.paid and not costs.used:
        return ""
    return f"Total {money(costs.paid, currency)}, of which {money(costs.used, currency)} is used."


def unpriced_text(costs: Costs, kitchen: Kitchen) -> str:
    """What counts in no sum, named with the reason; of what counts in part, how much does not."""
    reasons: dict[str, list[str]] = {}
    for line in costs.unpriced:
        reasons.setdefault(line.why or "it has no price", []).append(
            f"{measures_text(line.uncounted, line.name, kitchen)} {line.name}".lstrip()
        )
    return "; ".join(f"{', '.join(names)} ({why})" for why, names in reasons.items())


def price_text(line: Line, currency: str) -> str:
    """The price as the house gives it, with the pack: "£2.40 for 500 g", "£1.20 per kg"."""
    if line.goods is None or line.sale is None or not line.goods.price:
        return ""
    figure, _, rest = line.goods.price.partition(" ")
    shown = money(Fraction(figure), currency) if re.fullmatch(r"\d+(\.\d{1,2})?", figure) else figure
    if rest:
        return f"{shown} {rest}"
    if not line.sale.label:
        return f"{shown} each"
    return f"{shown} for {line.sale.label}" if line.sale.label[:1].isdigit() else f"{shown} for a {line.sale.label}"


def _about(g: Fraction) -> str:
    """A weight that rests on a share in whole per cent: no finer than the gram."""
    return grams(Fraction(round(g)) if g >= 10 else g)


def _whole(line: Line, kitchen: Kitchen) -> str:
    """What is needed, upper ends; single pieces rounded up, since no shop sells a third of an onion."""
    ends = []
    for measure in line.needed:
        hi = measure.amount.hi
        hi = rounded_up(hi, Fraction(1)) if kitchen.units.get(measure.unit) is None else hi
        ends.append(Measure(Amount(hi, hi), measure.unit))
    also = f" ({measures_text(line.also, '', kitchen)})" if line.also else ""
    return measures_text(tuple(ends), line.name, kitchen) + also
