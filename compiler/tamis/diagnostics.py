"""What the compiler has to say about a recipe.

One record serves the terminal, JSON, the page and the editor. A phase returns its findings beside its value; it
never raises for what a cook wrote.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import Literal

Severity = Literal["error", "warning", "information"]
Level = Literal["error", "warning", "information", "off"]
"""What a house may say of a rule."""

RANK: dict[Severity, int] = {"error": 0, "warning": 1, "information": 2}


INTERNAL_ERROR: Literal["internal-error"] = "internal-error"
"""The rule of a finding that the compiler makes of its own failure."""


class Label(NamedTuple):
    """A second place that explains the first."""

    span: Span
    message: str


class Fix(NamedTuple):
    """A change that mends the finding for certain: `replacement` goes where `span` was."""

    span: Span
    replacement: str
    title: str


class Diagnostic(NamedTuple):
    """One finding: the rule it comes from, how grave it is, the words at fault, and a way out.

    `message` says what was found and what was expected; `hint` is advice, apart from it.
    """

    rule: str
    severity: Severity
    span: Span
    message: str
    hint: str = ""
    labels: tuple[Label, ...] = ()
    fix: Fix | None = None


def in_order(findings: list[Diagnostic]) -> list[Diagnostic]:
    """Findings by place, the graver first where two share one, each only once."""
    return sorted(set(findings), key=lambda d: (d.span, RANK[d.severity], d.rule, d.message))
