"""From the lines of a paragraph to actions: which line continues which, and the clauses in them."""

from __future__ import annotations

from tamis.diagnostics import Diagnostic, Fix, Label
from tamis.patterns import pattern
from tamis.record import made
from tamis.source import Source, Span
from tamis.syntax.brackets import Pairing, pair_brackets
from tamis.syntax.document import Action, Clause, Part, Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.syntax.document import Line

_OPENING = "[(“\"‘'"
_CLAUSE = pattern(r"\[([^\[\]]*)\]")
_LIST_MARK = pattern(r"(?:\d{1,3}[.)]|[-*•])[ \t]+(?=\S)")
_MARKS = ("-", "*", "•")
_TOO_LONG = 2_000
# A number without end is told as a number, whatever the length of its clause.
_ENDLESS_NUMBER = pattern(r"[0-9]{100}")


def actions_of(source: Source, lines: list[Line], findings: list[Diagnostic], language: str) -> list[Action]:
    """The actions of a paragraph; a comment between two lines parts them."""
    spans: list[Span] = []
    fresh = True
    for line in lines:
        if line.kind == "COMMENT":
            fresh = True
            continue
        end = line.span.start + len(line.text.rstrip())
        if spans and not fresh and _continues(line.text):
            spans[-1] = Span(spans[-1].start, end)
        else:
            spans.append(Span(line.span.start, end))
        fresh = False
    return [action_of(source, span, findings, language) for span in spans]


def _continues(text: str) -> bool:
    """Whether a line goes on with the one above: it begins with white space or with a small letter."""
    return text[:1].isspace() or text.lstrip(_OPENING)[:1].islower()


def action_of(source: Source, span: Span, findings: list[Diagnostic], language: str) -> Action:
    """One action: its text cut into plain words and clauses."""
    text = source.text
    first = text[span.start : span.start + 1]
    if (first in _MARKS or first.isdigit()) and (mark := _LIST_MARK.match(text, span.start, span.end)):
        _report_list_mark(Span(mark.start(), mark.end()), findings)
    parts = _simple_parts(text, span, language) or _parts(text, span, findings, language)
    return Action(tuple(parts), span)


def _simple_parts(text: str, span: Span, language: str) -> list[Part] | None:
    """The parts of a line whose brackets all stand in pairs; None for another, or where a clause is too long."""
    said = text[span.start : span.end]
    pieces = _CLAUSE.split(said)
    if not len(pieces) // 2 == said.count("[") == said.count("]") or "\\" in said:
        return None
    parts: list[Part] = []
    at = span.start
    bracket = False
    for piece in pieces:
        if bracket:
            if len(piece) > _TOO_LONG:
                return None
            end = at + len(piece) + 2
            parts.append(made(Clause, (piece, made(Span, (at, end)), language, False)))
            at = end
        elif piece:
            end = at + len(piece)
            parts.append(made(Text, (piece, made(Span, (at, end)))))
            at = end
        bracket = not bracket
    return parts


def _parts(text: str, span: Span, findings: list[Diagnostic], language: str) -> list[Part]:
    """The parts of any line; what is wrong with its brackets is reported."""
    pairing = pair_brackets(text, span.start, span.end)
    _report_brackets(pairing, findings)
    parts: list[Part] = []
    at = span.start
    for first, last in pairing.pairs:
        if first > at:
            parts.append(Text(text[at:first], Span(at, first)))
        broken = _is_broken(text, first, last, pairing, findings)
        parts.append(Clause(text[first + 1 : last], Span(first, last + 1), language, broken))
        at = last + 1
    if at < span.end:
        parts.append(Text(text[at : span.end], Span(at, span.end)))
    return parts


def _is_broken(text: str, first: int, last: int, pairing: Pairing, findings: list[Diagnostic]) -> bool:
    """Whether a bracket holds what no clause can; what that is has been reported."""
    inner = text[first + 1 : last]
    broken = any(first < at < last for at in pairing.nested) if pairing.nested else False
    if len(inner) > _TOO_LONG and not _ENDLESS_NUMBER.search(inner, 0, _TOO_LONG):
        message = f"a bracket of {len(inner)} characters: it should hold one ingredient, time or tool"
        findings.append(Diagnostic("clause-length", "error", Span(first, first + 40), message))
        broken = True
    return broken


def _report_list_mark(span: Span, findings: list[Diagnostic]) -> None:
    fix = Fix(span, "", "take the mark out")
    message = "steps and lines are numbered by the page; this mark is left out"
    findings.append(Diagnostic("list-mark", "information", span, message, fix=fix))


def _report_brackets(pairing: Pairing, findings: list[Diagnostic]) -> None:
    """At most one finding of each kind a line: after the first, the others are its echoes."""
    if pairing.nested:
        at = pairing.nested[0]
        hint = "close the outer bracket first; a bracket holds no other"
        findings.append(Diagnostic("bracket-nested", "error", Span(at, at + 1), "a bracket opens inside another", hint))
    if pairing.unclosed:
        at = pairing.unclosed[0]
        message = "this bracket is not closed in its line"
        hint = "expected `]` before the line ends; write `\\[` for a bracket that is to be printed"
        findings.append(Diagnostic("bracket-unclosed", "error", Span(at, at + 1), message, hint))
    if pairing.stray and not _closes_an_earlier_one(findings, pairing.stray[0]):
        at = pairing.stray[0]
        hint = "take it out, or put `[` where the bracket begins; write `\\]` for a bracket that is to be printed"
        findings.append(Diagnostic("bracket-stray", "error", Span(at, at + 1), "this `]` closes no bracket", hint))


def _closes_an_earlier_one(findings: list[Diagnostic], at: int) -> bool:
    """A `]` after an unclosed bracket is most likely its end, elsewhere: one mistake, one finding."""
    for index in range(len(findings) - 1, -1, -1):
        finding = findings[index]
        if finding.rule == "bracket-unclosed" and not finding.labels:
            label = Label(Span(at, at + 1), "its end may be this one: a bracket stands in one line of one step")
            findings[index] = finding._replace(labels=(label,))
            return True
    return False
