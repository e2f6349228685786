"""What is written must count: take a measure or a time out of a recipe, and something must be different.

A clause that can go without the table, the timeline or the findings taking notice was either not understood or says
nothing. The few that are so with good reason stand in `survivors.txt`, each with its reason.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
from kitchen_table import compiled, demo_texts, wholly_compiled, without_one_clause

from tamis.kitchen.house import default_kitchen
from tamis.reading.clauses import Cue, Ingredient, Time

if TYPE_CHECKING:
    from tamis.compile import Compiled

_SURVIVORS = Path(__file__).parent / "survivors.txt"
_PLACES = frozenset({"span", "action", "actions", "title"})
"""Where something stands shifts with every deletion, and a title repeats the words; that alone is no difference."""


def _without_places(data: Any) -> Any:
    if isinstance(data, dict):
        return {key: _without_places(value) for key, value in data.items() if key not in _PLACES}
    if isinstance(data, list | tuple):
        return [_without_places(value) for value in data]
    return data


def _table(result: Compiled) -> Any:
    from tamis.table.data import table_data

    return _without_places(table_data(result.table, result.equipment, default_kitchen("en")))


def _timeline(result: Compiled) -> Any:
    from tamis.timeline.data import timeline_data

    return _without_places(timeline_data(result.timeline))


def _said(result: Compiled) -> Counter[tuple[str, str]]:
    return Counter((finding.rule, finding.message) for finding in result.findings)


def _kinds(result: Compiled) -> dict[int, str]:
    """By the place of its bracket, what a clause should show in: `table` for a measure, `timeline` for a time."""
    kinds = {}
    for action in result.recipe.actions:
        for read in action.reads:
            if isinstance(read, Ingredient) and read.measured:
                kinds[read.clause.span.start] = "table"
            elif isinstance(read, Time) or (isinstance(read, Cue) and read.duration):
                kinds[read.clause.span.start] = "timeline"
    return kinds


@cache
def survivors(stem: str) -> tuple[str, ...]:
    """The clauses of a recipe that can go without a trace."""
    return tuple(sorted(set(_surviving(stem))))


def _surviving(stem: str) -> Iterator[str]:
    text = demo_texts()[stem]
    whole = compiled(stem, text)
    kinds, said = _kinds(whole), _said(whole)
    shows = {"table": _table, "timeline": _timeline}
    before = {kind: show(whole) for kind, show in shows.items()}
    for cut in without_one_clause(text):
        changed = wholly_compiled(stem, cut.text)
        kind = kinds.get(cut.start)
        if kind and shows[kind](changed) == before[kind] and not _said(changed) - said:
            yield text[cut.start : cut.end]


def _listed() -> dict[tuple[str, str], str]:
    """The list that is checked in: recipe, clause, reason, parted by tabs."""
    lines = _SURVIVORS.read_text(encoding="utf-8").splitlines()
    rows = [line.split("\t") for line in lines if line and not line.startswith("#")]
    return {(stem, clause): reason for stem, clause, reason in rows}


@pytest.mark.parametrize("stem", demo_texts())
def test_no_measure_or_time_can_go_without_a_trace(stem: str) -> None:
    listed = sorted(clause for name, clause in _listed() if name == stem)
    assert list(survivors(stem)) == listed, "new ones are faults; ones that no longer survive leave the list"


@pytest.mark.parametrize("stem", demo_texts())
def test_most_recipes_have_both_kinds(stem: str) -> None:
    """The law above would hold for a compiler that reads nothing; so there must be something that it holds for."""
    kinds = Counter(_kinds(compiled(stem, demo_texts()[stem])).values())
    assert kinds["table"] >= 3
    assert kinds["timeline"] >= 1


@pytest.mark.parametrize("stem", demo_texts())
def test_moving_the_text_is_no_difference(stem: str) -> None:
    """Nor may the law hold because something always differs: a comment more moves every place, and changes nothing."""
    text = demo_texts()[stem]
    whole, moved = compiled(stem, text), compiled(stem, f"% a comment more\n{text}")
    assert _table(moved) == _table(whole)
    assert _timeline(moved) == _timeline(whole)
    assert _said(moved) == _said(whole)


def test_every_survivor_is_of_a_recipe_that_exists_and_has_a_reason() -> None:
    for (stem, clause), reason in _listed().items():
        assert clause in demo_texts()[stem]
        assert len(reason.split()) >= 4
