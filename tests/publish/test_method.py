"""How the steps of a page are set: an action a line, numbered through."""

from __future__ import annotations

import re

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.publish.method import method_of
from tamis.publish.page import recipe_page
from tamis.source import Source

from .samples import Writer

TWO_PARTS = """title: Toast
serves: 1

# Butter

Stir [50 g soft butter] and [a pinch of salt] [in a bowl].
[Cool for 10 min, then chill for 1 h].

# Toast

[Toast] [2 slices of bread] [under the grill] [for 3 min].

Spread with [the butter].
Eat [at once].
"""


def steps_of(library: Writer) -> str:
    opened = library(toast=TWO_PARTS)
    html = recipe_page(opened.entries[0].compiled, opened.kitchen, set())
    return html[html.index('<section class="method"') :]


def test_an_action_has_a_line_of_its_own(library: Writer) -> None:
    items = re.findall(r"<li[^>]*>(.*?)</li>", steps_of(library), re.DOTALL)
    lines = [[re.sub(r"<[^>]+>", "", line) for line in item.split('<span class="line">')[1:]] for item in items]
    assert [len(each) for each in lines[:3]] == [2, 1, 2]
    assert [line.strip() for line in lines[2]] == ["Spread with the butter.", "Eat at once."]


def test_steps_are_numbered_through(library: Writer) -> None:
    assert re.findall(r"<ol([^>]*)>", steps_of(library))[:2] == ["", ' start="2"']


def test_the_printed_timeline_has_every_row_of_the_drawing(library: Writer) -> None:
    compiled = library(toast=TWO_PARTS).entries[0].compiled
    rows = re.findall(r"<li><b>([^<]+)</b> (.) ([^<]+)</li>", steps_of(library))
    assert len(rows) == len(compiled.timeline.entries) > 3
    assert rows[0][0] == "0:00"
    assert [what for _, _, what in rows if what.startswith("Toast: ")]
    for (_, mark, what), entry in zip(rows, compiled.timeline.entries, strict=True):
        assert entry.title in what
        assert (mark == "●") == (entry.hands == "all")


CLAUSES = [
    # sugar and oil are read off a thermometer, whatever else the line sets
    ("Heat [400 g sugar] with [200 ml milk] [over high heat] [until 116 °C, 10–12 min].", "116 °C (241 °F)"),
    ("Boil [400 g sugar] with [50 ml water] [over a medium heat] [to 145 °C].", "145 °C (293 °F)"),
    ("[Boil for 5 min over high heat] [400 g sugar] with [50 ml water] [until 118 °C].", "118 °C (245 °F)"),
    ("Heat [1 l sunflower oil] [in a pan] [on high] [to 186 °C].", "186 °C (367 °F)"),
    # and the stone off another than the oven's
    ("Heat [the oven] [to 230 °C] [until the stone reads 216 °C].", "216 °C (421 °F)"),
    # a knob has every fifth degree
    ("Heat [the oven] [to 230 °C] [until the stone reads 216 °C].", "230 °C (450 °F)"),
    ("[Bake for 20 min at 175 °C] [400 g potatoes].", "175 °C (350 °F)"),
    ("Bake [400 g potatoes] [at 175 °C] [until 99 °C inside].", "175 °C (350 °F)"),
    ("Roast [400 g potatoes] [in the oven] [for 20 min] [to 175 °C].", "175 °C (350 °F)"),
]


@pytest.mark.parametrize(("line", "said"), CLAUSES)
def test_degrees_are_a_knob_s_by_their_own_clause(line: str, said: str) -> None:
    compiled = compile(Source("dish.tamis", f"title: Dish\nserves: 2\n\n# Dish\n\n{line}\n"), default_kitchen("en"), {})
    (section,) = method_of(compiled.recipe, compiled.table, default_kitchen("en"))
    assert said in section.steps[0].plain


RESTS = """title: Dough
serves: 4

Mix [half of 300 g bread flour] and [a third of 300 g rye flour] [in a bowl].
Add [the rest of the bread flour] and [the rest of the rye flour].
"""


def test_each_rest_has_the_weight_of_its_own_food() -> None:
    kitchen = default_kitchen("en")
    compiled = compile(Source("dough.tamis", RESTS), kitchen, {})
    (section,) = method_of(compiled.recipe, compiled.table, kitchen)
    assert section.steps[0].plain.endswith("the rest of the bread flour (150 g) and the rest of the rye flour (200 g).")
