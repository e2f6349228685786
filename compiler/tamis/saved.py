"""The form of `grammar/saved/<language>/`: what the kitchen knows, ready to be looked up.

A file is rows, each a line: its name, a tab, and its cells with bars between. A row is words in their order, or it
tells what each of many names leads to: then those that begin alike share a cell, behind one that says how they begin
(`ba|=bacon>bacon=bacon bit>bacon=`). A start reads the file and cuts the rows that it needs; a name is looked for in
its cell, and the facts of a verb or a tool are taken apart, when it is first asked for: of thousands a recipe asks for
a few hundred.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from tamis.assets import asset_text

Fact = str | int | bool
Written = Iterable[str] | Mapping[str, str]
"""A row as it is made: words in their order, or what each name leads to."""


_ALIKE = 2
"""Letters by which names begin alike."""


class Names:
    """What each of many names leads to."""

    __slots__ = ("_cells", "_known", "_own", "_row")

    def __init__(self, row: str = "") -> None:
        self._row = row
        self._cells: dict[str, str] = {}
        self._known: dict[str, str | None] = {}
        self._own: dict[str, str] = {}

    def get(self, name: str) -> str | None:
        """What a name leads to; None if it is none of these."""
        known = self._known
        if name in known:
            return known[name]
        if self._row:
            self._open()
        found, cell = None, self._cells.get(name[:_ALIKE])
        if cell is not None and "=" not in name:
            at = cell.find(f"={name}>")
            if at >= 0:
                at += len(name) + 2
                found = cell[at : cell.index("=", at)]
        known[name] = found
        return found

    def _open(self) -> None:
        cells = self._row.split("|")
        self._cells = dict(zip(cells[::2], cells[1::2], strict=True))
        self._row = ""

    def __contains__(self, name: str) -> bool:
        return self.get(name) is not None

    def __getitem__(self, name: str) -> str:
        found = self.get(name)
        if found is None:
            raise KeyError(name)
        return found

    def everything(self) -> Mapping[str, str]:
        """Each name and what it leads to, in no order."""
        if self._row:
            self._open()
        said = [pair.split(">") for cell in self._cells.values() for pair in cell[1:-1].split("=")]
        return dict(said) | self._own

    def with_more(self, more: Mapping[str, str]) -> Names:
        """These with others, which go before."""
        other = Names(self._row)
        other._cells, other._own = self._cells, {**self._own, **more}
        other._known |= other._own
        return other

    def add(self, name: str, leads: str) -> None:
        """One more, which goes before any other of this name."""
        self._known[name] = self._own[name] = leads


_PLACE = 5
"""Hexadecimal digits that say where a cell begins: of more than a million letters no row is."""


class Cells:
    """The cells of a long row, each cut when it is asked for; another row tells where they begin."""

    __slots__ = ("_end", "_places", "_start", "_text")

    def __init__(self, text: str, start: int, end: int, places: str) -> None:
        self._text, self._start, self._end, self._places = text, start, end, places

    def __len__(self) -> int:
        return len(self._places) // _PLACE

    def __getitem__(self, at: int) -> str:
        start = self._start + int(self._places[at * _PLACE : (at + 1) * _PLACE], 16)
        end = self._text.find("|", start, self._end)
        return self._text[start : self._end if end < 0 else end]


def places(cells: Iterable[str]) -> str:
    """Where each of these begins in their row."""
    told, at = [], 0
    for cell in cells:
        told.append(f"{at:0{_PLACE}x}")
        at += len(cell) + 1
    return "".join(told)


class Saved:
    """The rows of a file."""

    __slots__ = ("_spans", "_text")

    def __init__(self, text: str) -> None:
        self._text = text
        self._spans: dict[str, tuple[int, int]] = {}
        start = 0
        while start < len(text):  # to split the text would look at each letter
            tab, end = text.index("\t", start), text.index("\n", start)
            self._spans[text[start:tab]] = (tab + 1, end)
            start = end + 1

    def all_names(self, name: str) -> Mapping[str, str] | None:
        """Each of the names of a row and what it leads to; None where there is no such row."""
        return self.names(name).everything() if name in self._spans else None

    def row(self, name: str, missing: str | None = None) -> list[str]:
        """The cells of a row; those of one that is `missing`, if that may be."""
        cells = missing if missing is not None and name not in self._spans else self._line(name)
        return cells.split("|") if cells else []

    def cells(self, name: str, places: str) -> Cells:
        """The cells of a row, uncut; the row `places` tells where they begin."""
        return Cells(self._text, *self._spans[name], self._line(places))

    def names(self, name: str) -> Names:
        """The names of a row, with what they lead to."""
        return Names(self._line(name))

    def _line(self, name: str) -> str:
        start, end = self._spans[name]
        return self._text[start:end]


def saved(language: str, name: str) -> Saved:
    """One file of a language; of no language, what holds for all."""
    return Saved(asset_text(f"grammar/saved/{language}/{name}.txt"))


def _alike(names: Mapping[str, str]) -> Iterator[str]:
    cells: dict[str, list[str]] = {}
    for name, leads in names.items():
        if not name or not {"=", ">"}.isdisjoint(name + leads):
            raise ValueError(f"{name}: a sign that parts names in a name or what it leads to, or no name")
        cells.setdefault(name[:_ALIKE], []).append(f"{name}>{leads}")
    for start, cell in cells.items():
        yield from (start, f"={'='.join(cell)}=")


def written(rows: Mapping[str, Written]) -> str:
    """The text of such a file."""
    lines = []
    for name, given in rows.items():
        cells = list(_alike(given) if isinstance(given, Mapping) else given)
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
