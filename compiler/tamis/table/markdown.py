"""The ingredient table and the equipment list as Markdown, to be pasted where a recipe is talked about.

A table of pipes (the extension that most Markdown readers know) for what adds up, lists for the rest. A food's name is
a cook's own words, so whatever Markdown would take for a mark is escaped.
"""

from __future__ import annotations

from tamis.kitchen.house import Kitchen
from tamis.patterns import pattern
from tamis.table.lines import Line, apart, lines
from tamis.table.rows import EquipmentRow, Table

HEADS = ("Amount", "Metric", "US", "Ingredient", "Where used")
_MARKS = pattern(r"([\\`*_{}\[\]<>#|~])")


def table_markdown(table: Table, kitchen: Kitchen) -> str:
    """The ingredient table; a column with nothing to say is left out."""
    blocks = [_pipes(lines(table.rows, table, kitchen))] if table.rows else []
    if table.optional:
        blocks.append("Optional:\n\n" + _pipes(lines(table.optional, table, kitchen)))
    if also := apart(table, kitchen):
        blocks.append("Also needed (not in the totals):\n\n" + _list(also))
    return "\n\n".join(blocks) + "\n" if blocks else ""


def equipment_markdown(rows: tuple[EquipmentRow, ...]) -> str:
    """The equipment list."""
    return _list([row.label for row in rows]) + "\n" if rows else ""


def _pipes(said: list[Line]) -> str:
    written = [(*line.cells, line.where) for line in said]
    used = [at for at in range(len(HEADS)) if at in (0, 3) or any(cells[at] for cells in written)]
    rows = [[HEADS[at] for at in used], ["---"] * len(used)]
    rows += [[plain(cells[at]) for at in used] for cells in written]
    return "\n".join("| " + " | ".join(row) + " |" for row in rows)


def _list(said: list[str]) -> str:
    return "\n".join(f"- {plain(line)}" for line in said)


def plain(text: str) -> str:
    """A cook's words with whatever Markdown would take for a mark escaped."""
    return _MARKS.sub(r"\\\1", text)
