"""Where each line's food is, whether it stays on the heat, and what that lets safety find (`places.case`)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.model.places import Here
from tamis.model.recipe import Action
from tamis.quantity.display import temperature_c
from tamis.quantity.times import wait
from tamis.source import Source
from tamis.timeline.titles import title
from tests.cases import Case, read_cases, rewrite

CASES = read_cases(Path(__file__).with_name("places.case"))


def place(action: Action, here: Here, language: str) -> str:
    """The station of a line, whether the food is still there at its end, and how long it waits."""
    said = f"heats {action.heats}" if action.heats else action.work.station or "no station"
    if here.preheat:
        said += f" at {temperature_c(here.preheat)}, heated by itself"
    if here.stays:
        said += ", stays"
    if action.work.wait is not None:
        said += f", {wait(action.work.wait)}"
    return f"{title(action, language)}: {said}"


def places(body: str) -> str:
    text = f"title: Trial\nserves: 2\n\n# Trial\n\n{body}"
    compiled = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    found = [f"{finding.severity}: {finding.rule}" for finding in compiled.findings]
    lines = [
        place(action, here, compiled.recipe.language)
        for action, here in zip(compiled.recipe.actions, compiled.recipe.places.lines, strict=True)
    ]
    return "\n".join([*lines, *found])


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_places(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, places)
        return
    assert places(case.given) == case.expected
