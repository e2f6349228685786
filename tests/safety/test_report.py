"""What `tamis safety` says of hazards and allergens (`report.case`)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.safety.report import report_text
from tamis.source import Source
from tests.cases import Case, read_cases, rewrite

CASES = read_cases(Path(__file__).with_name("report.case"))


def said(text: str) -> str:
    compiled = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    _, hazards, allergens, *_ = report_text(compiled.safety, compiled.recipe).split("\n\n")
    return "\n".join([*hazards.splitlines()[1:], *allergens.splitlines()[1:]])


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_report(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, said)
        return
    assert said(case.given) == case.expected
