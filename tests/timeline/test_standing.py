"""Counted back over a night, a plan may leave food in the room: then it says so."""

from __future__ import annotations

from datetime import datetime

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.timeline import counted_back
from tamis.timeline.data import timeline_data
from tamis.timeline.standing import standings
from tamis.timeline.text import timeline_text
from tamis.timeline.verify import faults

LAMB = """\
title: Lamb
serves: 6

# Lamb

Rub [1 lamb shoulder (2–2.4 kg)] with [20 g fine salt] [in a large dish].
Cover and [marinate overnight] [in the fridge].
Take it out and [leave for 1 h].

# Roast

Put [the lamb] [in a roasting tin].
[Roast for 6 h] [at 150 °C] [until 93 °C inside].
"""


@pytest.mark.parametrize(("hour", "stands"), [(13, True), (15, False), (19, False)])
def test_raw_meat_over_a_night_is_told(hour: int, stands: bool) -> None:
    timeline = compile(Source("lamb.tamis", LAMB), default_kitchen("en"), {}).timeline
    ready = datetime(2026, 12, 25, hour, 0)
    found = counted_back(timeline, ready).standing
    assert [(gap.action, gap.next_action) for gap in found] == ([(3, 4)] if stands else [])
    assert ("! Put lamb in a roasting tin: then stands" in timeline_text(timeline, ready, 200)) is stands
    assert len(timeline_data(timeline, ready)["standing"]) == stands
    assert all(gap.seconds > 2 * 3600 for gap in found)


def test_from_zero_nothing_waits_for_the_morning() -> None:
    assert compile(Source("lamb.tamis", LAMB), default_kitchen("en"), {}).timeline.standing == ()


FRITTERS = """\
title: Fritters
serves: 2

# Fritters

Whisk [200 g plain flour] with [2 eggs] [in a bowl] [for 10 min].
[At once], pour [into a baking dish] and [bake for 30 min] [at 200 °C] [until firm].
"""


@pytest.mark.parametrize(("hour", "sooner"), [(19, False), (7, True)])
def test_what_is_done_before_it_was_wished_for_is_told(hour: int, sooner: bool) -> None:
    timeline = compile(Source("fritters.tamis", FRITTERS), default_kitchen("en"), {}).timeline
    said = timeline_text(timeline, datetime(2026, 12, 25, hour, 20), 200)
    assert ("as nothing is planned outside the waking hours" in said) is sooner


LOAF = """\
title: Loaf
makes: 1 loaf

# Dough

Whisk [500 g bread flour] with [7 g instant yeast] and [10 g fine salt] [in a bowl].
Add [320 g water] and [knead for 10 min] [until smooth].
Cover and [rise for 1 h].

# Loaf

Shape [the dough] [for 30 min].
[Bake for 40 min] [at 230 °C] [until browned].
"""


@pytest.mark.parametrize(("seconds", "stands"), [(7200, False), (7201, True)])
def test_dough_stands_after_its_wait(seconds: int, stands: bool) -> None:
    """The work behind the wait comes so much later: that of another component, which so takes the dough up."""
    kitchen = default_kitchen("en")
    compiled = compile(Source("loaf.tamis", LOAF), kitchen, {})
    network, plan = compiled.timeline.network, compiled.timeline.shortest
    wait = next(at for at, task in enumerate(network.tasks) if task.action == 2 and task.part == "wait")
    late = plan.end(wait) + seconds
    starts = tuple(late if task.action == 3 else start for task, start in zip(network.tasks, plan.starts, strict=True))
    found = standings(compiled.recipe, network, plan._replace(starts=starts), kitchen)
    assert [(gap.action, gap.next_action, gap.seconds) for gap in found if gap.action == 2] == (
        [(2, 3, seconds)] if stands else []
    )


BEANS = """\
title: Bean cakes
serves: 4

# Beans

Cover [300 g dried white beans] with [cold water] [in a bowl] and [soak for 8–12 h].
Drain, and [boil for 1 h] [in 2 l water, for boiling] [in a large pan] [until tender].
Drain, and mash them.

# Cakes

Melt [200 g butter] [in a pan].
Stir in [the beans] and [fry for 5 min].
"""
BUNS = """\
title: Buns
makes: 12 buns

# Dough

Mix [500 g bread flour] with [7 g instant yeast], [10 g fine salt] and [320 g water] [in a bowl].
Cover and [chill for 8–12 h].

# Buns

Divide [the dough] [into 12 pieces].
[Prove for 20 min].
[Bake for 20 min at 200 °C] [in the oven] [until brown].
"""


@pytest.mark.parametrize("text", [BEANS, BUNS])
def test_a_window_is_as_long_as_it_may_be_where_food_would_stand(text: str) -> None:
    """Begun in the evening for the afternoon: the beans soak till late in the morning, and do not stand boiled from
    seven o'clock on."""
    timeline = compile(Source("trial.tamis", text), default_kitchen("en"), {}).timeline
    timeline = counted_back(timeline, datetime(2026, 12, 25, 15, 0))
    network, plan = timeline.network, timeline.plans[0]
    window = next(at for at, task in enumerate(network.tasks) if task.kind == "window")
    after = next(link.b for link in network.links if link.a == window and not link.from_start)
    assert plan.starts[after] - plan.starts[window] == 12 * 3600
    assert faults(network, plan) == []
