"""A formula in words, whoever prints it: terminal, Markdown and page set the same cells and sentences."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from tamis.formula.formula import Cell, Formula, FormulaRow
from tamis.quantity.amount import Amount
from tamis.quantity.numerals import decimal, fixed
from tamis.quantity.wrapping import series
from tamis.record import NamedTuple

TOTAL, FINAL = "Total", "Final dough"


class Grid(NamedTuple):
    """The formula as a table of words. `heads` name the pairs of columns (weight and percent); each of `rows` has its
    name, a cell for each column of each pair, and whether it is a preferment. `total` is the last line."""

    heads: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...], bool], ...]
    total: tuple[str, ...]


def grid(formula: Formula) -> Grid:
    """The formula's cells; without preferments the total is all there is."""
    if not formula.columns:
        rows = [(row.name, _cells(row.total), False) for row in formula.rows]
        return Grid((TOTAL,), tuple(rows), _cells(formula.total))
    heads = (TOTAL, *(column.name for column in formula.columns), FINAL)
    lines = tuple((row.name, _through(row), row.part) for row in formula.rows)
    sums = [formula.total, *(column.cell for column in formula.columns), formula.final]
    return Grid(heads, lines, tuple(text for cell in sums for text in _cells(cell)))


def _through(row: FormulaRow) -> tuple[str, ...]:
    return tuple(text for cell in (row.total, *row.parts, row.final) for text in _cells(cell))


def _cells(cell: Cell | None) -> tuple[str, str]:
    if cell is None:
        return "", ""
    return weight(cell.grams), percent(cell.percent)


def base_sentence(formula: Formula) -> str:
    """What 100 % means: "100 % is all flour: 500 g."."""
    which = "only the flour of the final dough" if formula.base == "final" else "all flour"
    if not formula.columns:
        return f"100 % is {which}: {weight(formula.base_flour)}."
    more = ", including the flour in preferments" if formula.base == "total" else ""
    said = f"100 % is {which}{more}: {weight(formula.base_flour)}."
    return f"{said} In a preferment’s column, percentages are of its own flour."


def facts(formula: Formula) -> list[tuple[str, str]]:
    """What a baker looks for first, as name and words; percentages are of the base."""
    said = [("Hydration", _hydration(formula))]
    if any(column.ferments for column in formula.columns):
        said.append(("Prefermented flour", f"{percent(formula.prefermented)} % of all flour"))
    for name, amount in (("Salt", formula.salt), ("Yeast", formula.yeast), ("Starter", formula.starter)):
        if amount.hi:
            said.append((name, f"{percent(amount)} %"))
    said.append(("Dough", weight(formula.total.grams)))
    return said


def _hydration(formula: Formula) -> str:
    ways = [f"{percent(formula.hydration)} %, water only"] if formula.hydration.hi else []
    if formula.liquids != formula.hydration:
        ways.append(f"{percent(formula.liquids)} % with milk counted in full")
    if formula.all_water != formula.hydration:
        ways.append(f"{percent(formula.all_water)} % with the water in {series(_watery(formula))}")
    return "; ".join(ways) or "no water"


def _watery(formula: Formula) -> list[str]:
    return [row.name for row in formula.rows if row.water is not None and row.water.hi]


def notes(formula: Formula) -> list[str]:
    """What the figures leave out."""
    said = []
    if any(row.goods is not None and row.goods.role == "starter" for row in formula.rows):
        said.append("A ripe starter is a line of its own; its flour is not counted as flour.")
    for column in formula.columns:
        if column.taken != 1:
            said.append(f"{percent(_one(column.taken * 100))} % of the {column.name} goes into the dough.")
    if formula.unweighed:
        said.append(f"Without a weight, and so not counted: {series(formula.unweighed)}.")
    if not formula.sure:
        said.append("A share whose size the text does not give is counted as the whole.")
    return said


def _one(value: Fraction) -> Amount:
    return Amount(value, value)


def weight(grams: Amount) -> str:
    """Grams as a bench scale shows them: "0.39 g", "5.5 g", "210 g", "16.747 kg"."""
    return _ends(grams, _kilos if grams.lo >= 1000 else _grams, "kg" if grams.lo >= 1000 else "g")


def percent(value: Amount) -> str:
    """A percentage to three digits that count, a tenth at most from ten on: "68.4", "1.97", "0.375", "100"."""
    return _ends(value, _percent, "")


def _ends(amount: Amount, show: Callable[[Fraction], str], unit: str) -> str:
    lo, hi = show(amount.lo), show(amount.hi)
    return f"{lo if lo == hi else f'{lo}–{hi}'} {unit}".rstrip()


def _kilos(grams: Fraction) -> str:
    return fixed(grams / 1000, 3)


def _grams(grams: Fraction) -> str:
    return fixed(grams, 0 if grams >= 100 else 1) if grams >= 1 or not grams else _small(grams)


def _percent(value: Fraction) -> str:
    return fixed(value, 1 if value >= 10 else 2) if value >= 1 or not value else _small(value)


def _small(value: Fraction) -> str:
    """Under one, two digits that count; three where a percentage was written so."""
    return fixed(value, 3) if value >= Fraction(1, 10) else decimal(value)
