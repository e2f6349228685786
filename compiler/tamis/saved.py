"""The form of `grammar/saved/<language>/`: what the kitchen knows, ready to be looked up.

A file is rows, each a line: its name, a tab, and its cells with bars between. Thousands of cells are cut in one step,
and a dictionary is made of two rows in another; the facts of a verb or a tool are taken apart when it is first asked
for.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from tamis.assets import asset_text

Fact = str | int | bool


def rows(language: str, name: str) -> dict[str, list[str]]:
    """The rows of one file."""
    lines = (line.partition("\t") for line in asset_text(f"grammar/saved/{language}/{name}.txt").split("\n") if line)
    return {name: cells.split("|") if cells else [] for name, _, cells in lines}


def written(rows: Mapping[str, Iterable[str]]) -> str:
    """The text of such a file."""
    lines = []
    for name, given in rows.items():
        cells = list(given)
        if any(sign in cell for cell in cells for sign in "|\t\r\n") or cells == [""]:
            raise ValueError(f"{name}: a bar, a tab or nothing at all in a cell")
        lines.append(f"{name}\t{'|'.join(cells)}\n")
    return "".join(lines)


def facts(cell: str) -> dict[str, Fact]:
    """The facts of a cell: `adds, takes 30` gives `{"adds": True, "takes": 30}`."""
    said = (fact.partition(" ") for fact in cell.split(", "))
    return {name: int(value) if value.isdigit() else value or True for name, _, value in said}


def cell(said: Mapping[str, Fact]) -> str:
    """Such a cell."""
    text = ", ".join(name if value is True else f"{name} {value}" for name, value in said.items())
    if facts(text) != said:
        raise ValueError(f"these facts fit into no cell: {said}")
    return text
