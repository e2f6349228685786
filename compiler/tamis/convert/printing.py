"""An answer for a terminal and for other programs."""

from __future__ import annotations

from tamis.convert.answer import Answer, Row, Section
from tamis.convert.measures import Figure
from tamis.quantity.wrapping import wrap
from tamis.typed import Any

GAP = "  "
PLACES = 6


def answer_text(answer: Answer, width: int = 80) -> str:
    """The answer in lines no longer than a width, where words allow; sources stand under what they are for."""
    label = max((len(row.label) for section in answer.sections for row in section.rows), default=0)
    blocks = [answer.asked, *(_section(section, label, width) for section in answer.sections)]
    notes = [line for note in answer.notes for line in wrap(note, width)]
    return "\n\n".join([*blocks, *(["\n".join(notes)] if notes else [])]) + "\n"


def _section(section: Section, label: int, width: int) -> str:
    lines = [section.title] if section.title else []
    own = max((len(row.label) for row in section.rows), default=0)
    for row in section.rows:
        lines += _row(row, label if own else 0, width)
    return "\n".join(lines)


def _row(row: Row, label: int, width: int) -> list[str]:
    head = GAP + (row.label.ljust(label) + GAP if label else "")
    indent = " " * len(head)
    lines = wrap(row.text, width, rest=indent, first=head)
    if row.source:
        lines += wrap(row.source, width, rest=indent + GAP, first=indent + GAP)
    return lines


def answer_data(answer: Answer) -> dict[str, Any]:
    """The answer as plain data: the rows as printed, and weight and volume as numbers."""
    return {
        "asked": answer.asked,
        "grams": _figure(answer.worths.grams),
        "millilitres": _figure(answer.worths.ml),
        "by_analogy": answer.worths.by_analogy,
        "sections": [
            {"title": section.title, "rows": [row._asdict() for row in section.rows]} for section in answer.sections
        ],
        "notes": list(answer.notes),
        "problem": answer.problem,
        "hint": answer.hint,
    }


def _figure(figure: Figure | None) -> dict[str, float] | None:
    """The usual figure, end by end, and the least and most of all sources."""
    if figure is None:
        return None
    low, high = figure.usual
    ends = {"low": low, "high": high, "least": figure.least, "most": figure.most}
    return {name: round(float(value), PLACES) for name, value in ends.items()}
