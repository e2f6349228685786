"""The baker's formula on a bread's page.

Percentages mean something to whoever bakes; on a cake's or a stew's page they would be noise, so only breads show them.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.formula.formula import Formula


class FormulaRow(NamedTuple):
    """A line: a food or a preferment, with a weight and a percentage for each column."""

    name: str
    cells: tuple[str, ...]
    preferment: bool


class FormulaView(NamedTuple):
    """All that `formula.html` shows. `heads` stand over two cells each."""

    base: str
    heads: tuple[str, ...]
    rows: list[FormulaRow]
    total: tuple[str, ...]
    facts: list[tuple[str, str]]
    notes: list[str]


def formula_view(formula: Formula | None) -> FormulaView | None:
    """The formula as the template lays it out; None for what is no bread."""
    if formula is None or not formula.bread:
        return None
    from tamis.formula.wording import base_sentence, facts, grid, notes

    table = grid(formula)
    rows = [FormulaRow(name, cells, part) for name, cells, part in table.rows]
    return FormulaView(base_sentence(formula), table.heads, rows, table.total, facts(formula), notes(formula))
