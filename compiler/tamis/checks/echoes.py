"""Findings that only repeat another: one mistake is told once.

A bracket that is never closed hides what it holds; then a measure seems to stand outside, a component seems unused.
Such echoes are left out while their cause stands; once it is mended, what is still true is told.
"""

from __future__ import annotations

from tamis.diagnostics import Label
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from tamis.diagnostics import Diagnostic
    from tamis.model.recipe import Taking
    from tamis.source import Source, Span

_BRACKETS = ("bracket-unclosed", "bracket-nested", "bracket-stray", "clause-syntax", "clause-length")
_CLAUSES = (*_BRACKETS, "clause-role", "number-unclear", "unit-unknown", "unit-unclear")
_NAMES = ("product-unknown", "product-ambiguous", "flow-circle", "flow-depth", "uses-unknown", *_CLAUSES)

# Of a recipe without brackets there is nothing more to say, but that its file can be read.
WHOLE = "recipe-without-brackets"
OF_THE_FILE = ("not-text", "not-utf8")

_FOOD, _HAZARD = "unknown-ingredient", "hazard-unknown"

# rule -> causes anywhere in the file
IN_FILE: dict[str, tuple[str, ...]] = {
    "dish-unclear": _NAMES,
    "component-unused": _NAMES,
    "product-unused": _NAMES,
    "product-left-over": _NAMES,
    "product-unknown": _BRACKETS,
    "heated-not-used": _CLAUSES,
    "hazard-not-cleared": (
        *_NAMES,
        "batch-left-open",
        "product-used-up",
        "time-without-unit",
        "two-times",
        "verb-without-time",
    ),
    "raw-flour": (*_NAMES, "batch-left-open", "product-used-up", "verb-without-time", "time-without-unit"),
    "oven-without-temperature": (*_CLAUSES, "time-without-unit", "verb-without-time"),
    "amount-unlikely": (*_CLAUSES, "unit-missing"),
    "salt-band": _CLAUSES,
    "hydration-band": _CLAUSES,
    "yeast-band": _CLAUSES,
    "missing-yield": ("header-key", "missing-title", "header-line"),
}
# Their words may stand in brackets already in a hint that shows the whole line.
SHOWN = ("degrees-outside-brackets", "measure-outside-brackets", "time-outside-brackets", "vessel-outside-brackets")
# rule -> causes in the same line
IN_LINE: dict[str, tuple[str, ...]] = {
    "measure-outside-brackets": _BRACKETS,
    "food-not-bracketed": _CLAUSES,
    "verb-without-time": (*_CLAUSES, "time-without-unit", "range-reversed"),
    "missing-cue": _CLAUSES,
    "nothing-there": _CLAUSES,
}


def without_made(findings: Iterable[Diagnostic], takings: Iterable[Taking]) -> list[Diagnostic]:
    """The findings, less those of foods that no list knows where something made before is taken: *another sponge*."""
    kept = list(findings)
    if any(finding.rule == _FOOD for finding in kept):
        taken = [taking.span for taking in takings]
        kept = [one for one in kept if one.rule != _FOOD or not any(_is_within(one.span, span) for span in taken)]
    return kept


def told_once(findings: Sequence[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The findings, each food that no list knows but once, with the other places where it stands; not at all where its
    hazard is asked for there."""
    asked = {finding.span for finding in findings if finding.rule == _HAZARD}
    first: dict[str, int] = {}
    kept: list[Diagnostic] = []
    for finding in findings:
        if finding.rule != _FOOD:
            kept.append(finding)
        elif finding.message in first:
            at = first[finding.message]
            kept[at] = kept[at]._replace(labels=(*kept[at].labels, Label(finding.span, "here, too")))
        elif finding.span not in asked:
            first[finding.message] = len(kept)
            kept.append(finding)
    return tuple(kept)


def _is_within(one: Span, other: Span) -> bool:
    return other.start <= one.start and one.end <= other.end


def without_echoes(findings: list[Diagnostic], source: Source) -> list[Diagnostic]:
    """The findings, less those whose cause is told already."""
    rules = {finding.rule for finding in findings}
    if WHOLE in rules:
        return [finding for finding in findings if finding.rule in (WHOLE, *OF_THE_FILE)]
    if rules.isdisjoint((*IN_FILE, *IN_LINE, *SHOWN)):
        return findings
    hints = {
        source.place(finding.span.start).line: finding.hint
        for finding in findings
        if finding.rule == "verb-without-time"
    }
    lines = {(finding.rule, source.place(finding.span.start).line) for finding in findings}
    kept = []
    for finding in findings:
        line = source.place(finding.span.start).line
        echoes_file = any(cause in rules for cause in IN_FILE.get(finding.rule, ()))
        echoes_line = any((cause, line) in lines for cause in IN_LINE.get(finding.rule, ()))
        shown = finding.rule in SHOWN and f"[{source.slice(finding.span)}]" in hints.get(line, "")
        if not (echoes_file or echoes_line or shown):
            kept.append(finding)
    return kept
