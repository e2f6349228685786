"""The reader of clauses: the parse table of `grammar/clause.lark` driven by a loop of our own.

What a word is depends on the whole stack of states, not on the state alone. So the stacks are kept: a stack that was
met before knows where every choice of classes led, and nothing is tried twice. Clauses of one shape differ only in
their words.

A node is (rule, [children]), a leaf (class, text, start, end); rules whose names begin with `_` leave their children
to the rule above.
"""

from __future__ import annotations

from tamis.reading.vocabulary import Choices, Vocabulary
from tamis.record import NamedTuple
from tamis.syntax.cutting import COMMA, END, Choice, Cut
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.lalr.table import Rules, Table

    Build = Callable[[list[Any]], None]

# No cook writes so many words in a clause: what such a one teaches is not kept.
_LONG = 200
# Shapes of clauses that are kept; a library has some two thousand.
_MOST_STACKS = 50_000


class Fault(NamedTuple):
    """Where a clause stops being one: the number of the token, its offset, and what could have stood there instead."""

    token: int
    start: int
    end: int
    stack: Stack


class Stack:
    """A parser's stack of states. There is one for equal states; it remembers where each choice led."""

    __slots__ = ("above", "below", "moves", "state")

    def __init__(self, state: int, below: Stack | None) -> None:
        self.state, self.below = state, below
        self.above: dict[int, Stack] = {}
        self.moves: dict[Choice, Move | None] = {}


Move = tuple[str, int, tuple["Build", ...], Stack]  # class and number of words taken, values built before, stack after
Node = tuple[str, list[Any]]


def _build(name: str, hidden: list[bool]) -> Build | None:
    """What a production does to the values: those of its symbols become one. A hidden symbol's value is a list, which
    nobody else holds: it grows in place."""
    size, kept = len(hidden), name[0] != "_"

    def rename(values: list[Any]) -> None:
        values[-1] = (name, values[-1])

    def wrap(values: list[Any]) -> None:
        values[-1] = (name, [values[-1]])

    def node(values: list[Any]) -> None:
        values[-size:] = [(name, values[-size:])]

    def first(values: list[Any]) -> None:
        values[-1] = [values[-1]]

    def more(values: list[Any]) -> None:
        last = values.pop()
        values[-1].append(last)

    def any_other(values: list[Any]) -> None:
        flat: list[Any] = []
        first = len(values) - size
        for child in values[first:]:
            if child.__class__ is list:
                flat += child
            else:
                flat.append(child)
        values[first:] = [(name, flat) if kept else flat]

    if hidden == [True]:
        return rename if kept else None
    if hidden == [False]:
        return wrap if kept else first
    if hidden == [True, False] and not kept:
        return more
    return node if kept and size and not any(hidden) else any_other


class _Productions(dict[int, tuple[str, int, "Build | None"]]):
    """What is done where a production is complete: its name, its length, and what becomes of the values. Most clauses
    are made of few: one is made when it is first met."""

    def __init__(self, rules: Rules) -> None:
        self._of = rules

    def __missing__(self, at: int) -> tuple[str, int, Build | None]:
        name, label, symbols = self._of[at]
        found = self[at] = (name, len(symbols), _build(label, [symbol[0] == "_" for symbol in symbols]))
        return found


class Parser:
    """Parses clauses by a table and the words of a kitchen."""

    __slots__ = ("_classes", "_kept", "_last", "_rows", "_rules", "bottom", "vocabulary")

    def __init__(self, table: Table, vocabulary: Vocabulary, start: str = "clause") -> None:
        self._rows = table.rows
        self._rules = _Productions(table.rules)
        self.vocabulary = vocabulary
        first, self._last = table.starts[start]
        self._classes = [symbol for symbol in table.symbols if symbol.isupper()]
        self.bottom = Stack(first, None)
        self._kept = 0

    def parse(self, text: str) -> Node | Fault:
        """The tree of a clause, or where it stops being one."""
        cut = self.vocabulary.cutter.cut(text)
        return self.parse_cut(cut)

    def parse_cut(self, cut: Cut) -> Node | Fault:
        """The same for a text already cut."""
        text, words, vocabulary = cut.text, cut.words, self.vocabulary
        known, choices = vocabulary.of_first, None
        values: list[Any] = []
        at, end = 0, len(words)
        stack = self._first(end)
        starts, ends, fixed = cut.starts, cut.ends, cut.fixed
        while True:
            choice = END if at >= end else fixed[at]
            if choice is None:
                choice = known.get(words[at]) or vocabulary.choice(words, at)
            elif choice is COMMA:
                choices = choices or Choices(cut, vocabulary)
                choice = choices.at(at)
            move = stack.moves.get(choice) or self._move(stack, choice)
            if move is None:
                return Fault(at, starts[at] if at < end else len(text), ends[at] if at < end else len(text), stack)
            kind, taken, builds, stack = move
            for build in builds:
                build(values)
            if at >= end:
                return values[0] if values else Fault(0, 0, len(text), stack)
            first, last = starts[at], ends[at + taken - 1]
            values.append((kind, text[first:last], first, last))
            at += taken
            known = vocabulary.of_later

    def _first(self, length: int) -> Stack:
        if self._kept > _MOST_STACKS:
            self.bottom = Stack(self.bottom.state, None)
            self._kept = 0
        return self.bottom if length < _LONG else Stack(self.bottom.state, None)

    def _move(self, stack: Stack, choice: Choice) -> Move | None:
        """The first way of a choice that the parser can take, remembered. The table's row alone does not tell: LALR
        joins the lookaheads of equal states, and a token may be refused only after some productions have been
        closed."""
        for kind, taken in choice.ways:
            found = self.step(stack, kind)
            if found is not None:
                builds, after = found
                move = stack.moves[choice] = (kind, taken, builds, after)
                return move
        return None

    def step(self, stack: Stack, kind: str) -> tuple[tuple[Build, ...], Stack] | None:
        """What a token of a class builds first, and the stack after it; None if it cannot stand here."""
        rows, rules, top = self._rows, self._rules, stack
        built: list[Build] = []
        while True:
            step = rows[top.state].get(kind)
            if step is None:
                return None
            if step >= 0:
                return tuple(built), self._on(top, step)
            name, size, build = rules[~step]
            if build:
                built.append(build)
            for _ in range(size):
                top = top.below  # type: ignore[assignment]  # a production is never longer than the stack
            top = self._on(top, rows[top.state][name])
            if kind == "$END" and top.state == self._last:  # nothing is shifted at the end
                return tuple(built), top

    def _on(self, stack: Stack, state: int) -> Stack:
        """A stack with a state on top."""
        found = stack.above.get(state)
        if found is None:
            found = stack.above[state] = Stack(state, stack)
            self._kept += 1
        return found

    def expected(self, stack: Stack) -> list[str]:
        """The classes that can stand where a clause stops, in the order of the grammar."""
        return [kind for kind in self._classes if self.step(stack, kind) is not None]
