"""Shapes of clauses: the rows of classes that were met, and what is known of a clause by its row alone.

`[200 g flour, sifted]` and `[85 g honey, warmed]` have one shape. The parser goes along the shapes that it knows, word
by word. Where one ends, its tree is known but for the words, and often how its record is made of them (`usual.py`).
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from tamis.lalr.parse import Stack
    from tamis.lalr.values import Build, Node
    from tamis.reading.usual import Way
    from tamis.syntax.cutting import Choice, Cut

    Move = tuple[str, int, tuple[Build, ...], Stack]
    """The class that a choice is taken for and its number of words, what was built before, the stack after."""

# To make a function takes as long as to build some dozens of trees.
_OFTEN = 32
# Nested deeper than Python reads brackets, with room to spare.
_DEEPEST = 40


class Shape:
    """A row of classes from the head of a clause: the parser's stack behind it, and where each choice leads from there.

    `builds` is what the last of its classes built before it stood there; that class has the tokens `first` to `end`."""

    __slots__ = (
        "_places", "_tree", "after", "before", "builds", "end", "first", "kind", "last", "stack", "steps", "used",
        "way",
    )  # fmt: skip

    def __init__(
        self, stack: Stack, before: Shape | None = None, kind: str = "", taken: int = 0, builds: tuple[Build, ...] = ()
    ) -> None:
        self.stack, self.before, self.kind, self.builds = stack, before, kind, builds
        self.first: int = before.end if before else 0
        self.end: int = self.first + taken
        self.steps: dict[Choice, Shape] = {}
        self.after: dict[tuple[str, int], Shape] = {}
        self.last: tuple[Build, ...] | None = None
        """What is built where a clause ends with this shape."""
        self.way: Way | None = None
        """How the record of such a clause is made without its tree, once that was asked for."""
        self.used = 0
        self._places: list[tuple[str, int, int]] = []
        self._tree: Callable[[list[Node]], Node] | None = None
        """The tree from the leaves, once the shape has been met often."""

    def tree(self, cut: Cut) -> Node:
        """The tree of a clause that ends here."""
        text, starts, ends = cut.text, cut.starts, cut.ends
        places = self._places = self._places or self._row()
        leaves: list[Any] = [
            (kind, text[starts[first] : ends[last]], starts[first], ends[last]) for kind, first, last in places
        ]
        if self._tree is not None:
            return self._tree(leaves)
        self.used += 1
        if self.used == _OFTEN:
            self._tree = self._at_once(len(places))
        tree: Node = self._built(leaves)
        return tree

    def model(self) -> Node:
        """The tree of all of them: a leaf has the numbers of its first and its last token, and no words."""
        tree: Node = self._built([(kind, "", first, last) for kind, first, last in self._row()])
        return tree

    def _row(self) -> list[tuple[str, int, int]]:
        row, shape = [], self
        while shape.before is not None:
            row.append((shape.kind, shape.first, shape.end - 1))
            shape = shape.before
        return row[::-1]

    def _built(self, leaves: Iterable[Any]) -> Any:
        shapes, shape = [], self
        while shape.before is not None:
            shapes.append(shape)
            shape = shape.before
        values: list[Any] = []
        for shape, leaf in zip(reversed(shapes), leaves, strict=True):
            for build in shape.builds:
                build(values)
            values.append(leaf)
        for build in self.last or ():
            build(values)
        return values[0]

    def _at_once(self, size: int) -> Callable[[list[Node]], Node] | None:
        """A function that makes the tree in one expression; None for one that is nested too deep."""
        tree = self._built(range(size))
        if _depth(tree) > _DEEPEST:
            return None
        made: Callable[[list[Node]], Node] = eval(f"lambda leaves: {_said(tree)}", {"__builtins__": {}})
        return made


def _depth(tree: Any) -> int:
    return 0 if tree.__class__ is int else 1 + max(map(_depth, tree[1]), default=0)


def _said(tree: Any) -> str:
    if tree.__class__ is int:
        return f"leaves[{tree}]"
    return f"({tree[0]!r}, [{', '.join(map(_said, tree[1]))}])"
