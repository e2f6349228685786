"""How the steps of a page are set: an action a line, numbered through."""

from __future__ import annotations

import re

from tamis.publish.page import recipe_page

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
