"""The ingredient table and the equipment list for a terminal.

A cook reads the amount and the food beside each other, so columns are aligned and as narrow as their
words. A column with nothing to say is left out; what does not fit the width is wrapped under its own
column.
"""

from __future__ import annotations

from tamis.kitchen.house import Kitchen
from tamis.quantity.wrapping import wrap
from tamis.table.lines import Line, apart, lines
from tamis.table.rows import EquipmentRow, Table

HEADS = ("amount", "metric", "US", "ingredient")
GAP = 3
NARROWEST = 16
WIDEST = 22
"""The last column is never narrower than the first of these, an amount never wider than the second."""
LEFT = 6
"""Where the lines that tell where a food goes begin if they don't all fit under the ingredient."""


def table_text(table: Table, kitchen: Kitchen, width: int = 80, only: str = "") -> str:
    """The ingredient table in plain characters, lines no longer than `width` where words allow.

    `only` keeps one column of amounts: metric, us or written; where the asked one is not known, as written.
    """
    blocks = [_columns(_kept(lines(table.rows, table, kitchen), only), width)] if table.rows else []
    if table.optional:
        optional = _kept(lines(table.optional, table, kitchen), only)
        blocks.append("Optional\n" + _columns(optional, width, heads=False))
    if also := apart(table, kitchen):
        blocks.append("Also needed (not in the totals)\n" + _listed(also, width))
    return "\n\n".join(blocks) + "\n" if blocks else ""


def _kept(said: list[Line], only: str) -> list[Line]:
    """The lines with the amounts of one system, or with all of them."""
    if not only:
        return said
    column = {"metric": 0, "us": 1}.get(only)
    plain = [line._replace(metric="", us="") for line in said]
    return plain if column is None else [line._replace(amount=line.alone[column] or line.amount) for line in plain]


def equipment_text(rows: tuple[EquipmentRow, ...], width: int = 80) -> str:
    """The equipment list, a line a piece."""
    return _listed([row.label for row in rows], width) + "\n" if rows else ""


def _listed(said: list[str], width: int) -> str:
    return "\n".join(line for each in said for line in wrap(each, width, rest="    ", first="  "))


def _columns(said: list[Line], width: int, heads: bool = True) -> str:
    """The lines as aligned columns; where that would be too wide, other units go under the ingredient."""
    used = [at for at in range(4) if at in (0, 3) or any(line.cells[at] for line in said)]
    cells = [[line.cells[at] for at in used] for line in said]
    head = [HEADS[at] for at in used]
    widths = [min(max(len(row[at]) for row in (head, *cells)), WIDEST) for at in range(len(used) - 1)]
    taken = 2 + sum(widths) + GAP * len(widths)
    last = width - taken
    if last < NARROWEST and len(used) > 2:
        return _columns([_folded(line) for line in said], width, heads)
    last = max(last, NARROWEST)
    indent = taken + 2 if all(len(line.where) <= last - 2 for line in said) else LEFT
    rows = [_set(head, widths, last), _rule(head, cells, widths, last)] if heads else []
    for row, line in zip(cells, said, strict=True):
        rows.append(_set(row, widths, last))
        if line.where:
            rows += wrap(line.where, width, rest=" " * (indent + 2), first=" " * indent)
    return "\n".join(rows)


def _folded(line: Line) -> Line:
    """The line with its other units told where its places are told."""
    other = " = ".join(text for text in (line.metric, line.us) if text)
    equal = other if not other or other.startswith("≈") else f"= {other}"
    where = "; ".join(text for text in (equal, line.where) if text)
    return line._replace(metric="", us="", where=where)


def _rule(head: list[str], cells: list[list[str]], widths: list[int], last: int) -> str:
    longest = min(max(len(row[-1]) for row in (head, *cells)), last)
    return "  " + (" " * GAP).join("─" * each for each in (*widths, longest))


def _set(row: list[str], widths: list[int], last: int) -> str:
    """One row, over several lines where a cell needs it."""
    cells = [wrap(cell, each) for cell, each in zip(row, (*widths, last), strict=True)]
    out = []
    for at in range(max(map(len, cells))):
        parts = [cell[at] if at < len(cell) else "" for cell in cells]
        padded = [part.ljust(each) for part, each in zip(parts, (*widths, 0), strict=True)]
        out.append(("  " + (" " * GAP).join(padded)).rstrip())
    return "\n".join(out)
