"""Laws of scaling, on the demonstration recipes and on factors that hypothesis makes up."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.checks import registry
from tamis.checks.scaling._medium import staying
from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Time
from tamis.scaling.clauses import grows
from tamis.scaling.numbers import exact
from tamis.source import Source
from tamis.table.rows import Row
from tamis.table.scaled import countable

from .kitchen_table import KITCHEN, compiled, library, times

FACTORS = st.fractions(Fraction(1, 12), 12, max_denominator=12)
RECIPES = st.integers(0, 22).map(lambda at: library()[at % len(library())])


def rows(recipe: Compiled) -> Iterator[Row]:
    table = recipe.table
    yield from (*table.rows, *table.optional, *table.purposes)


def stays(row: Row, recipe: Compiled) -> bool:
    """Whether the oven or the pan decides how much of it is taken."""
    media = [medium.food for medium in staying(recipe.recipe, KITCHEN)]
    return any(use.item is food for use in row.uses for food in media)


def totals(recipe: Compiled) -> list[tuple[Measure, ...]]:
    return [row.total for row in rows(recipe)]


@given(RECIPES, FACTORS)
@settings(max_examples=40, deadline=None)
def test_the_table_grows_exactly(recipe: Compiled, factor: Fraction) -> None:
    wanted = [row.total if stays(row, recipe) else tuple(m.times(factor) for m in row.total) for row in rows(recipe)]
    assert totals(times(recipe, factor).compiled) == wanted


@given(RECIPES, st.sampled_from(["1/2", "2/3", "3/2", "2", "5/4", "7/3"]), st.sampled_from(["1/3", "3/4", "4", "8/5"]))
@settings(max_examples=25, deadline=None)
def test_twice_scaled_is_scaled_by_the_product(recipe: Compiled, first: str, second: str) -> None:
    twice = times(times(recipe, first).compiled, second)
    once = times(recipe, Fraction(first) * Fraction(second))
    assert totals(twice.compiled) == totals(once.compiled)


@given(RECIPES, FACTORS)
@settings(max_examples=15, deadline=None)
def test_there_and_back_is_the_same_table(recipe: Compiled, factor: Fraction) -> None:
    assert totals(times(times(recipe, factor).compiled, 1 / factor).compiled) == totals(recipe)


@pytest.mark.parametrize("recipe", library(), ids=lambda recipe: recipe.source.stem)
def test_by_one_nothing_changes(recipe: Compiled) -> None:
    made = times(recipe, 1)
    assert made.text == recipe.source.text
    assert made.compiled.table == recipe.table


@pytest.mark.parametrize("factor", ["1/2", "4/3", "2"])
@pytest.mark.parametrize("recipe", library(), ids=lambda recipe: recipe.source.stem)
def test_the_scaled_file_compiles_without_new_findings_and_gives_the_scaled_table(
    recipe: Compiled, factor: str
) -> None:
    """A used recipe that does not make enough is no fault of the text; what a tin is cut into stays as it is."""
    made = times(recipe, factor)
    known = {finding.rule for finding in recipe.findings} | {"product-used-up", "makes-disagrees"}
    again = made.compiled if recipe.used else compiled(made.text)
    assert {finding.rule for finding in again.findings} <= known
    assert totals(again) == totals(made.compiled)
    assert [row.name for row in rows(again)] == [row.name for row in rows(made.compiled)]


@pytest.mark.parametrize("recipe", library(), ids=lambda recipe: recipe.source.stem)
def test_times_and_tools_stay(recipe: Compiled) -> None:
    """All but a time by weight (`20 min per 500 g`), which goes by the joint, and how many tins or plates."""
    made = times(recipe, 2)
    for before, after in zip(recipe.recipe.actions, made.compiled.recipe.actions, strict=True):
        for old, new in zip(before.tools, after.tools, strict=True):
            assert new.clause.text == old.clause.text or (grows(old, KITCHEN) and new.number == 2 * old.number)
            assert (new.equipment, new.size, new.adjectives) == (old.equipment, old.size, old.adjectives)
        assert [setting.text for setting in before.settings] == [setting.text for setting in after.settings]
        by_weight = any(isinstance(read, Time) and read.per for read in before.reads)
        if before.work.given == "text" and not by_weight:
            assert before.work.wait == after.work.wait


@given(st.fractions(0, 5000, max_denominator=999), st.booleans())
def test_a_number_reads_back_as_itself(value: Fraction, decimals: bool) -> None:
    from tamis.quantity.number import parse

    assert parse(exact(value, decimals), "en") == value


@given(st.fractions(Fraction(1, 4), 200, max_denominator=100))
def test_a_count_is_shown_to_the_eighth_of_a_piece_or_five_in_a_hundred(value: Fraction) -> None:
    assert abs(countable(value) - value) <= max(Fraction(1, 8), value / 20)


@given(RECIPES, FACTORS)
@settings(max_examples=25, deadline=None)
def test_the_rules_find_the_same_errors_for_any_amount(recipe: Compiled, factor: Fraction) -> None:
    """So a scaled recipe is asked only what reading it and following its food found."""
    scaled = times(recipe, factor).compiled
    assert scaled.faulty == (recipe.faulty or scaled.misread)


@pytest.mark.parametrize("rule", registry.FAULTS)
def test_with_errors_that_rules_find(rule: str) -> None:
    text = registry.page(rule).bad["example.tamis"]
    assert isinstance(text, str)
    recipe = compile(Source("example.tamis", text), default_kitchen("en"), {})
    scaled = times(recipe, 3).compiled
    assert (recipe.faulty, recipe.misread, scaled.faulty, scaled.misread) == (True, False, True, False)
