"""What the log has told up to an entry: how the batches stand, what they are called, and what went into them."""

from __future__ import annotations

from tamis.model.replay import Replay
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Recipe
    from tamis.source import Source, Span

_FEW = 3
"""So many names tell what a batch is made of; of more, the first two."""


class Told:
    """`names` are those that the cook gave to batches, `contents` what went into each, `began` the action in
    which it began."""

    __slots__ = ("began", "contents", "names", "recipe", "replay", "source")

    def __init__(self, recipe: Recipe, source: Source) -> None:
        self.recipe = recipe
        self.source = source
        self.replay = Replay()
        self.began: dict[int, int] = {}
        self.names: dict[int, str] = {}
        self.contents: dict[int, list[str]] = {}

    def line(self, action: int) -> int:
        """The line of the file in which an action begins."""
        return self.source.place(self.recipe.actions[action].span.start).line

    def said(self, span: Span) -> str:
        """The words of a place, in one line."""
        return " ".join(self.source.slice(span).split())

    def name(self, batch: int) -> str:
        """What a batch is called, else what is in it."""
        if batch in self.names:
            return self.names[batch]
        parts = list(dict.fromkeys(self.contents.get(batch, ())))
        if len(parts) > _FEW:
            parts[2:] = [f"{len(parts) - 2} more"]
        return joined(parts)


def joined(names: Sequence[str]) -> str:
    """`flour, water and salt`."""
    return " and ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))
