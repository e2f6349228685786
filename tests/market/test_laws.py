"""Laws of market lists: linear before packs, additive, never short, and the same every time."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.kitchen.house import Kitchen
from tamis.market.data import list_csv, list_data, list_markdown
from tamis.market.dishes import Dish
from tamis.market.market_list import MarketList, costs_of, market_list
from tamis.market.money import CENT, cents
from tamis.market.text import cost_text, list_text
from tamis.market.yields import as_purchased, edible_portion, rounded_up
from tests.market.stall import demo

KITCHEN: Kitchen
KITCHEN, DISHES = demo()
FACTORS = st.fractions(min_value=Fraction(1, 8), max_value=12, max_denominator=24)
STEMS = st.sampled_from(sorted(DISHES))
# A recipe that another on the list uses is made once for both: additive only where neither uses the other.
ALONE = st.sampled_from(sorted(stem for stem, dish in DISHES.items() if not dish.table.supplied))


def listed(*dishes: Dish) -> MarketList:
    return market_list(dishes, DISHES, KITCHEN)


def amounts(found: MarketList) -> dict[str, Fraction]:
    """What is needed of each food in the unit of sale, exact."""
    return {line.goods.id: line.amount for line in found.lines if line.goods and line.amount is not None}


def used(found: MarketList) -> dict[str, Fraction]:
    """The exact cost of what is used of each food."""
    return {line.goods.id: line.used for line in found.lines if line.goods and line.used is not None}


@given(STEMS, FACTORS)
@settings(max_examples=40, deadline=None)
def test_cost_is_linear_before_packs(stem: str, factor: Fraction) -> None:
    once, many = used(listed(DISHES[stem])), used(listed(DISHES[stem]._replace(factor=factor)))
    assert many == {food: cost * factor for food, cost in once.items()}
    assert many, "every recipe of the house has something with a price"


@given(ALONE, ALONE, FACTORS)
@settings(max_examples=40, deadline=None)
def test_a_list_of_two_is_the_sum(one: str, other: str, factor: Fraction) -> None:
    first, second = DISHES[one], DISHES[other]._replace(factor=factor)
    both, apart = amounts(listed(first, second)), [amounts(listed(first)), amounts(listed(second))]
    sums = {food: sum((each.get(food, Fraction(0)) for each in apart), Fraction(0)) for food in {*apart[0], *apart[1]}}
    assert both == sums


@given(STEMS, FACTORS)
@settings(max_examples=40, deadline=None)
def test_never_short_and_never_a_whole_pack_too_many(stem: str, factor: Fraction) -> None:
    for line in listed(DISHES[stem]._replace(factor=factor)).lines:
        if line.buy is not None and line.amount is not None and line.sale is not None:
            assert line.amount <= line.buy < line.amount + line.sale.step
            assert line.packs == int(line.packs or 0)


@given(STEMS)
@settings(max_examples=20, deadline=None)
def test_the_column_adds_up_to_the_sum_below_it(stem: str) -> None:
    found = listed(DISHES[stem])
    costs = costs_of(found)
    assert costs.used == sum((cents(cost) for cost in used(found).values()), Fraction(0))
    assert abs(costs.used - sum(used(found).values(), Fraction(0))) <= len(found.lines) * CENT / 2
    whole = [line for line in found.lines if line.used is not None and not line.uncounted]
    assert len(costs.unpriced) + len(whole) == len(found.lines)


@given(
    st.fractions(min_value=0, max_value=10**4, max_denominator=1000),
    st.fractions(min_value=Fraction(1, 100), max_value=1, max_denominator=100),
    st.fractions(min_value=Fraction(1, 100), max_value=1000, max_denominator=100),
)
def test_there_and_back(weight: Fraction, share: Fraction, step: Fraction) -> None:
    assert edible_portion(as_purchased(weight, share), share) == weight
    up = rounded_up(weight, step)
    assert up >= weight and (up / step).denominator == 1 and up - weight < step


def test_the_same_every_time_and_in_any_order_of_dishes() -> None:
    dishes = list(DISHES.values())
    one, again = listed(*dishes), listed(*dishes)
    for form in (list_text, cost_text, list_markdown, list_csv, list_data):
        assert form(one, KITCHEN) == form(again, KITCHEN)
    assert amounts(one) == amounts(listed(*reversed(dishes)))
