"""The market list of dishes, and their cost: one computation, two ways to read it.

Who shops reads it merchant by merchant and buys whole packs; who prices a dish reads what the dish uses. Both come
from the same lines, so that the two can never disagree about what an onion costs.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from fractions import Fraction

from tamis.market.dishes import Dish, Ready, spread
from tamis.market.lines import Line, line_of
from tamis.market.money import cents
from tamis.market.needs import needs_of
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen


class Costs(NamedTuple):
    """What is used costs, and what must be bought; lines are rounded to the cent before they are added.

    `each` is the cost of what a portion uses; None for several dishes, or where the recipe does not say how many it
    serves. `unpriced` are the lines that count in neither sum, or only in part.
    """

    used: Fraction
    paid: Fraction
    portions: Fraction | None
    each: Fraction | None
    unpriced: tuple[Line, ...]


class MarketList(NamedTuple):
    """All that is wanted: `dishes` are those asked for and then those that they use; places point at them by index.

    `lines` are in the order of the merchants, within one by name. `optional` may be left out; `in_house` goes in
    without a measure; `ready` are dishes that must be there.
    """

    dishes: tuple[Dish, ...]
    lines: tuple[Line, ...]
    optional: tuple[Line, ...]
    in_house: tuple[Line, ...]
    ready: tuple[Ready, ...]

    def by_merchant(self) -> dict[str, list[Line]]:
        """The lines under their merchants, in order; what the goods do not know comes last."""
        groups: dict[str, list[Line]] = {}
        for line in self.lines:
            groups.setdefault(line.merchant, []).append(line)
        return groups

    @property
    def asked(self) -> tuple[Dish, ...]:
        """The dishes that the list is for."""
        return tuple(dish for dish in self.dishes if not dish.used_by)


def market_list(
    asked: Sequence[Dish], known: Mapping[str, Dish], kitchen: Kitchen, ready: Collection[str] = ()
) -> MarketList:
    """The list for these dishes.

    `known` are the recipes that they may use, by file stem; `ready` the stems of what is made already.
    """
    wanted = spread(asked, known, ready)
    needs = needs_of(wanted.dishes, kitchen)
    order = {name: at for at, name in enumerate(kitchen.larder.closed["merchant"])}

    def sorted_lines(foods: Sequence[Line]) -> tuple[Line, ...]:
        return tuple(sorted(foods, key=lambda line: (order.get(line.merchant, len(order)), line.name.casefold())))

    lines, optional, in_house = (sorted_lines([line_of(food, kitchen) for food in foods]) for foods in needs)
    return MarketList(wanted.dishes, lines, optional, in_house, wanted.ready)


def costs_of(found: MarketList) -> Costs:
    """What the dishes on the list cost."""
    priced = [line for line in found.lines if line.used is not None]
    used = sum((cents(line.used) for line in priced if line.used is not None), Fraction(0))
    paid = sum((line.paid for line in priced if line.paid is not None), Fraction(0))
    portions = found.asked[0].portions if len(found.asked) == 1 else None
    each = cents(used / portions) if portions else None
    unpriced = tuple(line for line in found.lines if line.used is None or line.uncounted)
    return Costs(used, paid, portions, each, unpriced)
