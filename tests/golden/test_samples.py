"""What two recipes of the demo library must give, worked out by hand: a bread and a custard on the hob."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.quantity.measure import grams, millilitres
from tamis.reading.clauses import Cue
from tamis.source import Source

RECIPES = Path(__file__).parents[2] / "recipes"
KITCHEN = default_kitchen("en")


def compiled(stem: str) -> Compiled:
    return compile(Source(stem, (RECIPES / f"{stem}.tamis").read_text("utf-8")), KITCHEN, {})


@pytest.fixture(scope="module")
def bread() -> Compiled:
    return compiled("harbour-rye-tin-loaves")


@pytest.fixture(scope="module")
def custard() -> Compiled:
    return compiled("vanilla-custard")


def test_both_are_clean(bread: Compiled, custard: Compiled) -> None:
    assert [f for f in (*bread.findings, *custard.findings) if f.severity != "information"] == []


def test_water_and_rye_flour_are_added_up(bread: Compiled) -> None:
    for name, sum_of_two in (("water", 510), ("rye flour", 240)):
        row = bread.table.row(name)
        assert row is not None
        total = grams(row.total[0], KITCHEN.units)
        assert total is not None and total.lo == total.hi == sum_of_two
        assert len(row.uses) == 2 and row.divided


def test_flour_in_grams_and_cups(bread: Compiled) -> None:
    row = bread.table.row("bread flour")
    assert row is not None
    weight, cups = grams(row.total[0], KITCHEN.units), millilitres(row.also[0], KITCHEN.units)
    assert weight is not None and weight.lo == 480
    # NIST Handbook 44: a cup is half a US pint.
    assert cups is not None and cups.lo == Fraction(7, 2) * Fraction(473176473, 2000000)


def test_oil_for_the_tins_and_flour_for_the_bench_stand_apart(bread: Compiled) -> None:
    assert [(row.name, row.purposes) for row in bread.table.purposes] == [
        ("sunflower oil", ("for greasing",)),
        ("rye flour", ("for dusting",)),
    ]


def test_pieces_have_a_weight(bread: Compiled) -> None:
    """The dough by hand: 300 + 140 + 6.7 of scald, 480, 100, 7, 15 and 210 g: some 1259 g, in two."""
    dough = next(product for product in bread.recipe.products if product.name == "Dough")
    assert 1250 < dough.mass.lo == dough.mass.hi < 1265
    divided = next(action for action in bread.recipe.actions if action.piece_mass)
    assert divided.piece_mass is not None
    assert divided.piece_mass.lo * 2 == dough.mass.lo


def test_the_scald_heads_the_timeline(bread: Compiled) -> None:
    first = min(bread.timeline.entries, key=lambda entry: entry.segments[0].start)
    assert bread.recipe.components[bread.recipe.actions[first.action].component].name == "Scald"


def test_the_oven_heats_beside_the_last_rise(bread: Compiled) -> None:
    actions = bread.recipe.actions
    heating = next(action for action in actions if action.heats == "oven")
    assert heating.beside is not None and heating.before is not None
    assert "prove" in [use.verb.base for use in actions[heating.beside].verbs]
    by_action = {entry.action: entry for entry in bread.timeline.entries}
    warm, prove = by_action[heating.number].segments[-1], by_action[heating.beside].segments[-1]
    assert warm.end <= by_action[heating.before].segments[0].start
    assert warm.end > prove.start


def test_the_oven_is_turned_down_without_a_pause(bread: Compiled) -> None:
    """240 °C, then 200 °C with the loaves inside: the second bake follows the first at once."""
    hot, lower = [action for action in bread.recipe.actions if "bake" in [use.verb.base for use in action.verbs]]
    assert [target.celsius.lo for target in lower.targets if target.celsius] == [200]
    by_action = {entry.action: entry for entry in bread.timeline.entries}
    assert by_action[lower.number].start == by_action[hot.number].end
    assert by_action[lower.number].most_start == by_action[hot.number].most_end


def test_the_yolks_reach_82_degrees_with_all_the_milk_and_not_before(custard: Compiled) -> None:
    recipe = custard.recipe
    hot = [
        action.number
        for action in recipe.actions
        for read in action.reads
        if isinstance(read, Cue) and read.celsius and read.celsius.lo == 82
    ]
    assert len(hot) == 1
    yolks = next(at for at, use in enumerate(recipe.uses) if "yolk" in use.ingredient.name)
    (milk,) = [product for product in recipe.products if product.kind == "share"]
    parts = [t for t in recipe.takings if recipe.products[t.product] is milk]
    assert [taking.fraction for taking in parts] == [Fraction(1, 3), Fraction(2, 3)]
    assert parts[0].action < hot[0] and parts[1].action == hot[0]
    joins = [t.action for t in recipe.takings if yolks in recipe.products[t.product].uses]
    assert joins == [parts[0].action]
    dish = next(product for product in recipe.products if product.dish)
    assert dish.mass.lo == sum((recipe.uses[use].mass.lo for use in dish.uses), Fraction(0))
    assert "vanilla pod" not in {recipe.uses[use].ingredient.name for use in dish.uses}
