"""Laws of adding up, on foods that hypothesis makes up."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from tamis.model.recipe import Use
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, base, convert
from tamis.table.ingredients import build_table
from tamis.table.lines import lines
from tamis.table.worth import across

from .bench import KITCHEN, food, recipe

EXACT = {"mass": ("g", "kg", "oz", "lb"), "volume": ("ml", "l", "tsp", "tbsp", "cup", "pint"), "": ("", "clove")}
FRACTIONS = st.fractions(Fraction(1, 8), 40, max_denominator=8)
NAMES = st.sampled_from(["butter", "plain flour", "water", "moon milk"])


@st.composite
def measures(draw: st.DrawFn, units: tuple[str, ...]) -> Measure:
    """A measure in one of these units, single or a range."""
    lo, more = draw(FRACTIONS), draw(st.just(Fraction(0)) | FRACTIONS)
    return Measure(Amount(lo, lo + more), draw(st.sampled_from(units)))


@st.composite
def uses(draw: st.DrawFn, units: tuple[str, ...]) -> list[Use]:
    """Some uses of one food."""
    item = food("", draw(NAMES))
    made = []
    for _ in range(draw(st.integers(1, 6))):
        times = Fraction(draw(st.integers(1, 4)))
        made.append(Use(item._replace(measures=(draw(measures(units)),)), 0, 0, times=times))
    return made


@given(st.sampled_from(["mass", "volume"]).flatmap(lambda kind: uses(EXACT[kind])))
def test_the_total_is_the_sum_of_its_uses_exactly(given_uses: list[Use]) -> None:
    (row,) = build_table(recipe(Dish=[[use] for use in given_uses]), KITCHEN).rows
    wanted = [base(use.ingredient.measures[0].times(use.times), KITCHEN.units) for use in given_uses]
    (total,) = row.total
    lo, hi = sum(end.lo for end in wanted if end), sum(end.hi for end in wanted if end)
    assert base(total, KITCHEN.units) == Amount(Fraction(lo), Fraction(hi))


@given(uses(sum(EXACT.values(), ())))
def test_nothing_is_lost_between_kinds(given_uses: list[Use]) -> None:
    """What can be said in the first unit is in its sum, by density if need be; the rest makes sums of its own."""
    (row,) = build_table(recipe(Dish=[[use] for use in given_uses]), KITCHEN).rows
    unit, wanted, apart = row.total[0].unit, Fraction(0), set()
    for use in given_uses:
        measure = use.ingredient.measures[0].times(use.times)
        if exact := (measure if measure.unit == unit else convert(measure, unit, KITCHEN.units)):
            wanted += exact.amount.lo
        elif worth := across(measure, unit, row.first, KITCHEN):
            wanted += worth.measure.amount.lo
        else:
            known = KITCHEN.units.get(measure.unit)
            apart.add(known.kind if known else measure.unit)
    assert row.total[0].amount.lo == wanted
    assert len(row.total) == 1 + len(apart)


@given(uses(sum(EXACT.values(), ())))
def test_every_row_can_be_printed_and_always_reads_the_same(given_uses: list[Use]) -> None:
    made = recipe(Dish=[[use] for use in given_uses])
    table = build_table(made, KITCHEN)
    said = lines(table.rows, table, KITCHEN)
    assert said == lines(table.rows, build_table(made, KITCHEN), KITCHEN)
    assert all(line.amount and "0.3" not in line.us.split("cup")[0][-4:] for line in said)


@given(FRACTIONS)
def test_a_share_and_its_rest_make_the_whole(share: Fraction) -> None:
    part = share / 41
    first = Use(food("300 g", "plain flour"), 0, 0, fraction=part)
    rest = first._replace(fraction=1 - part, rest_of=0)
    (row,) = build_table(recipe(Dish=[[first], [rest]]), KITCHEN).rows
    assert row.total[0].amount.lo == 300
    assert sum(use.amount[0].amount.lo for use in row.uses) == 300
