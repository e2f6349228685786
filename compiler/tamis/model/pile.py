"""Piles: things in the order in which they came, of which some came as whole other piles.

A dish of a thousand components, each made of the one before, holds everything a thousand times over if each batch
keeps a list of its own. So a pile that goes into another one is linked, not copied, as it was at that moment: piles
only grow. Whoever looks through a pile meets each thing once, however often and on whichever ways it went in.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Generic, TypeVar

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

Thing = TypeVar("Thing")
Way = tuple[str, ...]

_LONGEST = 24
"""More steps of the way that something went nobody asks for."""


class _Link(NamedTuple):
    """Another pile as it was: its things (and links) up to a length, and the name of the step that it made."""

    entries: list  # type: ignore[type-arg]  # of things and links
    length: int
    step: str


class Pile(Generic[Thing]):
    """A pile; it is in no way changed but by what is added to it."""

    __slots__ = ("_entries", "_linked")

    def __init__(self, things: Iterable[Thing] = ()) -> None:
        self._entries: list[Thing | _Link] = list(things)
        self._linked = False

    def __iter__(self) -> Iterator[Thing]:
        return (thing for thing, _ in self.walk()) if self._linked else iter(self._entries)  # type: ignore[arg-type]

    def __contains__(self, thing: Thing) -> bool:
        return thing in self._entries or (self._linked and any(thing == other for other in self))

    def __eq__(self, other: object) -> bool:
        """Two piles are equal that hold the same things in the same order, on whichever ways these went in."""
        return isinstance(other, Pile) and list(self) == list(other)

    __hash__ = None  # type: ignore[assignment]  # piles grow

    def __len__(self) -> int:
        """How often something was put in, be it a thing or a pile."""
        return len(self._entries)

    def add(self, thing: Thing) -> None:
        """One thing goes in."""
        self._entries.append(thing)

    def join(self, other: Pile[Thing], step: str = "") -> None:
        """Another pile goes in, as it is now."""
        if not other._entries:
            return
        only = other._entries[0]
        link = _Link(other._entries, len(other._entries), step)
        if len(other._entries) == 1 and isinstance(only, _Link) and not (step and only.step):
            link = only._replace(step=step or only.step)
        self._entries.append(link)
        self._linked = True

    def own(self) -> list[Thing]:
        """What went in by itself."""
        return [entry for entry in self._entries if not isinstance(entry, _Link)]

    def walk(self, start: int = 0) -> Iterator[tuple[Thing, Way]]:
        """Everything in it, or all that came after the first so many entries; each with the steps by which it came
        here first: innermost first, each step once."""
        met = {id(self._entries): len(self._entries)}
        stack: list[tuple[Iterator[Thing | _Link], Way]] = [(iter(self._entries[start:]), ())]
        while stack:
            entries, way = stack[-1]
            for entry in entries:
                if not isinstance(entry, _Link):
                    yield entry, way
                    continue
                already = met.get(id(entry.entries), 0)
                if already < entry.length:
                    met[id(entry.entries)] = entry.length
                    stack.append((iter(entry.entries[already : entry.length]), _longer(way, entry.step)))
                    break
            else:
                stack.pop()


def _longer(way: Way, step: str) -> Way:
    """The way from one pile further inside."""
    return (step, *(other for other in way if other != step))[:_LONGEST] if step else way
