"""The tree of a row of tokens, by a saved table.

Where a token leads depends on the whole stack of states. So the stacks are kept: one that was met before knows what a
token of a class builds there and which stack comes after it, and nothing is worked out twice.
"""

from __future__ import annotations

from tamis.lalr.table import END, Table
from tamis.lalr.values import Productions
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.lalr.values import Build, Node

    Led = tuple[tuple[Build, ...], "Stack"]
    """What is built before a token is put on a stack, and the stack with it."""


class Unexpected(Exception):
    """A token that cannot stand where it stands; None for the end."""

    def __init__(self, token: object, expected: list[str]) -> None:
        super().__init__(f"{token!r} where one of {', '.join(expected)} may stand")
        self.token = token
        self.expected = expected


class Stack:
    """A parser's stack of states. There is one for equal states; it remembers where each token led."""

    __slots__ = ("above", "below", "moves", "state")

    def __init__(self, state: int, below: Stack | None) -> None:
        self.state, self.below = state, below
        self.above: dict[int, Stack] = {}
        self.moves: dict[Any, Any] = {}


class Stacks:
    """The stacks of a table, and what leads from one to another. `made` is how many there are by now."""

    __slots__ = ("_last", "_rows", "_rules", "_symbols", "first", "made")

    def __init__(self, table: Table, start: str) -> None:
        self._rows = table.rows
        self._rules = Productions(table.rules)
        self._symbols = [symbol for symbol in table.symbols if symbol.isupper()]
        state, self._last = table.starts[start]
        self.first = Stack(state, None)
        self.made = 0

    def forget(self) -> None:
        """Begin anew: what was met by now is not kept."""
        self.first = Stack(self.first.state, None)
        self.made = 0

    def step(self, stack: Stack, kind: str) -> Led | None:
        """What a token of a class builds first, and the stack after it; None if it cannot stand here."""
        rows, rules, top = self._rows, self._rules, stack
        built: list[Build] = []
        while True:
            step = rows[top.state][kind]
            if step is None:
                return None
            if step >= 0:
                return tuple(built), self._on(top, step)
            name, size, build = rules[~step]
            if build:
                built.append(build)
            for _ in range(size):
                top = top.below  # type: ignore[assignment]  # a production is never longer than the stack
            top = self._on(top, rows[top.state][name])  # type: ignore[arg-type]  # … and leads on
            if kind == END and top.state == self._last:  # nothing is shifted at the end
                return tuple(built), top

    def _on(self, stack: Stack, state: int) -> Stack:
        """A stack with a state on top."""
        found = stack.above.get(state)
        if found is None:
            found = stack.above[state] = Stack(state, stack)
            self.made += 1
        return found

    def expected(self, stack: Stack) -> list[str]:
        """The classes that can stand on a stack, in the order of the grammar."""
        return [kind for kind in self._symbols if self.step(stack, kind) is not None]


class TokenParser:
    """Parses rows of tokens by a table whose productions do not nest: its stacks are few, and all are kept."""

    __slots__ = ("_stacks", "_table")

    def __init__(self, table: Table) -> None:
        self._table = table
        self._stacks: dict[str, Stacks] = {}

    def parse(self, start: str, tokens: Iterable[tuple[str, Any]]) -> Node:
        """The node of the start symbol; a token is its kind and what stands for it in the tree. Raises Unexpected where
        the tokens don't fit the grammar."""
        stacks = self._stacks.get(start)
        if stacks is None:
            stacks = self._stacks[start] = Stacks(self._table, start)
        stack = stacks.first
        values: list[Any] = []
        for kind, token in tokens:
            led = stack.moves.get(kind) or _led(stacks, stack, kind, token)
            for build in led[0]:
                build(values)
            values.append(token)
            stack = led[1]
        for build in _led(stacks, stack, END, None)[0]:
            build(values)
        node: Node = values[0]
        return node


def _led(stacks: Stacks, stack: Stack, kind: str, token: object) -> Led:
    found = stacks.step(stack, kind)
    if found is None:
        raise Unexpected(token, sorted(stacks.expected(stack)))
    stack.moves[kind] = found
    return found
