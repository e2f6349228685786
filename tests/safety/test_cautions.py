"""When the report warns of standing about and of raw dough, and what it says of foods that it does not know."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.safety.report import report_text
from tamis.source import Source
from tests.cases import Case, read_cases, rewrite

CASES = read_cases(Path(__file__).with_name("cautions.case"))
ASKED = ("rice", "leftovers", "leftovers-cold", "raw-dough", "hot-sugar", "steam", "nuts", "hot-tin")


def cautions(body: str) -> str:
    """The hazards of the report, and which of the cautions stand in it."""
    head = "" if body.startswith("#") else "# Trial\n\n"
    compiled = compile(Source("trial.tamis", f"title: Trial\nserves: 4\n\n{head}{body}"), default_kitchen("en"), {})
    hazards = report_text(compiled.safety, compiled.recipe).split("\n\n")[1].splitlines()[1:]
    found = [caution.key for caution in compiled.safety.cautions if caution.key in ASKED]
    return "\n".join([*(line.strip() for line in hazards), f"cautions: {', '.join(found) or 'none'}"])


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_cautions(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, cautions)
        return
    assert cautions(case.given) == case.expected
