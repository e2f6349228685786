"""Running the rules, and what a house or a cook has decided about them.

A rule states its usual level. The house may choose another in `kitchen.toml`, or turn the rule off; the
cook may silence it for one line of a recipe with `% allow RULE: reason`. Both hold for the findings of
every phase. An allow that silences nothing is told, or it would outlive its reason.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Mapping

from tamis.checks.echoes import told_once, without_echoes, without_made
from tamis.checks.registry import FAULTS, check_of, names, rules
from tamis.checks.signs import signs_of
from tamis.diagnostics import Diagnostic, Level, in_order
from tamis.syntax.document import Step
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tamis.checks.registry import Rule
    from tamis.checks.view import View
    from tamis.syntax.document import Comment, Document

_OF_ALLOWS = ("allow-unused", "allow-unknown")


def run_checks(view: View, earlier: Iterable[Diagnostic] = ()) -> tuple[Diagnostic, ...]:
    """All findings of a recipe, sorted.

    Those of the rules and of the phases before, levels and allows applied.
    """
    found, failed = _settled(rules(), view, earlier)
    return (*failed, *told_once(found))


def has_errors(view: View, earlier: Iterable[Diagnostic] = (), asked: Container[str] = FAULTS) -> bool:
    """Whether an error is among all findings of a recipe, by the rules that can find one.

    Where a house calls more of them errors, all are asked."""
    if "error" in view.kitchen.settings.checks.values():
        return _any_error(run_checks(view, earlier))
    found, failed = _settled(tuple([rule for rule in rules() if rule.name in asked]), view, earlier)
    return bool(failed) or _any_error(found)


def _settled(
    rules: tuple[Rule, ...], view: View, earlier: Iterable[Diagnostic]
) -> tuple[tuple[Diagnostic, ...], list[Diagnostic]]:
    """What some rules and the phases before find, levels and allows applied; and the rules that failed."""
    found, failed = run_each(rules, view, signs_of)
    findings = without_echoes([*without_made(earlier, view.recipe.takings), *found], view.source)
    return settle(findings, view.document, view.kitchen.settings.checks), failed


def run_each(
    rules: tuple[Rule, ...], scene: Any, signs: Callable[[Any, tuple[Rule, ...]], set[str]]
) -> tuple[list[Diagnostic], list[Diagnostic]]:
    """What the rules of whose `signs` a scene shows one find in it, and for each that failed on it that it did; of two
    failures at one place one is told.

    No level and no allow holds for a failure: nobody can have meant it.
    """
    found: list[Diagnostic] = []
    failed: list[Diagnostic] = []
    for name in _concerned(rules, scene, signs):
        try:
            found.extend(check_of(name)(scene))
        except Exception as error:
            from tamis.internal import internal_error

            failed.append(internal_error(error))
    return found, list(dict.fromkeys(failed))


def _concerned(rules: tuple[Rule, ...], scene: Any, signs: Callable[[Any, tuple[Rule, ...]], set[str]]) -> list[str]:
    """The rules of which a sign shows; all of them where the compiler fails on the signs: it fails there on a rule,
    too, which is told."""
    try:
        shown = signs(scene, rules) if rules else ()
    except Exception:
        return [rule.name for rule in rules]
    return [rule.name for rule in rules if not rule.about.isdisjoint(shown)]


def _any_error(findings: Iterable[Diagnostic]) -> bool:
    return any(finding.severity == "error" for finding in findings)


def settle(findings: list[Diagnostic], document: Document, levels: Mapping[str, Level]) -> tuple[Diagnostic, ...]:
    """The findings that are left, sorted, once the cook's allows and the house's levels are applied."""
    allows = [comment for comment in document.comments if comment.rule]
    kept = _allowed(findings, allows, document) if allows else findings
    return tuple(in_order(_levelled(kept, levels) if levels else kept))


def settle_more(
    settled: Iterable[Diagnostic], more: list[Diagnostic], document: Document, levels: Mapping[str, Level]
) -> tuple[Diagnostic, ...]:
    """Findings that are settled already, with more of the same file: an allow that silences one of these is used."""
    again = settle(more, document, levels)
    idle = {finding.span for finding in again if finding.rule == "allow-unused"}
    kept = [finding for finding in settled if finding.rule != "allow-unused" or finding.span in idle]
    return tuple(in_order([*kept, *(finding for finding in again if finding.rule not in _OF_ALLOWS)]))


def _levelled(findings: list[Diagnostic], levels: Mapping[str, Level]) -> list[Diagnostic]:
    levelled = []
    for finding in findings:
        level: Level = levels.get(finding.rule, finding.severity)
        if level != "off":
            levelled.append(finding._replace(severity=level))
    return levelled


def _allowed(findings: list[Diagnostic], allows: list[Comment], document: Document) -> list[Diagnostic]:
    """The findings that no allow silences, and one for each allow that silences none."""
    place = document.source.place
    first_line = _first_lines(document)
    spoken_for = _lines_spoken_for(document)
    silencers: dict[tuple[str, int], list[Comment]] = {}
    for allow in allows:
        silencers.setdefault((allow.rule, spoken_for[place(allow.span.start).line]), []).append(allow)
    used: set[Comment] = set()
    kept = []
    for finding in findings:
        line = place(finding.span.start).line
        silencing = silencers.get((finding.rule, first_line.get(line, line)), ())
        used.update(silencing)
        if not silencing:
            kept.append(finding)
    return kept + [_idle(allow) for allow in allows if allow not in used]


def _first_lines(document: Document) -> dict[int, int]:
    """For each line that continues an action: the line in which the action begins, which is spoken for as a whole."""
    place = document.source.place
    first: dict[int, int] = {}
    for component in (document.opening, *document.components):
        for block in component.blocks:
            for action in block.actions if isinstance(block, Step) else ():
                begin = place(action.span.start).line
                first.update(dict.fromkeys(range(begin + 1, place(action.span.end).line + 1), begin))
    return first


def _lines_spoken_for(document: Document) -> dict[int, int]:
    """For the line of each comment: the next that is none."""
    lines = [document.source.place(comment.span.start).line for comment in document.comments]
    following: dict[int, int] = {}
    for line in reversed(lines):
        following[line] = following.get(line + 1, line + 1)
    return following


def _idle(allow: Comment) -> Diagnostic:
    """An allow that silenced nothing: its rule does not exist, or it is not needed."""
    from tamis.quantity.near import nearest

    if allow.rule not in names():
        near = nearest(allow.rule, names())
        hint = f"did you mean `{near}`?" if near else ""
        return Diagnostic("allow-unknown", "error", allow.span, f"there is no rule “{allow.rule}”", hint)
    message = f"this allow comment has no effect: “{allow.rule}” finds nothing in the line below"
    return Diagnostic("allow-unused", "warning", allow.span, message, "take the comment out")
