"""A formula for a terminal, as Markdown, for a spreadsheet, and as data for programs."""

from __future__ import annotations

from fractions import Fraction

from tamis.formula.formula import Cell, Formula, FormulaRow
from tamis.formula.wording import Grid, base_sentence, facts, grid, notes
from tamis.quantity.amount import Amount
from tamis.table.markdown import plain
from tamis.typed import Any

FORMAT = 1
GAP = "   "


def formula_text(formula: Formula, width: int = 80) -> str:
    """The formula in plain characters. Where the columns don't fit the width, they follow one below the other."""
    table = grid(formula)
    whole = _columns(table, range(len(table.heads)))
    fits = max(map(len, whole.splitlines())) <= width
    blocks = [whole] if fits else [_columns(table, [at]) for at in range(len(table.heads))]
    said = "\n".join(f"  {name}: {words}" for name, words in facts(formula))
    return "\n\n".join(["  " + base_sentence(formula), *blocks, said, *_indented(notes(formula))]) + "\n"


def _indented(lines: list[str]) -> list[str]:
    return ["\n".join("  " + line for line in lines)] if lines else []


def _columns(table: Grid, pairs: range | list[int]) -> str:
    """Names on the left, each pair of weight and percent on the right; only rows that these pairs have."""
    picked = [at for pair in pairs for at in (2 * pair, 2 * pair + 1)]
    rows = [(name, [cells[at] for at in picked]) for name, cells, _ in table.rows]
    rows = [(name, cells) for name, cells in rows if any(cells)] + [("sum", [table.total[at] for at in picked])]
    widths = [max(len(cells[at]) for _, cells in rows) for at in range(len(picked))]
    widths = [max(width, 6 if at % 2 == 0 else 5) for at, width in enumerate(widths)]
    for at, pair in enumerate(pairs):
        short = len(table.heads[pair]) - widths[2 * at] - widths[2 * at + 1] - len(GAP)
        widths[2 * at] += max(short, 0)
    left = max(len(name) for name, _ in rows)
    heads = [table.heads[pair].rjust(widths[2 * at] + len(GAP) + widths[2 * at + 1]) for at, pair in enumerate(pairs)]
    lines = ["  " + " " * left + GAP + GAP.join(heads)]
    lines.append(_row("", ["weight" if at % 2 == 0 else "%" for at in range(len(picked))], left, widths))
    lines.append("  " + GAP.join("─" * each for each in (left, *widths)))
    return "\n".join(lines + [_row(name, cells, left, widths) for name, cells in rows])


def _row(name: str, cells: list[str], left: int, widths: list[int]) -> str:
    return ("  " + GAP.join([name.ljust(left), *(c.rjust(w) for c, w in zip(cells, widths, strict=True))])).rstrip()


def formula_markdown(formula: Formula) -> str:
    """A table of pipes, what the base is above it, and what a baker looks for below."""
    table = grid(formula)
    head = ["Ingredient"] + [f"{plain(name)}{unit}" for name in table.heads for unit in ("", ", %")]
    rows = [head, ["---"] + ["---:"] * (len(head) - 1)]
    rows += [[plain(name), *cells] for name, cells, _ in table.rows]
    rows.append(["**Sum**", *table.total])
    lines = ["| " + " | ".join(row) + " |" for row in rows]
    said = [f"- {name}: {plain(words)}" for name, words in facts(formula)]
    said += [f"- {plain(note)}" for note in notes(formula)]
    return "\n".join([base_sentence(formula), "", *lines, "", *said]) + "\n"


def formula_csv(formula: Formula) -> str:
    """Comma-separated values: grams and percentages as plain numbers, of a range both ends."""
    import csv
    import io

    file = io.StringIO()
    names = ["total", *(column.name for column in formula.columns), "final dough"]
    write = csv.writer(file, lineterminator="\n").writerow
    write(["ingredient", "role", *(f"{name} {unit}" for name in names for unit in ("g", "%"))])
    for row in formula.rows:
        cells = [row.total, *row.parts, row.final]
        write([row.name, _role(row), *(text for cell in cells for text in _figures(cell))])
    sums = [formula.total, *(column.cell for column in formula.columns), formula.final]
    write(["sum", "", *(text for cell in sums for text in _figures(cell))])
    return file.getvalue()


def _role(row: FormulaRow) -> str:
    return "preferment" if row.part else row.goods.role if row.goods else ""


def _figures(cell: Cell | None) -> tuple[str, str]:
    if cell is None:
        return "", ""
    return _figure(cell.grams), _figure(cell.percent)


def _figure(amount: Amount) -> str:
    lo, hi = (f"{float(end):.4f}".rstrip("0").rstrip(".") for end in amount)
    return lo if lo == hi else f"{lo}–{hi}"


def formula_data(formula: Formula) -> dict[str, Any]:
    """Everything that the formula knows: exact fractions as text, and beside them the nearest decimals."""
    shares = ("hydration", "liquids", "all_water", "prefermented", "salt", "yeast", "starter")
    return {
        "format": FORMAT,
        "name": formula.name,
        "base": formula.base,
        "flour": _ends(formula.flour),
        "base_flour": _ends(formula.base_flour),
        "columns": [_column(formula, at) for at in range(len(formula.columns))],
        "rows": [_data(row) for row in formula.rows],
        "total": _cell(formula.total),
        "final": _cell(formula.final),
        "percent": {name: _ends(getattr(formula, name)) for name in shares},
        "bread": formula.bread,
        "unweighed": list(formula.unweighed),
        "sure": formula.sure,
    }


def _column(formula: Formula, at: int) -> dict[str, Any]:
    column = formula.columns[at]
    return {
        "name": column.name,
        "component": column.component,
        "sum": _cell(column.cell),
        "flour": _ends(column.flour),
        "ferments": column.ferments,
        "taken": _number(column.taken),
    }


def _data(row: FormulaRow) -> dict[str, Any]:
    return {
        "name": row.name,
        "goods": row.goods.id if row.goods else None,
        "role": _role(row),
        "total": _cell(row.total),
        "columns": [_cell(cell) for cell in row.parts],
        "final": _cell(row.final),
        "water": _ends(row.water) if row.water else None,
    }


def _cell(cell: Cell | None) -> dict[str, Any] | None:
    if cell is None:
        return None
    return {"grams": _ends(cell.grams), "percent": _ends(cell.percent)}


def _ends(amount: Amount) -> dict[str, Any]:
    return {"lo": _number(amount.lo), "hi": _number(amount.hi)}


def _number(value: Fraction) -> dict[str, Any]:
    return {"exact": str(value), "value": float(f"{float(value):.6g}")}
