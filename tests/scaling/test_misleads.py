"""Where a factor misleads, and where it does not (`misleads.case`)."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tamis.scaling.misleads import misleading
from tests.cases import Case, read_cases, rewrite

from .kitchen_table import KITCHEN, one_line

CASES = read_cases(Path(__file__).with_name("misleads.case"))


def said(body: str) -> str:
    recipe = one_line(body.rstrip())
    text = recipe.source.text
    lines = []
    for finding in misleading(recipe, Fraction(3), KITCHEN):
        places = [finding.span, *(label.span for label in finding.labels)]
        lines.append(f"{finding.message} ({finding.rule})")
        lines += [f"  {text[place.start : place.end]}" for place in places]
    return "\n".join(lines) or "nothing"


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_misleads(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, said)
        return
    assert said(case.given) == case.expected
