"""Where the food of each line is, and what the line sets its station to (`places.case`)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.model.places import Here
from tamis.quantity.display import temperature_c
from tamis.source import Source
from tests.cases import Case, read_cases, rewrite

CASES = read_cases(Path(__file__).with_name("places.case"))


def place(here: Here, compiled: Compiled) -> str:
    """The batch of a line, its station by which evidence, how hot that is, and the clauses that say so here."""
    action = compiled.recipe.actions[here.action]
    said = [f"batch {here.batch}" if here.batch >= 0 else "no food"]
    if here.station:
        said.append(f"{here.station} ({here.rank})")
    if here.celsius is not None:
        said.append(temperature_c(here.celsius))
    if here.sets:
        said.append("by " + " ".join(compiled.source.slice(action.reads[knob.read].clause.span) for knob in here.sets))
    if here.stays:
        said.append(f"stays, since line {compiled.recipe.log[here.since].action}")
    if here.hot:
        said.append("full of hot liquid")
    words = " ".join(compiled.source.slice(action.span).split())
    return f"{words}\n    {', '.join(said)}"


def places(body: str) -> str:
    text = f"title: Trial\nserves: 2\n\n# Trial\n\n{body}"
    compiled = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    lines = [place(here, compiled) for here in compiled.recipe.places.lines]
    return "\n".join([*lines, *(f"{finding.severity}: {finding.rule}" for finding in compiled.findings)])


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_places(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, places)
        return
    assert places(case.given) == case.expected


@pytest.mark.parametrize(
    ("wait", "asked"),
    [
        ("[Leave for 5 h].", True),
        ("Carve and [leave for 5 h].", True),
        ("[Leave for 5 h] [at room temperature].", False),
        ("[Rest for 5 h].", False),
    ],
)
def test_what_is_left_after_baking_may_be_meant_to_stay_in_the_oven(wait: str, asked: bool) -> None:
    baked = "Mix [500 g minced beef] with [1 tsp salt].\n[Bake for 30 min at 200 °C] [until 72 °C inside].\n"
    source = Source("trial.tamis", f"title: Trial\nserves: 2\n\n# Trial\n\n{baked}{wait}\n")
    findings = compile(source, default_kitchen("en"), {}).findings
    hint = next(finding.hint for finding in findings if finding.rule == "warm-too-long")
    assert ("`[in the oven]`" in hint) is asked
