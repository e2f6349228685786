"""A parse table as it is saved: made from a grammar by `tamis.lalr.build`, read here without Lark.

To import Lark and have it work out a table takes longer than all else that a first check does. So the tables lie
beside their grammars as data. Of hundreds of states a recipe visits a few dozen: a row stays the string that it is
in the file until its state is visited.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from tamis.record import NamedTuple
from tamis.saved import Saved

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

    def __init__(self, packed: Sequence[str], symbols: Sequence[str]) -> None:
        self._packed = packed
        self._symbols = symbols

    def __missing__(self, at: int) -> Rule:
        name, label, *symbols = [self._symbols[int(symbol)] for symbol in self._packed[at].split()]
        rule = self[at] = Rule(name, label, tuple(symbols))
        return rule

    def all(self) -> list[Rule]:
        """Each of them, in the order of their numbers."""
        return [self[at] for at in range(len(self._packed))]


class Rows(dict[int, dict[str, int]]):
    """For each state what its symbols lead to: a state, or `~rule` where that rule is complete.

    A row is cut when it is first asked for; states with the same row share it.
    """

    __slots__ = ("_cut", "_packed", "_symbols")

    def __init__(self, packed: Sequence[str], symbols: Sequence[str]) -> None:
        self._packed = packed
        self._symbols = {str(at): symbol for at, symbol in enumerate(symbols)}
        self._cut: dict[str, dict[str, int]] = {}

    def __missing__(self, state: int) -> dict[str, int]:
        packed = self._packed[state]
        row = self._cut.get(packed)
        if row is None:
            row = self._cut[packed] = {}
            for group in packed.split(",") if packed else ():
                target, *symbols = group.split()
                row.update(dict.fromkeys(map(self._symbols.__getitem__, symbols), int(target)))
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
    return Table(symbols, starts, Rules(saved.row("rules"), symbols), Rows(saved.row("rows"), symbols))
