"""The language page's two samples, from lines to a timeline; and that what is planned can be cooked."""

from __future__ import annotations

from datetime import datetime

import pytest

from tamis.model.recipe import Recipe
from tamis.timeline import Timeline, build_timeline, counted_back
from tamis.timeline.rows import Entry
from tamis.timeline.verify import faults

from .making import HOUR, KITCHEN, MIN
from .samples import custard, rye_batons


def row(timeline: Timeline, title: str) -> Entry:
    (found,) = [entry for entry in timeline.entries if entry.title.startswith(title)]
    return found


@pytest.fixture(scope="module")
def bread() -> Timeline:
    return build_timeline(rye_batons(), KITCHEN)


def test_the_poolish_is_at_the_head(bread: Timeline) -> None:
    first, second = bread.entries[:2]
    assert (first.title, first.start) == ("Stir rye flour", 0)
    assert (second.title, second.length, bread.components[second.component]) == ("Leave", "8–16 h", "Poolish")


def test_the_oven_heats_beside_the_last_rise(bread: Timeline) -> None:
    """(230 − 20) °C at 8 °C a minute is 26 min 15 s; the stone asks for 20 min more. It must be hot when the rise is
    at its shortest, and it is not lit a minute before it must be."""
    heat, prove, slide = row(bread, "Heat oven to 230 °C"), row(bread, "Prove"), row(bread, "Slide")
    assert heat.segments[-1].end - heat.segments[-1].start == 26 * MIN + 15 + 20 * MIN
    assert bread.entries.index(prove) in heat.beside
    assert heat.end == slide.start
    assert heat.most_end <= prove.segments[-1].most_start + 30 * MIN


def test_the_dry_flour_is_not_weighed_the_evening_before(bread: Timeline) -> None:
    whisk, mix = row(bread, "Whisk"), row(bread, "Mix")
    assert whisk.end == mix.start
    assert bread.entries.index(row(bread, "Leave")) in whisk.beside


def test_preparation_is_done_before_its_step(bread: Timeline) -> None:
    crush, add = row(bread, "Crush caraway seed"), row(bread, "Add")
    assert crush.part == "prepare" and crush.end <= add.start
    assert crush.estimated and crush.length == "≈ 2 min"


def test_rounds_are_one_row_and_call_the_cook_each_time(bread: Timeline) -> None:
    fold = row(bread, "Fold")
    assert fold.length == "2 × 30 min"
    assert [segment.hands for segment in fold.segments] == [True, False, True, False]
    assert fold.end - fold.start == 2 * (2 * MIN + 30 * MIN)


def test_totals(bread: Timeline) -> None:
    """By hand: 1 min stir, 20 s, 8 h; 30 s, 2 min mix; 20 s, 20 min rest; 30 s add; 5 min knead; 2 × 32 min; 20 s,
    60–90 min; 3 min; 1 min, 30–60 min; 1 min slide; 22–26 min; 30 s, 2 h. Whisking and crushing fit into waits."""
    lines = [60, 20, 30, 20, 30, 20, 180, 60, 60, 30]
    waits = [8 * HOUR, 2 * MIN, 20 * MIN, 5 * MIN, 64 * MIN, 60 * MIN, 30 * MIN, 22 * MIN, 2 * HOUR]
    assert bread.least == sum(lines) + sum(waits)
    assert bread.most - bread.least == (30 + 30 + 4) * MIN
    assert bread.hands_on == sum(lines) + 2 * 2 * MIN + 2 * MIN + 2 * MIN + 10
    assert bread.unattended == bread.least - bread.hands_on
    assert bread.sentence == "13 h 32 min to 14 h 36 min"


def test_counted_back_nobody_gets_up_at_night(bread: Timeline) -> None:
    plan = counted_back(bread, datetime(2026, 12, 20, 19, 0))
    assert plan.zero == datetime(2026, 12, 19, 22, 58, 40)
    assert plan.entries[-1].end == plan.plans[0].total
    plain = counted_back(bread, datetime(2026, 12, 20, 23, 0))
    assert plain.zero is not None and plain.zero.hour == 8


def test_the_yolks_are_whisked_while_the_milk_infuses() -> None:
    timeline = build_timeline(custard(), KITCHEN)
    infuse, whisk, bring = row(timeline, "Infuse"), row(timeline, "Whisk"), row(timeline, "Bring")
    assert infuse.start <= whisk.start and whisk.end <= bring.start
    assert whisk.beside == (timeline.entries.index(infuse),)
    assert not whisk.critical and infuse.critical


@pytest.mark.parametrize("recipe", [rye_batons(), custard()], ids=["bread", "custard"])
def test_plans_can_be_cooked(recipe: Recipe) -> None:
    timeline = build_timeline(recipe, KITCHEN)
    plans = [*timeline.forward]
    for hour in range(24):
        plans += counted_back(timeline, datetime(2026, 12, 20, hour, 0)).plans
    assert [faults(timeline.network, plan) for plan in plans] == [[] for _ in plans]
    assert timeline.stretched == ()
