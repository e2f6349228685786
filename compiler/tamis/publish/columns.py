"""The ingredient table in two columns of amounts, as the house wants them.

A cook reads one column; the other is there for a guest with other spoons. Which of the two figures is the cook's own
and which was worked out matters when they disagree by a gram, so the cook's own is marked. A figure in neither system
(an imperial pint) is told below the name.
"""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.publish.sentence import kept_together
from tamis.record import NamedTuple
from tamis.table.lines import name_text, where_text
from tamis.table.showing import Shown, metric_alone, shown
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.settings import ShownUnits
    from tamis.table.rows import Row, Table

_WORD = pattern(r"[^\W\d_]+")
_SPOONS = frozenset(("tsp", "tbsp"))


class Heads(NamedTuple):
    """What stands over the two columns of amounts."""

    first: str
    second: str


HEADS: dict[ShownUnits, Heads] = {
    "metric": Heads("Metric", "US"),
    "us": Heads("US", "Metric"),
    "written": Heads("Amount", "Or"),
}


class Cell(NamedTuple):
    """An amount; `own` if it is the figure that the cook wrote."""

    text: str
    own: bool


class Cells(NamedTuple):
    """A row of the table; `second` is empty where it would repeat the first, if that is no spoon. `written` is what the
    cook wrote where neither column says it, `line` the whole in one line, for machines."""

    first: Cell
    second: Cell
    name: str
    note: str
    where: str
    written: str
    line: str


def heads(kitchen: Kitchen) -> Heads:
    """What stands over the two columns of amounts, as the house wants them."""
    return HEADS[kitchen.settings.publish.units]


def cells_of(rows: tuple[Row, ...], table: Table, kitchen: Kitchen) -> list[Cells]:
    """The rows, ready to be set."""
    return [_cells(row, table, kitchen) for row in rows]


def _cells(row: Row, table: Table, kitchen: Kitchen) -> Cells:
    amounts = shown(row, kitchen)
    first, second = _pair(amounts, metric_alone(row, amounts), kitchen.settings.publish.units)
    words = name_text(row, kitchen)
    name, _, note = words.partition(", ")
    written = "" if first.own or second.own else amounts.written
    line = f"{amounts.written} {words}".lstrip()
    where = kept_together(where_text(row, table, kitchen))
    return Cells(_set(first), _set(second), name, note, where, written, line)


def _set(cell: Cell) -> Cell:
    return Cell(kept_together(cell.text), cell.own)


def _pair(amounts: Shown, metric: str, units: ShownUnits) -> tuple[Cell, Cell]:
    """The two columns; spoons belong to both, since every kitchen has them."""
    if units == "written":
        others = dict.fromkeys(text for text in (amounts.metric, amounts.us) if not _own(text, amounts))
        return Cell(amounts.written, True), Cell(" / ".join(others), False)
    ours = Cell(metric, metric.startswith(f"{amounts.written} (") or _own(metric, amounts))
    theirs = Cell(amounts.us, _own(amounts.us, amounts))
    first, second = (ours, theirs) if units == "metric" else (theirs, ours)
    if not first.text:
        return Cell(amounts.written, True), Cell("", False)
    spoons = first.text == second.text and not _SPOONS.isdisjoint(_WORD.findall(first.text))
    return first, second if spoons or second.text != first.text else Cell("", False)


def _own(text: str, amounts: Shown) -> bool:
    """Whether a figure is the cook's: all that was written, or what stood before or in the round brackets."""
    whole, _, inner = amounts.written.removesuffix(")").partition(" (")
    return text in (amounts.written, whole, f"about {whole}") or text in inner.split(", ")
