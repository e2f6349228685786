"""A bread and a custard, from lines to a timeline; and that what is planned can be cooked."""

from __future__ import annotations

from datetime import datetime

import pytest

from tamis.model.recipe import Recipe
from tamis.reading.clauses import Tool
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.timeline import Timeline, build_timeline, counted_back
from tamis.timeline.rows import Entry
from tamis.timeline.verify import faults

from .making import HOUR, KITCHEN, MIN, Making, wait, work
from .samples import custard, rye_loaves


def row(timeline: Timeline, title: str) -> Entry:
    (found,) = [entry for entry in timeline.entries if entry.title.startswith(title)]
    return found


@pytest.fixture(scope="module")
def bread() -> Timeline:
    return build_timeline(rye_loaves(), KITCHEN)


def test_the_scald_is_at_the_head(bread: Timeline) -> None:
    crush, pour, leave = bread.entries[:3]
    assert (crush.title, crush.start) == ("Crush caraway seed", 0)
    assert pour.title.startswith("Pour") and bread.components[pour.component] == "Scald"
    assert (leave.title, leave.length, bread.components[leave.component]) == ("Leave", "4–18 h", "Scald")


def test_the_oven_heats_beside_the_last_rise(bread: Timeline) -> None:
    """(240 − 20) °C at 8 °C a minute is 27 min 30 s. It must be hot when the rise is at its shortest, and it is not
    lit a minute before it must be."""
    heat, prove, bake = row(bread, "Heat oven to 240 °C"), row(bread, "Prove"), row(bread, "Bake")
    assert heat.segments[-1].end - heat.segments[-1].start == 27 * MIN + 30
    assert bread.entries.index(prove) in heat.beside
    assert heat.end == bake.start
    assert heat.most_end <= prove.segments[-1].most_start + 45 * MIN


def test_a_stone_in_the_oven_takes_longer_to_heat() -> None:
    """(240 − 20) °C at 8 °C a minute, and 20 min more for the stone."""
    stone = KITCHEN.cupboard.find(["baking", "stone"])
    assert stone is not None
    tool = Tool(Clause("with a baking stone", Span(0, 1), "en"), "baking stone", stone.item)
    making = Making()
    making.component("Bread")
    making.line("Heat", work(10), heats="oven", sets=240, tools=(tool,))
    making.line("Bake", work(0, wait(15 * MIN), station="oven"), after=(0,))
    heat = row(build_timeline(making.recipe(), KITCHEN), "Heat")
    assert heat.segments[-1].end - heat.segments[-1].start == 27 * MIN + 30 + 20 * MIN


def test_the_dry_flour_is_not_weighed_the_day_before(bread: Timeline) -> None:
    whisk, knead = row(bread, "Whisk"), row(bread, "Knead")
    assert whisk.end == knead.start
    assert bread.entries.index(row(bread, "Leave")) in whisk.beside


def test_preparation_is_done_before_its_step(bread: Timeline) -> None:
    crush, pour = row(bread, "Crush caraway seed"), row(bread, "Pour")
    assert crush.part == "prepare" and crush.end <= pour.start
    assert crush.estimated and crush.length == "≈ 2 min"


def test_rounds_are_one_row_and_call_the_cook_each_time() -> None:
    making = Making()
    making.component("Dough")
    making.line("Fold", work(MIN, wait(40 * MIN)), times=3, at_once=False)
    fold = row(build_timeline(making.recipe(), KITCHEN), "Fold")
    assert fold.length == "3 × 40 min"
    assert [segment.hands for segment in fold.segments] == [True, False] * 3
    assert fold.end - fold.start == 3 * (MIN + 40 * MIN)


def test_totals(bread: Timeline) -> None:
    """By hand: 2 min crush, 2 min pour; 20 s, 4 h; 30 s, 8 min knead; 20 s, 75–90 min; 6 min divide; 20 s,
    45–60 min; 15 min; 10 s, 25–30 min; 30 s, 12 h. Whisking, greasing and heating the oven fit into waits."""
    lines = [120, 120, 20, 30, 20, 360, 20, 10, 30]
    waits = [4 * HOUR, 8 * MIN, 75 * MIN, 45 * MIN, 15 * MIN, 25 * MIN, 12 * HOUR]
    assert bread.least == sum(lines) + sum(waits)
    assert bread.most - bread.least == (15 + 15 + 5) * MIN
    assert bread.hands_on == sum(lines) + 2 * MIN + MIN + 10
    assert bread.unattended == bread.least - bread.hands_on
    assert bread.sentence == "19 h 1 min to 19 h 36 min, then keeps up to 2 days"


def test_counted_back_nobody_gets_up_at_night(bread: Timeline) -> None:
    """With every estimate at its longest the knead begins 15 h 30 min 50 s before the end. For an end at 11:00 that is
    the evening before, and four hours before it the scald. For an end at 23:00 the scald would fall into the night: it
    is made the evening before, its last touch at 23:00."""
    plan = counted_back(bread, datetime(2026, 12, 20, 11, 0))
    assert plan.zero == datetime(2026, 12, 19, 15, 24, 50)
    assert plan.entries[-1].end == plan.plans[0].total
    overnight = counted_back(bread, datetime(2026, 12, 20, 23, 0))
    assert overnight.zero == datetime(2026, 12, 19, 22, 55, 40)
    knead = next(entry for entry in overnight.entries if entry.title == "Knead")
    assert knead.start == 8 * HOUR + 33 * MIN + 30  # 07:29:10


def test_the_yolks_are_whisked_while_the_milk_infuses() -> None:
    timeline = build_timeline(custard(), KITCHEN)
    infuse, whisk, bring = row(timeline, "Infuse"), row(timeline, "Whisk"), row(timeline, "Bring")
    assert infuse.start <= whisk.start and whisk.end <= bring.start
    assert whisk.beside == (timeline.entries.index(infuse),)
    assert not whisk.critical and infuse.critical


@pytest.mark.parametrize("recipe", [rye_loaves(), custard()], ids=["bread", "custard"])
def test_plans_can_be_cooked(recipe: Recipe) -> None:
    timeline = build_timeline(recipe, KITCHEN)
    plans = [*timeline.forward]
    for hour in range(24):
        plans += counted_back(timeline, datetime(2026, 12, 20, hour, 0)).plans
    assert [faults(timeline.network, plan) for plan in plans] == [[] for _ in plans]
    assert timeline.stretched == ()
