"""The timeline in its three forms: for the terminal, as data, as a picture."""

from __future__ import annotations

import json
import re
from datetime import datetime
from itertools import pairwise
from xml.etree import ElementTree

import pytest

from tamis.assets import asset_text
from tamis.timeline import Timeline, build_timeline
from tamis.timeline.clock import after, clock, day, from_zero
from tamis.timeline.data import timeline_data
from tamis.timeline.scale import Scale
from tamis.timeline.svg import timeline_svg
from tamis.timeline.text import timeline_text
from tests.table.schema import faults

from .making import HOUR, KITCHEN, MIN, Making, wait, work
from .samples import custard, rye_loaves

READY = datetime(2026, 12, 20, 11, 0)
SVG = "{http://www.w3.org/2000/svg}"

CUSTARD = """\
Poured custard
29 min to 32 min; hands-on 14 min

     0:00  ◐* 5 min      Warm
     0:06  ○* 10–30 min  Infuse
     0:12  ●  4 min      Whisk egg yolk  (beside infuse)
     0:16  ◐* 4 min      Bring
     0:20  ●* ≈ 1 min    Pour
     0:21  ●* 6–9 min    Cook
0:27–0:30  ●* ≈ 1 min    Strain

● hands-on   ◐ hands-on, then unattended   ○ unattended
≈ estimated by tamis   * a delay here delays the dish
"""

BREAD_BACK = """\
Harbour rye tin loaves
ready Sun 20 Dec 11:00, estimates at their longest

Sat 19 Dec
15:25  ●* ≈ 2 min    Scald: Crush caraway seed
15:27  ●* ≈ 2 min    Pour rye flour, caraway seed
15:29  ◐* 4–18 h     Leave
19:27  ●  ≈ 2 min    Dough: Whisk bread flour  (beside leave)
"""


@pytest.fixture(scope="module")
def bread() -> Timeline:
    return build_timeline(rye_loaves(), KITCHEN)


def test_text_from_zero() -> None:
    said = timeline_text(build_timeline(custard(), KITCHEN))
    assert said == CUSTARD


def test_text_counted_back(bread: Timeline) -> None:
    assert timeline_text(bread, READY).startswith(BREAD_BACK)


@pytest.mark.parametrize("ready", [None, READY])
@pytest.mark.parametrize("width", [60, 80, 120])
def test_text_keeps_to_its_width(bread: Timeline, ready: datetime | None, width: int) -> None:
    assert max(map(len, timeline_text(bread, ready, width).splitlines())) <= width


def test_what_comes_late_is_said() -> None:
    """A gravy that takes longer than the rest: the carving cannot follow at once."""
    making = Making()
    making.component("Roast")
    making.line("Rest", work(0, wait(10 * MIN, 12 * MIN)))
    making.line("Stir", work(15 * MIN), beside=0, before=2)
    making.line("Carve", work(5 * MIN), after=(0,), at_once=True)
    timeline = build_timeline(making.recipe(), KITCHEN)
    assert timeline.stretched == (2,)
    assert "! Carve: cannot be done as soon as the recipe asks" in timeline_text(timeline)


def test_a_last_window_tells_how_long_the_dish_keeps() -> None:
    making = Making()
    making.component("Kraut")
    making.line("Pack", work(40 * MIN))
    making.line("Ferment", work(0, wait(3 * HOUR)), after=(0,))
    making.line("Keep", work(0, wait(0, 28 * 24 * HOUR, True)), after=(1,))
    assert build_timeline(making.recipe(), KITCHEN).sentence == "3 h 40 min, then keeps up to 4 weeks"


def test_the_header_tells_it_where_no_window_does() -> None:
    making = Making(keeps="3 days in a tin")
    making.component("Cake")
    making.line("Beat", work(40 * MIN))
    assert build_timeline(making.recipe(), KITCHEN).sentence == "40 min, then keeps 3 days in a tin"


@pytest.mark.parametrize("ready", [None, READY])
@pytest.mark.parametrize("recipe", ["bread", "custard", "empty"])
def test_data_has_the_form_of_its_schema(recipe: str, ready: datetime | None) -> None:
    made = {"bread": rye_loaves, "custard": custard, "empty": Making().recipe}[recipe]()
    schema = json.loads(asset_text("grammar/schema/timeline.schema.json"))
    data = json.loads(json.dumps(timeline_data(build_timeline(made, KITCHEN), ready)))
    assert list(faults(data, schema, schema)) == []


def test_data_of_the_start_are_to_the_nearest_minute() -> None:
    making = Making()
    making.component("Jelly")
    making.line("Set", work(0, wait(10 * MIN + 31)))
    data = timeline_data(build_timeline(making.recipe(), KITCHEN), READY)
    assert (data["start"], data["entries"][0]["clock"]["start"]) == ("2026-12-20T10:49", "2026-12-20T10:49")


def test_data_of_a_row(bread: Timeline) -> None:
    """Two minutes of crushing, two of pouring, 20 s of covering, then four hours."""
    leave = timeline_data(bread)["entries"][2]
    assert leave["least"] == {"start": 240, "end": 240 + 20 + 4 * HOUR}
    assert leave["segments"][1]["until"] == 260 + 18 * HOUR
    assert (leave["hands"], leave["estimated"], leave["critical"]) == ("some", False, True)


