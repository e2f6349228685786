"""By what words batches may be called: from a word to the batches that answer to it, and from a batch to its words.

A reference asks for a handful of keys, and finds the few batches that have one of them, however many others there are.
Where a batch goes into another one, its keys are not copied: the two read the same roll from then on, each up to its
own length, and the other one writes on. So in a chain of a thousand components there is one roll and no thousand.
"""

from __future__ import annotations

from bisect import bisect_right
from itertools import islice

from tamis.typed import TYPE_CHECKING, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

Thing = TypeVar("Thing")
Key = tuple[str, str | tuple[str, ...]]
"""What is matched (`name`: a given name; `food`: the whole name of a food; `word`: a word that is enough for one;
`goods`, `show` and `animal`: what food it is, of which kind, of which animal; `pieces`: what it may be divided into)
and the words."""

_FEW = 16
"""So many keys are sooner copied than looked up in a roll of their own."""


class Roll(Generic[Thing]):
    """Keys with their places, in the order in which they came, and who reads how many of them: shortest first."""

    __slots__ = ("entered", "lengths", "places", "readers")

    def __init__(self) -> None:
        self.places: dict[Key, int] = {}
        self.entered = 0
        self.lengths: list[int] = []
        self.readers: list[Thing] = []


class Keys(Generic[Thing]):
    """The keys of one batch: a roll that only it writes on, and others up to a length."""

    __slots__ = ("_own", "_read")

    def __init__(self) -> None:
        self._own: Roll[Thing] | None = None
        self._read: dict[Roll[Thing], int] = {}

    def has(self, keys: Iterable[Key]) -> bool:
        """Whether one of these is among them."""
        own, read = self._own, self._read
        for key in keys:
            if own is not None and key in own.places:
                return True
            for roll, length in read.items():
                if roll.places.get(key, length) < length:
                    return True
        return False

    def add(self, keys: Iterable[Key]) -> None:
        """New ones come in."""
        if self._own is None:
            self._own = Roll()
        places = self._own.places
        for key in keys:
            places.setdefault(key, len(places))

    def join(self, other: Keys[Thing]) -> None:
        """All those of another batch, as they are now, come in; the shorter roll is copied into the longer one."""
        for roll, length in other._read.items():
            self._read_too(roll, length)
        theirs, mine = other._own, self._own
        if theirs is None:
            return
        if mine is not None and len(mine.places) >= len(theirs.places):
            self.add(theirs.places)
            return
        self._own, other._own = theirs, None
        other._read[theirs] = len(theirs.places)
        self._read.pop(theirs, None)
        if mine is not None:
            self.add(mine.places)

    def _read_too(self, roll: Roll[Thing], length: int) -> None:
        if roll is self._own or self._read.get(roll, 0) >= length:
            return
        if roll not in self._read and length <= max(_FEW, len(self._own.places) if self._own else 0):
            self.add(islice(roll.places, length))
        else:
            self._read[roll] = length

    def rolls(self) -> Iterator[tuple[Roll[Thing], int]]:
        """Where they are written, and up to which length they are read."""
        yield from self._read.items()
        if self._own is not None:
            yield self._own, len(self._own.places)


def all_keys(several: Iterable[Keys[Thing]]) -> Iterator[Key]:
    """All keys of some batches, those of a roll that they share only once."""
    read: dict[Roll[Thing], int] = {}
    for keys in several:
        for roll, length in keys.rolls():
            read[roll] = max(length, read.get(roll, 0))
    for roll, length in read.items():
        yield from islice(roll.places, length)


class Index(Generic[Thing]):
    """From a key to the batches that have it; a batch is entered when nothing more comes in."""

    __slots__ = ("_rolls",)

    def __init__(self) -> None:
        self._rolls: dict[Key, list[Roll[Thing]]] = {}

    def enter(self, thing: Thing, keys: Keys[Thing]) -> None:
        """From now on it is found by these keys."""
        for roll, length in keys.rolls():
            for key in islice(reversed(roll.places), len(roll.places) - roll.entered):
                self._rolls.setdefault(key, []).append(roll)
            roll.entered = len(roll.places)
            at = bisect_right(roll.lengths, length)
            roll.lengths.insert(at, length)
            roll.readers.insert(at, thing)

    def having(self, keys: Iterable[Key], most: int) -> dict[Thing, None] | None:
        """What was entered with one of these keys, or None where it is more than so many."""
        found: dict[Thing, None] = {}
        for key in keys:
            for roll in self._rolls.get(key, ()):
                begin = bisect_right(roll.lengths, roll.places[key])
                most -= max(1, len(roll.readers) - begin)
                if most < 0:
                    return None
                found.update(dict.fromkeys(roll.readers[begin:]))
        return found
