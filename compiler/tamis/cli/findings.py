"""Findings as a person reads them: place, rule, message, the words at fault, and a way out.

    recipes/buns.tamis:14:8: error: there is no unit “tbps” (unit-unknown)
       14 | Add [2 tbps sugar] and whisk.
          |        ^^^^
          > did you mean `tbsp`?

The first line is one that editors and terminals know how to jump to.
"""

from __future__ import annotations

from collections.abc import Iterable

from tamis.diagnostics import Diagnostic, Severity
from tamis.record import NamedTuple
from tamis.source import Source, Span
from tamis.typed import Any, Literal, TextIO

Finding = tuple[Source, Diagnostic]

Colour = Literal["error", "warning", "information", "quiet", "hint"]
_COLOURS: dict[Colour, str] = {"error": "1;31", "warning": "1;33", "information": "1;36", "quiet": "2", "hint": "32"}


_NO_COLOURS: Literal["dumb"] = "dumb"
"""What a terminal calls itself that has none."""


class Ink(NamedTuple):
    """Colour, where the reader is a terminal that wants it."""

    wet: bool = False

    def paint(self, text: str, colour: Colour) -> str:
        """The text, in the colour of a level."""
        return f"\x1b[{_COLOURS[colour]}m{text}\x1b[0m" if self.wet else text


DRY = Ink()


def ink_for(stream: TextIO) -> Ink:
    """Colour only on a terminal, never with NO_COLOR set (no-color.org) or on a terminal that is dumb."""
    import os

    wanted = not os.environ.get("NO_COLOR") and os.environ.get("TERM") != _NO_COLOURS
    return Ink(wanted and stream.isatty())


def as_text(source: Source, finding: Diagnostic, ink: Ink = DRY) -> str:
    """One finding, several lines, without a line end."""
    line, column = source.place(finding.span.start)
    level = ink.paint(finding.severity, finding.severity)
    lines = [f"{source.name}:{line}:{column}: {level}: {finding.message} ({finding.rule})"]
    lines += _marked(source, finding.span, "^", "", finding.severity, ink)
    for label in finding.labels:
        marked = _marked(source, label.span, "-", label.message, "quiet", ink)
        lines += marked if marked[0] not in lines else marked[1:]
    if finding.hint:
        lines.append("      " + ink.paint("> ", "hint") + finding.hint)
    if finding.fix and not (finding.fix.replacement and finding.fix.replacement in finding.hint):
        lines.append("      " + ink.paint("> ", "hint") + f"suggested fix: {finding.fix.title}")
    return "\n".join(lines)


def _marked(source: Source, span: Span, mark: str, message: str, colour: Colour, ink: Ink) -> list[str]:
    from tamis.cli.excerpt import excerpt

    part = excerpt(source, span)
    bar = ink.paint("|", "quiet")
    underline = ink.paint(mark * part.width, colour)
    return [
        f"{ink.paint(f'{part.line:>5}', 'quiet')} {bar} {part.text}",
        f"      {bar} {' ' * part.start}{underline} {message}".rstrip(),
    ]


def as_data(source: Source, finding: Diagnostic) -> dict[str, Any]:
    """One finding as plain data for JSON; lines and columns count from 1, in characters."""
    return {
        "file": source.name,
        "rule": finding.rule,
        "severity": finding.severity,
        **_place(source, finding.span),
        "message": finding.message,
        "hint": finding.hint,
        "labels": [{**_place(source, label.span), "message": label.message} for label in finding.labels],
        "fix": finding.fix
        and {
            **_place(source, finding.fix.span),
            "replacement": finding.fix.replacement,
            "title": finding.fix.title,
        },
    }


def _place(source: Source, span: Span) -> dict[str, int]:
    start, end = source.place(span.start), source.place(span.end)
    return {"line": start.line, "column": start.column, "end_line": end.line, "end_column": end.column}


def counts(findings: Iterable[Finding]) -> dict[Severity, int]:
    """How many findings there are of each level."""
    numbers: dict[Severity, int] = {"error": 0, "warning": 0, "information": 0}
    for _, finding in findings:
        numbers[finding.severity] += 1
    return numbers


def closing(numbers: dict[Severity, int], recipes: int) -> str:
    """The last line of a check: `12 recipes: 1 error, 2 warnings`, or that they are clean."""
    what = "1 recipe" if recipes == 1 else f"{recipes} recipes"
    said = [
        f"{number} {level}{'s' if number > 1 and level != 'information' else ''}"
        for level, number in numbers.items()
        if number
    ]
    if numbers["error"] or numbers["warning"]:
        return f"{what}: {', '.join(said)}"
    return f"{what}: clean" + (f", {said[0]}" if said else "")
