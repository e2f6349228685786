"""Shelves: batches in an order, among which a name is looked up."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.model.batch import Batch, Origin
    from tamis.model.called import Index, Key


WHOLE: tuple[Origin, ...] = ("named", "by-product", "component", "used-recipe")
"""What was made and has a name, and is no share or part of something else."""


class Shelf:
    """Batches, each with its place in the order."""

    __slots__ = ("_places",)

    def __init__(self) -> None:
        self._places: dict[Batch, int] = {}

    def __iter__(self) -> Iterator[Batch]:
        return iter(sorted(self._places, key=self._places.__getitem__))

    def __len__(self) -> int:
        return len(self._places)

    def put(self, batch: Batch, place: int) -> None:
        """A batch is put there."""
        self._places[batch] = place

    def drop(self, batch: Batch) -> None:
        """A batch is gone, if it was there."""
        self._places.pop(batch, None)

    def called(self, keys: Sequence[Key], index: Index[Batch]) -> list[Batch]:
        """Those that have one of these keys, in order: found by the key, or one by one where that is less work."""
        places = self._places
        if not places:
            return []
        having = index.having(keys, len(places))
        if having is None:
            found = [batch for batch in places if batch.keys.has(keys)]
        else:
            found = [batch for batch in having if batch in places]
        return sorted(found, key=places.__getitem__) if len(found) > 1 else found


class Opened(Shelf):
    """The open batches of a component: set aside, named, or left by a share, in the order in which they were put down.

    They are many where much is named, and those of which only a share was taken are few: these are known apart, and
    once more those of them that are whole products, and those that are the rest of a written measure.
    """

    __slots__ = ("_last", "rests", "shared", "shared_whole")

    def __init__(self) -> None:
        super().__init__()
        self.shared = Shelf()
        self.shared_whole = Shelf()
        self.rests = Shelf()
        self._last = 0

    def __iter__(self) -> Iterator[Batch]:
        return iter(self._places)

    def open(self, batch: Batch) -> None:
        """A batch is put down."""
        self._last += 1
        self.put(batch, self._last)
        batch.home = self
        if batch.shared:
            self.share(batch)

    def share(self, batch: Batch) -> None:
        """A share of one is taken."""
        place = self._places.get(batch)
        if place is not None:
            self.shared.put(batch, place)
            if batch.origin in WHOLE:
                self.shared_whole.put(batch, place)

    def rest(self, batch: Batch) -> None:
        """One is the rest of a measure, of which a part went in."""
        place = self._places.get(batch)
        if place is not None:
            self.rests.put(batch, place)

    def drop(self, batch: Batch) -> None:
        """A batch is gone, if it was here."""
        super().drop(batch)
        self.shared.drop(batch)
        self.shared_whole.drop(batch)
        self.rests.drop(batch)
