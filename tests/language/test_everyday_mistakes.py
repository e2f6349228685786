"""Common mistakes, each with the messages a cook reads (`mistakes/*.case`)."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tamis.cli.findings import as_text
from tamis.compile import compile
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.reading.clause_reader import read_clause
from tamis.source import Source, Span
from tamis.syntax.document import Clause
from tests.cases import Case, find_cases, rewrite

FOLDER = Path(__file__).with_name("mistakes")
CASES = find_cases(FOLDER)


def messages(text: str) -> str:
    source = Source("cake.tamis", text)
    compiled = compile(source, default_kitchen("en"), {})
    return "\n".join(as_text(source, finding) for finding in compiled.findings) or "nothing"


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_messages(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, messages)
        return
    assert messages(case.given) == case.expected


HINTS = {line for case in CASES for line in case.expected.splitlines() if line.startswith("      > ")}
ADVICE = sorted({advised for hint in HINTS for advised in re.findall(r"`([^`]*\[[^`]*\][^`]*)`", hint)})


@pytest.mark.parametrize("advised", [text for text in ADVICE if "…" not in text])
def test_what_is_advised_can_be_read(advised: str) -> None:
    """A hint shows a clause or a line: copied into a recipe, it is no next mistake."""
    for clause in re.findall(r"\[([^\]]*)\]", advised):
        findings: list[Diagnostic] = []
        records = read_clause(Clause(clause, Span(0, len(clause) + 2), "en"), default_kitchen("en"), findings)
        assert records and not [finding for finding in findings if finding.severity == "error"], clause
