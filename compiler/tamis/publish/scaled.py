"""A scaled recipe as it is printed: title, yield, ingredients, method, and what to mind.

Terminal and Markdown say the same in the same order, so the words are gathered here once.
"""

from __future__ import annotations

from tamis.publish.method import Section, method_of
from tamis.quantity.numerals import decimal
from tamis.record import NamedTuple
from tamis.scaling.edits import edited
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.scaling.scale import Scaled
    from tamis.source import Source

UNTOUCHED = "Times, temperatures, cues, sizes, tools and remarks are those of the recipe as written."
UNTOUCHED_BUT_TIN = "Times, temperatures, cues, other sizes and tools, and remarks are those of the recipe as written."


class Sheet(NamedTuple):
    """The words around table and equipment list."""

    title: str
    facts: list[str]
    untouched: str
    sections: tuple[Section, ...]
    named: bool


def sheet_of(scaled: Scaled, sentence: str, kitchen: Kitchen) -> Sheet:
    """The words of a scaled recipe; `sentence` tells of an exchanged tin."""
    recipe = scaled.shown
    facts = [f"{key.capitalize()} {text}" for key, text in yields_of(scaled)]
    facts.append(sentence or f"× {decimal(scaled.factor)}")
    sections = method_of(recipe, scaled.compiled.table, kitchen)
    named = len(sections) > 1 or any(section.name != recipe.title for section in sections)
    return Sheet(recipe.title, facts, UNTOUCHED_BUT_TIN if sentence else UNTOUCHED, sections, named)


def yields_of(scaled: Scaled) -> list[tuple[str, str]]:
    """What the scaled recipe makes and whom it serves, as a reader is told: `makes`, "3 loaves"."""
    document = scaled.original.document
    said: dict[str, str] = {}
    for field in document.fields:
        if field.key in ("makes", "serves", "flour", "dough") and field.key not in said:
            span = field.value_span
            within = [e.shifted(-span.start) for e in scaled.edits if span.start <= e.span.start < span.end]
            said[field.key] = edited(field.value, within, "shown")
    return list(said.items())


def method_lines(sheet: Sheet) -> list[str]:
    """The method as Markdown that reads as plain text too: headings, numbered steps, remarks."""
    lines: list[str] = []
    number = 0
    for section in sheet.sections:
        if sheet.named and section.name:
            lines += [f"### {section.name}", ""]
        lines += [line for remark in section.remarks for line in (f"> {remark.kind}: {_flat(remark.text)}", "")]
        for step in section.steps:
            number += 1
            lines += [f"{number}. {step.plain}", ""]
            lines += [line for remark in step.remarks for line in (f"> {remark.kind}: {_flat(remark.text)}", "")]
        for ahead in section.ahead:
            lines += [f"> Ahead: {''.join(piece.text for piece in ahead).strip()}", ""]
    return lines


def _flat(text: str) -> str:
    return " ".join(text.split())


def mind_lines(source: Source, findings: list[Diagnostic]) -> list[str]:
    """What to mind, a line each, with the line of the recipe that it is about."""
    lines = []
    for finding in findings:
        hint = f"; {finding.hint}" if finding.hint else ""
        line = source.place(finding.span.start).line
        words = source.slice(finding.span).strip("[]")
        lines.append(f"- Line {line}, “{words}”: {finding.message}{hint} ({finding.rule})")
    return lines


def scaled_data(scaled: Scaled, sentence: str, kitchen: Kitchen) -> dict[str, Any]:
    """The scaled recipe as plain data: the factor, the yields, the table (as `tamis table` gives it) and the method."""
    from tamis.table.data import table_data

    sheet = sheet_of(scaled, sentence, kitchen)
    return {
        "title": sheet.title,
        "factor": {"exact": str(scaled.factor), "value": float(f"{float(scaled.factor):.6g}")},
        "pan": sentence,
        "untouched": sheet.untouched,
        "yields": dict(yields_of(scaled)),
        "table": table_data(scaled.compiled.table, scaled.compiled.equipment, kitchen),
        "method": [
            {"component": section.name, "steps": [step.plain for step in section.steps]} for section in sheet.sections
        ],
    }
