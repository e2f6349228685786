"""What other recipes make: when it must be there, and by when its own recipe is begun."""

from __future__ import annotations

from datetime import datetime

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.timeline.data import timeline_data
from tamis.timeline.text import timeline_text

READY = datetime(2026, 12, 20, 19, 0)
BONES = """\
title: Bone stock
makes: 1 l

# Stock

Simmer [1 kg beef bones] [in 2 l water] [in a stockpot] [for 4 h].
Strain.
"""
GLAZE = """\
title: Glaze
makes: 200 ml
uses: bones

# Glaze

Boil [1 l of the bone stock] [in a saucepan] [for 30 min].
"""
DISH = """\
title: Leeks
serves: 2
uses: glaze

# Leeks

Fry [4 leeks, sliced] in [20 g butter] [in a frying pan] [for 10 min].
Add [100 ml of the glaze] and simmer [for 5 min].
"""


def made(stem: str, text: str, *used: Compiled) -> Compiled:
    supplies = {other.source.stem: other.supply for other in used}
    return compile(Source(f"{stem}.tamis", text, stem), default_kitchen("en"), supplies)


@pytest.fixture
def bones() -> Compiled:
    return made("bones", BONES)


@pytest.fixture
def leeks(bones: Compiled) -> Compiled:
    return made("leeks", DISH, made("glaze", GLAZE, bones))


def test_a_used_recipe_leads_up_to_what_takes_it(bones: Compiled) -> None:
    glaze = made("glaze", GLAZE, bones)
    assert bones.timeline.lead == (bones.timeline.least, bones.timeline.most)
    (need,) = glaze.timeline.needs
    assert (need.recipe, need.text) == ("bones", "1 l of the bone stock")
    assert (need.least, need.most) == bones.timeline.lead
    # the stock is wanted at the very beginning, so all its time comes before
    assert need.start == 0
    assert glaze.timeline.lead[1] == bones.timeline.most + glaze.timeline.most


def test_what_a_used_recipe_uses_counts(leeks: Compiled, bones: Compiled) -> None:
    (need,) = leeks.timeline.needs
    assert need.most is not None
    assert need.most > bones.timeline.most > 4 * 3600
    # the glaze goes in after ten minutes at the stove: by so much the whole is shorter than both in turn
    assert need.most_start >= 10 * 60
    assert leeks.timeline.lead[1] == leeks.timeline.most + need.most - need.most_start


def test_counted_back_it_says_when_to_begin(leeks: Compiled) -> None:
    said = timeline_text(leeks.timeline, READY, 200)
    head = said.splitlines()[2]
    assert head.startswith("have ready by Sun 20 Dec 18:5")
    assert "100 ml of the glaze; begin its own recipe" in head
    (need,) = timeline_data(leeks.timeline, READY)["needs"]
    by, begin = (datetime.fromisoformat(need["clock"][key]) for key in ("by", "begin"))
    assert by < READY
    # both are told to the minute
    assert abs((by - begin).total_seconds() - need["takes"]["most"]) <= 60


def test_what_is_made_by_no_known_recipe_is_only_named() -> None:
    alone = made("leeks", DISH)
    assert alone.timeline.needs == ()
    supply = made("glaze", GLAZE).supply._replace(takes=None)
    unknown = compile(Source("leeks.tamis", DISH, "leeks"), default_kitchen("en"), {"glaze": supply})
    assert unknown.timeline.sentence.endswith("have ready 100 ml of the glaze")
    assert "begin" not in timeline_text(unknown.timeline, READY, 200)
