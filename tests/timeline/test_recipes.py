"""Every recipe of the demo library has a timeline that can be cooked."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.timeline import Timeline, counted_back
from tamis.timeline.verify import faults

RECIPES = sorted((Path(__file__).parents[2] / "recipes").glob("*.tamis"))


def timeline_of(path: Path) -> Timeline:
    source = Source(path.name, path.read_text(encoding="utf-8"))
    return compile(source, default_kitchen("en"), {}).timeline


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_plans_can_be_cooked(path: Path) -> None:
    timeline = timeline_of(path)
    back = counted_back(timeline, datetime(2026, 12, 20, 19, 0))
    for plan in (*timeline.forward, back.plans[0]):
        assert faults(timeline.network, plan) == []
    assert timeline.stretched == back.stretched == ()
    assert 0 < timeline.hands_on <= timeline.least <= timeline.most


def test_the_rye_loaves() -> None:
    timeline = timeline_of(next(path for path in RECIPES if path.stem == "harbour-rye-tin-loaves"))
    first = timeline.entries[0]
    assert (timeline.components[first.component], first.start) == ("Scald", 0)
    (heat,) = [entry for entry in timeline.entries if entry.part == "heat" and entry.title.startswith("Heat oven")]
    assert "Cover, prove" in [timeline.entries[index].title for index in heat.beside]
    (bake,) = [entry for entry in timeline.entries if entry.title == "Bake"]
    assert heat.end <= bake.start
