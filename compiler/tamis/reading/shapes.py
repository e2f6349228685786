"""Shapes of clauses: the rows of classes that were met, and what is known of a clause by its row alone.

`[200 g flour, sifted]` and `[85 g honey, warmed]` have one shape. The parser goes along the shapes that it knows, word
by word. Where one ends, its tree is known but for the words, and often how its record is made of them (`usual.py`).
"""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.kitchen.house import Kitchen
    from tamis.lalr.parse import Stack
    from tamis.lalr.values import Build
    from tamis.reading.clauses import Read
    from tamis.syntax.cutting import Choice, Cut
    from tamis.syntax.document import Clause

    Way = Callable[[Clause, Kitchen, Cut], Read | None]
    Move = tuple[str, int, tuple[Build, ...], Stack]
    """The class that a choice is taken for and its number of words, what was built before, the stack after."""


class Shape:
    """A row of classes from the head of a clause: the parser's stack behind it, and where each choice leads from there.

    `builds` is what the last of its classes built before it stood there; that class has the tokens `first` to `end`."""

    __slots__ = ("after", "before", "builds", "end", "first", "kind", "last", "stack", "steps", "used", "way")

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
        self.used = False

    def tree(self, cut: Cut | None = None) -> Any:
        """The tree of a clause that ends here. Without one, of all of them: a leaf has the numbers of its first and its
        last token, and no words."""
        shape, row = self, list[Shape]()
        while shape.before is not None:
            row.append(shape)
            shape = shape.before
        values: list[Any] = []
        for shape in reversed(row):
            for build in shape.builds:
                build(values)
            text, start, end = "", shape.first, shape.end - 1
            if cut is not None:
                start, end = cut.starts[start], cut.ends[end]
                text = cut.text[start:end]
            values.append((shape.kind, text, start, end))
        for build in self.last or ():
            build(values)
        self.used = True
        return values[0]
