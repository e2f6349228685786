"""Everyday clauses, each with the role that a cook means by it (`clauses.tsv`; comments there argue the hard ones)."""

from pathlib import Path

import pytest

from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import VerbUse
from tamis.source import Span
from tamis.syntax.document import Clause

LIST = Path(__file__).with_name("clauses.tsv")
CASES = [line.split("\t")[:2] for line in LIST.read_text("utf-8").splitlines() if line and not line.startswith("#")]
# Clauses whose role is plain and whose words are at fault all the same: they are told.
FAULTY = {"1,5 kg flour": "number-unclear", "1,000 g flour": "number-unclear", "1 T oil": "unit-unclear"}


def clause_of(text: str) -> Clause:
    return Clause(text, Span(0, len(text) + 2), "en")


@pytest.mark.parametrize(("text", "role"), CASES)
def test_record(text: str, role: str) -> None:
    """A clause with a role becomes a record of that role, or is told; one without a role is always told."""
    findings: list[Diagnostic] = []
    records = read_clause(clause_of(text), default_kitchen("en"), findings)
    if role == "words":
        assert (records, [finding.rule for finding in findings]) == ((), ["words-only"])
        return
    faults = [finding.rule for finding in findings if finding.severity == "error"]
    if role == "error" or text in FAULTY:
        assert records == ()
        assert faults == [FAULTY.get(text, "clause-role")]
    else:
        assert [record.role for record in records if not isinstance(record, VerbUse)][-1:] == [role]
        assert faults == []


def test_every_role_is_listed() -> None:
    from typing import get_args

    from tamis.reading.clauses import Role

    assert {role for _, role in CASES} >= set(get_args(Role))
