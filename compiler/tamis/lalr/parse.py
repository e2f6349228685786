"""The tree of a row of tokens, by a saved table."""

from __future__ import annotations

from tamis.lalr.table import END, Table
from tamis.lalr.values import Productions
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.lalr.values import Node


class Unexpected(Exception):
    """A token that cannot stand where it stands; None for the end."""

    def __init__(self, token: object, expected: list[str]) -> None:
        super().__init__(f"{token!r} where one of {', '.join(expected)} may stand")
        self.token = token
        self.expected = expected


class TokenParser:
    """Parses rows of tokens by a table."""

    __slots__ = ("_productions", "_table")

    def __init__(self, table: Table) -> None:
        self._table = table
        self._productions = Productions(table.rules)

    def parse(self, start: str, tokens: Iterable[tuple[str, Any]]) -> Node:
        """The node of the start symbol; a token is its kind and what stands for it in the tree. Raises Unexpected where
        the tokens don't fit the grammar."""
        rows = self._table.rows
        first, last = self._table.starts[start]
        states: list[int] = [first]
        values: list[Any] = []
        for kind, token in tokens:
            step = rows[states[-1]].get(kind)
            while step is None or step < 0:
                if step is None:
                    raise _unexpected(rows[states[-1]], token)
                step = self._reduced(~step, states, values).get(kind)
            states.append(step)
            values.append(token)
        while states[-1] != last:
            step = rows[states[-1]].get(END)
            if step is None:
                raise _unexpected(rows[states[-1]], None)
            self._reduced(~step, states, values)
        node: Node = values[0]
        return node

    def _reduced(self, at: int, states: list[int], values: list[Any]) -> dict[str, int]:
        """Close a production; the row of the state after it."""
        rows = self._table.rows
        name, size, build = self._productions[at]
        if build:
            build(values)
        if size:
            del states[-size:]
        state = rows[states[-1]][name]
        states.append(state)
        return rows[state]


def _unexpected(row: dict[str, int], token: object) -> Unexpected:
    return Unexpected(token, sorted(symbol for symbol in row if symbol.isupper()))
