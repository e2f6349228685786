"""Clauses in the words of working cooks (`cooks/*.tsv`), with what their records hold or what is said of them."""

from pathlib import Path

import pytest

from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import default_kitchen
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import VerbUse
from tamis.source import Span
from tamis.syntax.document import Clause


def _cases() -> list[tuple[str, str, str]]:
    found = []
    for path in sorted(Path(__file__).with_name("cooks").glob("*.tsv")):
        lines = path.read_text("utf-8").splitlines()
        rows = [line.split("\t") for line in lines if line and not line.startswith("#")]
        found += [(row[0], row[1], row[2] if len(row) > 2 else "") for row in rows]
    return found


@pytest.mark.parametrize(("text", "role", "said"), _cases())
def test_clause(text: str, role: str, said: str) -> None:
    findings: list[Diagnostic] = []
    records = read_clause(Clause(text, Span(0, len(text) + 2), "en"), default_kitchen("en"), findings)
    if role == "words":
        assert (records, [(finding.rule, said in finding.hint) for finding in findings]) == ((), [("words-only", True)])
        return
    errors = [finding for finding in findings if finding.severity == "error"]
    if role == "error":
        assert records == ()
        assert [said in error.hint for error in errors] == [True]
        return
    record = [record for record in records if not isinstance(record, VerbUse)][-1]
    assert (record.role, errors) == (role, [])
    for pair in filter(None, said.split("; ")):
        field, _, value = pair.partition("=")
        assert str(getattr(record, field)) == value


def test_a_measure_beside_a_splash_is_its_measure() -> None:
    text = "a good splash of its water (about 150 ml)"
    (record,) = read_clause(Clause(text, Span(0, len(text) + 2), "en"), default_kitchen("en"), [])
    share = getattr(record, "share")  # noqa: B009  # one of many records
    assert share.kind == "measure"
    assert (share.measure.amount.lo, share.measure.unit) == (150, "ml")


def test_the_weight_of_a_piece_is_kept() -> None:
    text = "into 6 balls of 90 g each"
    (record,) = read_clause(Clause(text, Span(0, len(text) + 2), "en"), default_kitchen("en"), [])
    each = getattr(record, "each")  # noqa: B009  # one of many records
    assert (each.amount.lo, each.unit) == (90, "g")
