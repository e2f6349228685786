"""Levels that a house chose, and lines that a cook silenced."""

from __future__ import annotations

from tamis.checks.run import settle
from tamis.diagnostics import Diagnostic
from tamis.source import Source, Span
from tamis.syntax.outline import parse

TEXT = """\
title: Oats
serves: 2

# Oats

% allow missing-quantity: as much as the bowl holds
% allow missing-cue: the oven decides
Stir [oats] and
  [bake for 20–30 min].
Add [milk].
"""


def settled(text: str, *found: tuple[str, str, str], **levels: str) -> list[tuple[str, str]]:
    """Rule and level of what is left of findings given as rule, level and the words they stand on."""
    source = Source("oats.tamis", text)
    document, _ = parse(source, "en")
    findings = []
    for rule, level, words in found:
        start = text.index(words)
        findings.append(Diagnostic(rule, level, Span(start, start + len(words)), "message"))  # type: ignore[arg-type]  # levels come as plain words here
    chosen = {rule.replace("_", "-"): level for rule, level in levels.items()}
    return [(finding.rule, finding.severity) for finding in settle(findings, document, chosen)]


def test_allow_speaks_for_the_next_line_and_its_continuation() -> None:
    found = (
        ("missing-quantity", "error", "[oats]"),
        ("missing-cue", "information", "[bake for 20–30 min]"),
        ("missing-quantity", "error", "[milk]"),
    )
    assert settled(TEXT, *found) == [("missing-quantity", "error")]


def test_unused_and_unknown_allows_are_told() -> None:
    text = TEXT.replace("missing-cue", "missing-queue")
    assert settled(text) == [("allow-unused", "warning"), ("allow-unknown", "error")]


def test_allow_of_another_rule_silences_nothing() -> None:
    assert ("two-times", "error") in settled(TEXT, ("two-times", "error", "[oats]"))


def test_a_house_chooses_levels() -> None:
    text = TEXT.replace("% allow", "% once")
    found = (("missing-cue", "information", "[bake"), ("two-times", "error", "[milk]"))
    assert settled(text, *found, missing_cue="error") == [("missing-cue", "error"), ("two-times", "error")]
    assert settled(text, *found, two_times="off") == [("missing-cue", "information")]
