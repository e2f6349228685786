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
    from tamis.reading.shapes import Move, Step

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
        self._empty = Shape(self._stacks.first, None, ())
        self._kept = 0

    def parse(self, text: str) -> Node | Fault:
        """The tree of a clause, or where it stops being one."""
        cut = self.vocabulary.cutter.cut(text)
        return self.parse_cut(cut)

    def parse_cut(self, cut: Cut) -> Node | Fault:
        """The same for a text already cut."""
        text, words, vocabulary = cut.text, cut.words, self.vocabulary
        known, later, choices = vocabulary.of_first, vocabulary.of_later, None
        leaves: list[Node] = []
        at, end, kind = 0, len(words), ""
        shape = self._first(end)
        starts, ends, fixed = cut.starts, cut.ends, cut.fixed
        while at < end:
            choice = fixed[at]
            if choice is None:
                choice = known.get(words[at]) or vocabulary.choice(words, at)
            elif choice is COMMA and kind not in _NOUNS:
                choices = choices or Choices(cut, vocabulary)
                choice = choices.at(at)
            step = shape.steps.get(choice) or self._step(shape, choice)
            if step is None:
                return Fault(at, starts[at], ends[at], shape.stack)
            kind, taken, shape = step
            first = starts[at]
            at += taken
            last = ends[at - 1]
            leaves.append((kind, text[first:last], first, last))  # type: ignore[arg-type]  # a leaf is a node too
            known = later
        if shape.tree is not None:
            return shape.tree(leaves)
        if shape.last is None:
            found = self._stacks.step(shape.stack, END) if leaves else None
            if found is None:
                return Fault(at, len(text), len(text), shape.stack)
            shape.last = found[0]
        tree: Node = shape.built(leaves)
        return tree

    def _first(self, length: int) -> Shape:
        if self._kept + self._stacks.made > _MOST_KEPT:
            self._stacks.forget()
            self._empty = Shape(self._stacks.first, None, ())
            self._kept = 0
        return self._empty if length < _LONG else Shape(Stack(self._empty.stack.state, None), None, ())

    def _step(self, shape: Shape, choice: Choice) -> Step | None:
        """The first way of a choice that the parser can take, remembered. The table's row alone does not tell: LALR
        joins the lookaheads of equal states, and a token may be refused only after some productions have been
        closed."""
        move = shape.stack.moves.get(choice) or self._move(shape.stack, choice)
        if move is None:
            return None
        kind, taken, builds, stack = move
        after = shape.after.get((kind, taken))
        if after is None:
            after = shape.after[kind, taken] = Shape(stack, shape, builds)
            self._kept += 1
        step = shape.steps[choice] = (kind, taken, after)
        return step

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
