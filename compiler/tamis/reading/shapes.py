"""Shapes of clauses: the rows of classes that were met, and for those met often a function that makes the tree at once.

`[200 g flour, sifted]` and `[85 g honey, warmed]` have one shape. The parser goes along the shapes that it knows, word
by word, and where one ends its tree is known but for the words.
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from tamis.lalr.parse import Stack
    from tamis.lalr.values import Build, Node
    from tamis.syntax.cutting import Choice

    Move = tuple[str, int, tuple[Build, ...], Stack]
    """The class that a choice is taken for and its number of words, what was built before, the stack after."""
    Step = tuple[str, int, "Shape"]  # the class that a choice turns out to be, its number of words, the shape with it

# To make a function takes as long as to build some dozens of trees.
_OFTEN = 16
# Nested deeper than Python reads brackets, with room to spare.
_DEEPEST = 40


class Shape:
    """A row of classes from the head of a clause: the parser's stack behind it, and where each choice leads from there.

    `builds` is what the last of its classes built before it stood there."""

    __slots__ = ("after", "before", "builds", "last", "stack", "steps", "tree", "used")

    def __init__(self, stack: Stack, before: Shape | None, builds: tuple[Build, ...]) -> None:
        self.stack, self.before, self.builds = stack, before, builds
        self.steps: dict[Choice, Step] = {}
        self.after: dict[tuple[str, int], Shape] = {}
        self.last: tuple[Build, ...] | None = None
        """What is built where a clause ends with this shape."""
        self.tree: Callable[[list[Node]], Node] | None = None
        """The tree from the leaves, once the shape has been met often."""
        self.used = 0

    def built(self, leaves: Iterable[Any]) -> Any:
        """The tree of a clause that ends here, from its leaves."""
        shapes = []
        shape = self
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
        self.used += 1
        if self.used == _OFTEN:
            self.tree = self._at_once(len(shapes))
        return values[0]

    def _at_once(self, size: int) -> Callable[[list[Node]], Node] | None:
        """A function that makes the tree in one expression; None for one that is nested too deep."""
        tree = self.built(range(size))
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
