"""What the rows of a plan say (the case files beside this)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tamis.timeline.text import timeline_text
from tests.cases import Case, read_cases, rewrite

CASES = [case for path in sorted(Path(__file__).parent.glob("*.case")) for case in read_cases(path)]


def rows(body: str) -> str:
    makes = ""
    if body.startswith("makes: "):  # a line of the header
        makes, _, body = body.partition("\n\n")
    heading = "" if body.startswith("# ") else "# Trial\n\n"
    text = f"title: Trial\nserves: 2\n{makes}\n\n{heading}{body}"
    compiled = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    _, _, _, *lines = timeline_text(compiled.timeline).splitlines()
    return "\n".join(line.rstrip() for line in lines[: lines.index("")])


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_rows(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, rows)
        return
    assert rows(case.given) == case.expected
