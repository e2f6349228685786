"""The reader of clauses: the parse table of `grammar/clause.lark` driven by a loop of our own.

What a word is depends on the whole stack of states, not on the state alone. So the stacks are kept: a stack that was
met before knows where every choice of classes led, and nothing is tried twice. Clauses of one shape (`shapes.py`)
differ only in their words.

A node is (rule, [children]), a leaf (class, text, start, end); rules whose names begin with `_` leave their children
to the rule above.
"""

from __future__ import annotations

from tamis.lalr.parse import Stack, Stacks
from tamis.lalr.table import END
from tamis.reading.shapes import Shape
from tamis.reading.vocabulary import Choices, Vocabulary
from tamis.record import NamedTuple
from tamis.syntax.cutting import COMMA, Choice, Cut
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.lalr.table import Table
    from tamis.lalr.values import Node
    from tamis.reading.clause import NodeKind
    from tamis.reading.shapes import Move

# No cook writes so many words in a clause: what such a one teaches is not kept.
_LONG = 200
# Shapes of clauses and stacks that are kept; a library has some ten thousand.
_MOST_KEPT = 50_000
# Behind one of these a comma ends a name; between adjectives (`skinless, boneless thighs`) it stands behind none.
_NOUNS: frozenset[NodeKind] = frozenset(("FOOD", "TOOL", "COUNTTOOL"))


class Fault(NamedTuple):
    """Where a clause stops being one: the number of the token, its offset, and what could have stood there instead."""

    token: int
    start: int
    end: int
    stack: Stack


class Parser:
    """Parses clauses by a table and the words of a kitchen."""

    __slots__ = ("_empty", "_kept", "_stacks", "vocabulary")

    def __init__(self, table: Table, vocabulary: Vocabulary, start: str = "clause") -> None:
        self._stacks = Stacks(table, start)
        self.vocabulary = vocabulary
        self._empty = Shape(self._stacks.first)
        self._kept = 0

    def parse(self, text: str) -> Node | Fault:
        """The tree of a clause, or where it stops being one."""
        cut = self.vocabulary.cutter.cut(text)
        shape = self.shape(cut)
        return shape if isinstance(shape, Fault) else shape.tree(cut)

    def shape(self, cut: Cut) -> Shape | Fault:
        """The shape of a clause, or where it stops being one."""
        words, fixed, vocabulary = cut.words, cut.fixed, self.vocabulary
        known, at, end = vocabulary.of_first, 0, len(words)
        shape = self._first(end)
        while at < end:
            choice = fixed[at]
            if choice is None:
                choice = known.get(words[at]) or vocabulary.choice(words, at)
            elif choice is COMMA and shape.kind not in _NOUNS:
                choice = Choices(cut, vocabulary).at(at)
            after = shape.steps.get(choice) or self._step(shape, choice)
            if after is None:
                return Fault(at, cut.starts[at], cut.ends[at], shape.stack)
            shape, at, known = after, after.end, vocabulary.of_later
        if shape.last is None:
            found = self._stacks.step(shape.stack, END) if end else None
            if found is None:
                return Fault(at, len(cut.text), len(cut.text), shape.stack)
            shape.last = found[0]
        return shape

    def _first(self, length: int) -> Shape:
        if self._kept + self._stacks.made > _MOST_KEPT:
            self._stacks.forget()
            self._empty = Shape(self._stacks.first)
            self._kept = 0
        return self._empty if length < _LONG else Shape(Stack(self._empty.stack.state, None))

    def _step(self, shape: Shape, choice: Choice) -> Shape | None:
        """The first way of a choice that the parser can take, remembered. The table's row alone does not tell: LALR
        joins the lookaheads of equal states, and a token may be refused only after some productions have been
        closed."""
        move = shape.stack.moves.get(choice) or self._move(shape.stack, choice)
        if move is None:
            return None
        kind, taken, builds, stack = move
        after = shape.after.get((kind, taken))
        if after is None:
            after = shape.after[kind, taken] = Shape(stack, shape, kind, taken, builds)
            self._kept += 1
        shape.steps[choice] = after
        return after

    def _move(self, stack: Stack, choice: Choice) -> Move | None:
        for kind, taken in choice.ways:
            found = self._stacks.step(stack, kind)
            if found is not None:
                builds, after = found
                move = stack.moves[choice] = (kind, taken, builds, after)
                return move
        return None

    def expected(self, stack: Stack) -> list[str]:
        """The classes that can stand where a clause stops, in the order of the grammar."""
        return self._stacks.expected(stack)
