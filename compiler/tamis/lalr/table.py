"""A parse table as it is saved: made from a grammar by `tamis.lalr.build`, read here without Lark.

To import Lark and have it work out a table takes longer than all else that a first check does. So the tables lie
beside their grammars as data. Of hundreds of states a recipe visits a few dozen: a row stays the string that it is
in the file until its state is visited.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tamis.record import NamedTuple
from tamis.saved import Cells, Saved

END = "$END"
"""The symbol that stands after the last token."""


class Rule(NamedTuple):
    """A production. `label` is what its node is called: the alias that the grammar gives it, else its name.

    Symbols that begin with `_` leave no node: a rule's children go to the rule above, a token is dropped.
    """

    name: str
    label: str
    symbols: tuple[str, ...]


class Rules(dict[int, Rule]):
    """The productions by their numbers. One is cut when it is first asked for."""

    __slots__ = ("_packed", "_symbols")

    def __init__(self, packed: Cells, symbols: Sequence[str]) -> None:
        self._packed = packed
        self._symbols = symbols

    def __missing__(self, at: int) -> Rule:
        name, label, *symbols = [self._symbols[int(symbol)] for symbol in self._packed[at].split()]
        rule = self[at] = Rule(name, label, tuple(symbols))
        return rule

    def all(self) -> list[Rule]:
        """Each of them, in the order of their numbers."""
        return [self[at] for at in range(len(self._packed))]


class Row(dict[str, int | None]):
    """What the symbols lead to in one state: to a state, or `~rule` where that rule is complete; None to nothing. A
    symbol is looked for in the text of the row when it is first asked for: of fifty a recipe asks for two or three."""

    __slots__ = ("_numbers", "_packed")

    def __init__(self, packed: str, numbers: Mapping[str, int]) -> None:
        self._packed = f" {packed} "
        self._numbers = numbers

    def __missing__(self, symbol: str) -> int | None:
        packed, found = self._packed, None
        at = packed.find(f" {self._numbers.get(symbol)} ")
        if at >= 0:
            start = packed.index("=", at) + 1
            found = int(packed[start : packed.index(" ", start)])
        self[symbol] = found
        return found


class Rows(dict[int, Row]):
    """The rows by their states, which share those that are equal."""

    __slots__ = ("_made", "_numbers", "_packed")

    def __init__(self, packed: Cells, symbols: Sequence[str]) -> None:
        self._packed = packed
        self._numbers = {symbol: at for at, symbol in enumerate(symbols)}
        self._made: dict[str, Row] = {}

    def __missing__(self, state: int) -> Row:
        packed = self._packed[state]
        row = self._made.get(packed)
        if row is None:
            row = self._made[packed] = Row(packed, self._numbers)
        self[state] = row
        return row


class Table(NamedTuple):
    """A grammar's parse table; `starts` gives the first and the last state for each symbol that a text may be."""

    symbols: tuple[str, ...]
    starts: Mapping[str, tuple[int, int]]
    rules: Rules
    rows: Rows


def load(text: str) -> Table:
    """A table from what `tamis.lalr.build.save` wrote."""
    saved = Saved(text)
    symbols = tuple(saved.row("symbols"))
    starts = {start: (int(first), int(last)) for start, first, last in map(str.split, saved.row("starts"))}
    rules, rows = (saved.cells(name, f"{name} begin") for name in ("rules", "rows"))
    return Table(symbols, starts, Rules(rules, symbols), Rows(rows, symbols))
