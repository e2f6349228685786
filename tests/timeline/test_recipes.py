"""Every recipe of the demo library has a timeline that can be cooked; the first sample's is the one promised."""

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
    return compile(source, default_kitchen(), {}).timeline


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.stem)
def test_plans_can_be_cooked(path: Path) -> None:
    timeline = timeline_of(path)
    back = counted_back(timeline, datetime(2026, 12, 20, 19, 0))
    for plan in (*timeline.forward, back.plans[0]):
        assert faults(timeline.network, plan) == []
    assert timeline.stretched == back.stretched == ()
    assert 0 < timeline.hands_on <= timeline.least <= timeline.most


def test_the_first_sample() -> None:
    timeline = timeline_of(next(path for path in RECIPES if path.stem == "harbour-rye-batons"))
    first = timeline.entries[0]
    assert (timeline.components[first.component], first.start) == ("Poolish", 0)
    (heat,) = [entry for entry in timeline.entries if entry.part == "heat"]
    assert "Lay them seam up, prove" in [timeline.entries[index].title for index in heat.beside]
    (slide,) = [entry for entry in timeline.entries if entry.title.startswith("Slide")]
    assert heat.end <= slide.start
