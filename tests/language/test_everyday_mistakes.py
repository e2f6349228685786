"""Common mistakes, each with the messages a cook reads (`mistakes/*.case`)."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.cli.findings import as_text
from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source
from tests.cases import Case, find_cases, rewrite

FOLDER = Path(__file__).with_name("mistakes")
CASES = find_cases(FOLDER)


def messages(text: str) -> str:
    source = Source("cake.tamis", text)
    compiled = compile(source, default_kitchen(), {})
    return "\n".join(as_text(source, finding) for finding in compiled.findings) or "nothing"


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_messages(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, messages)
        return
    assert messages(case.given) == case.expected
