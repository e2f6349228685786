"""The open batches of a component: set aside, named, or left by a share, in the order in which they were put down."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.model.batch import Batch


class Opened:
    """They are many where much is named, and those of which only a share was taken are few: these are known apart."""

    __slots__ = ("_last", "_places", "_shared")

    def __init__(self) -> None:
        self._places: dict[Batch, int] = {}
        self._shared: set[Batch] = set()
        self._last = 0

    def __iter__(self) -> Iterator[Batch]:
        return iter(self._places)

    def put(self, batch: Batch) -> None:
        """A batch is put down."""
        self._last += 1
        self._places[batch] = self._last
        batch.home = self
        if batch.shared:
            self._shared.add(batch)

    def share(self, batch: Batch) -> None:
        """A share of one is taken."""
        if batch in self._places:
            self._shared.add(batch)

    def drop(self, batch: Batch) -> None:
        """A batch is gone, if it was here."""
        self._places.pop(batch, None)
        self._shared.discard(batch)

    def shared(self) -> list[Batch]:
        """Those of which a share was taken."""
        return sorted(self._shared, key=self._places.__getitem__)
