"""Running the rules, and what a house or a cook has decided about them.

A rule states its usual level. The house may choose another in `kitchen.toml`, or turn the rule off; the
cook may silence it for one line of a recipe with `% allow RULE: reason`. Both hold for the findings of
every phase. An allow that silences nothing is told, or it would outlive its reason.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TYPE_CHECKING, cast

from tamis.checks.registry import checks, names
from tamis.diagnostics import Diagnostic, Severity, in_order
from tamis.quantity.near import nearest

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.syntax.document import Comment, Document


def run_checks(view: View, earlier: Iterable[Diagnostic] = ()) -> tuple[Diagnostic, ...]:
    """All findings of a recipe, sorted.

    Those of the rules and of the phases before, levels and allows applied.
    """
    findings = list(earlier)
    for check in checks():
        findings.extend(check(view))
    return settle(findings, view.document, view.kitchen.settings.checks)


def settle(findings: list[Diagnostic], document: Document, levels: Mapping[str, str]) -> tuple[Diagnostic, ...]:
    """The findings that are left, sorted, once the cook's allows and the house's levels are applied."""
    allows = [comment for comment in document.comments if comment.rule]
    kept = _allowed(findings, allows, document) if allows else findings
    return tuple(in_order(_levelled(kept, levels) if levels else kept))


def _levelled(findings: list[Diagnostic], levels: Mapping[str, str]) -> list[Diagnostic]:
    levelled = []
    for finding in findings:
        level = levels.get(finding.rule, finding.severity)
        if level != "off":
            levelled.append(finding._replace(severity=cast("Severity", level)))
    return levelled


def _allowed(findings: list[Diagnostic], allows: list[Comment], document: Document) -> list[Diagnostic]:
    place = document.source.place
    spoken_for = _lines_spoken_for(allows, document)
    used: set[int] = set()
    kept = []
    for finding in findings:
        line = place(finding.span.start).line
        silencers = [
            index for index, allow in enumerate(allows) if allow.rule == finding.rule and line in spoken_for[index]
        ]
        used.update(silencers)
        if not silencers:
            kept.append(finding)
    unused = (allow for index, allow in enumerate(allows) if index not in used)
    return kept + [_idle(allow) for allow in unused]


def _lines_spoken_for(allows: list[Comment], document: Document) -> list[range]:
    """The lines of each allow: the next that is no comment, with the lines that continue its action."""
    place = document.source.place
    comments = {place(comment.span.start).line for comment in document.comments}
    ends: dict[int, int] = {}
    for component in (document.opening, *document.components):
        for block in component.blocks:
            for action in getattr(block, "actions", ()):
                ends[place(action.span.start).line] = place(action.span.end).line
    spoken_for = []
    for allow in allows:
        line = allow.line
        while line in comments:
            line += 1
        spoken_for.append(range(line, ends.get(line, line) + 1))
    return spoken_for


def _idle(allow: Comment) -> Diagnostic:
    """An allow that silenced nothing: its rule does not exist, or it is not needed."""
    if allow.rule not in names():
        near = nearest(allow.rule, names())
        hint = f"did you mean `{near}`?" if near else ""
        return Diagnostic("allow-unknown", "error", allow.span, f"there is no rule “{allow.rule}”", hint)
    message = f"nothing is silenced here: “{allow.rule}” finds nothing in the line below"
    return Diagnostic("allow-unused", "warning", allow.span, message, "take the comment out")