def test_svg_is_well_formed_and_speaks(bread: Timeline) -> None:
    root = ElementTree.fromstring(timeline_svg(bread))
    assert root.get("role") == "img"
    named = {child.get("id"): child.text or "" for child in root if child.tag in (SVG + "title", SVG + "desc")}
    assert set((root.get("aria-labelledby") or "").split()) == set(named)
    assert named["tl-title"] == "Timeline of Harbour rye tin loaves"
    assert "0:04 Leave, 4–18 h" in named["tl-desc"]


def test_svg_has_a_bar_for_every_stretch_inside_the_picture(bread: Timeline) -> None:
    root = ElementTree.fromstring(timeline_svg(bread))
    bars = [bar for group in root.findall(SVG + "g") for bar in group.findall(SVG + "rect")]
    for bar in bars:
        left, width = (float((bar.get(name) or "").rstrip("%")) for name in ("x", "width"))
        assert left >= 0 and width > 0 and left + width <= 100.01
    kinds = [bar.get("class") for bar in bars]
    segments = [segment for entry in bread.entries for segment in entry.segments]
    assert kinds.count("tl-hands") == sum(segment.hands for segment in segments)
    assert kinds.count("tl-wait") == sum(not segment.hands for segment in segments)
    assert kinds.count("tl-more") == 3 and kinds.count("tl-slack") == 1


def test_svg_rows_stand_by_time_and_long_labels_are_cut_for_a_narrow_screen_only() -> None:
    """The sauce is written first and begun last; within it what is written second starts first."""
    making = Making()
    making.component("Sauce")
    making.line("Simmer", work(0, wait(10 * MIN)), after=(2,))
    making.component("Meat")
    making.line("Parade the shoulder with the onions and the carrots and the leeks", work(0, wait(30 * MIN)))
    making.line("Rest", work(0, wait(5 * MIN)), after=(1,))
    root = ElementTree.fromstring(timeline_svg(build_timeline(making.recipe(), KITCHEN)))
    texts = [text for text in root.iter(SVG + "text") if text.get("class") != "tl-tick"]
    assert [text.text for text in texts if text.get("class") == "tl-name"] == ["Meat", "Sauce"]
    said = {name: [text.text or "" for text in texts if text.get("class") == name] for name in ("tl-long", "tl-short")}
    assert len(said["tl-long"]) == 1
    for long, short in zip(said["tl-long"], said["tl-short"], strict=True):
        assert short.endswith("…") and long.startswith(short[:-1]) and len(short) < len(long)


def test_svg_escapes_what_a_cook_wrote() -> None:
    making = Making("Salt & <pepper>")
    making.component("A & B")
    making.line('Crack "big" <lumps>', work(60))
    making.component("C")
    making.line("Sift", work(60))
    said = timeline_svg(build_timeline(making.recipe(), KITCHEN))
    root = ElementTree.fromstring(said)
    assert root.findtext(SVG + "title") == "Timeline of Salt & <pepper>"
    assert "A & B" in [text.text for text in root.iter(SVG + "text")]


def test_svg_colours_stand_in_variables_only(bread: Timeline) -> None:
    said = timeline_svg(bread)
    assert re.search(r'(fill|stroke)="(?!url)', said) is None
    assert "<script" not in said
    sizes = [int(size) for size in re.findall(r"font-size:(\d+)px", said)]
    assert sizes and min(sizes) >= 11


def test_no_work_no_picture() -> None:
    assert timeline_svg(build_timeline(Making().recipe(), KITCHEN)) == ""


def test_scale_keeps_order_and_lets_a_minute_be_seen() -> None:
    moments = [0, MIN, 12 * HOUR, 12 * HOUR + 5 * MIN, 20 * HOUR]
    scale = Scale(moments)
    places = [scale(moment) for moment in moments]
    assert places == sorted(places) and (places[0], places[-1]) == (0, 100)
    assert scale(MIN) - scale(0) > 0.5
    assert scale(0) < scale(6 * HOUR) < scale(12 * HOUR)


def test_ticks_stand_apart() -> None:
    scale = Scale([0, MIN, 12 * HOUR, 12 * HOUR + 5 * MIN, 20 * HOUR])
    places = [scale(tick) for tick in scale.ticks()]
    assert len(places) > 3
    assert all(b - a >= 13 for a, b in pairwise(places))


@pytest.mark.parametrize("hours", [1, 3, 5, 20, 90])
def test_ticks_are_round_times(hours: int) -> None:
    ticks = Scale([0, hours * HOUR]).ticks()
    assert len(ticks) > 3 and all(tick % (5 * MIN) == 0 for tick in ticks)


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(0, "0:00"), (29, "0:00"), (30, "0:01"), (28860, "8:01"), (86399, "1 d 0:00"), (90000, "1 d 1:00")],
)
def test_clock_from_zero(seconds: int, said: str) -> None:
    assert from_zero(seconds) == said


def test_clock_by_the_wall() -> None:
    moment = after(datetime(2026, 12, 31, 23, 50), 20 * MIN)
    assert (day(moment), clock(moment)) == ("Fri 1 Jan", "00:10")
