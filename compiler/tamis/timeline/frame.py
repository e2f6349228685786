"""Blocks with their measures: how long each is, where its tasks lie in it, and how far apart blocks must
start.

The same blocks are longer when estimates take their longest. A frame is their shape in one such case.
Whatever follows an estimate without a gap may be called for at the estimate's least end already, so what it
needs (other work, hands) must be there by then: `ahead` is by how much sooner. That is what lets a plan
hold however the food behaves. Hands are kept free by how much sooner it may be than the work before it in
its block (`kept`), for what comes between the two comes sooner with them. Only a pot that is stirred now and
then waits for a moment until the cook has a hand free: no hands are kept for it.
"""

from __future__ import annotations

from operator import add

from tamis.timeline.blocks import Blocks
from tamis.timeline.network import Mode
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from tamis.timeline.network import Task

_AHEAD = 900
"""Seconds at most for which hands and what is wanted are there before they need be; common practice. A joint that is
done half an hour early waits for its sauce."""

Before = tuple[int, int, bool]
Stretch = tuple[int, int]
Edge = tuple[int, int]
"""A block that comes later, and the least seconds from the start of the one before to its start."""


class Frame:
    """`offsets`, `lengths`, `ahead` and `kept` by task, `ends` (the length) and `after` (what must come later) by
    block. `late` asks for what lies within a block to be done as late, not as early, as it can be."""

    __slots__ = ("after", "ahead", "blocks", "ends", "kept", "late", "lengths", "mode", "offsets")

    def __init__(self, blocks: Blocks, mode: Mode, late: bool = True) -> None:
        self.blocks = blocks
        self.late = late
        self.mode = mode
        tasks = blocks.network.tasks
        self.lengths = [task.lo for task in tasks]
        order = _order(blocks)
        self.offsets = _offsets(order, blocks, self.lengths)
        if late:
            self.offsets = _late(blocks, self.lengths, self.offsets)
        self.ahead = [0] * len(tasks)
        if mode == "most":
            early = self.offsets
            ends = list(map(add, early, self.lengths))
            self.lengths = [task.length("most") for task in tasks]
            self.offsets = _offsets(order, blocks, self.lengths)
            if late:
                self.offsets = _late(blocks, self.lengths, self.offsets, ends)
            self.ahead = [
                min(late - soon, _AHEAD) if late > soon and not task.calls else 0
                for task, late, soon in zip(tasks, self.offsets, early, strict=True)
            ]
        self.kept = self._kept()
        ends = list(map(add, self.offsets, self.lengths))
        self.ends = [max([ends[task] for task in members]) for members in blocks.members]
        self.after: list[list[Edge]] = [[] for _ in blocks.members]
        self._between()

    @property
    def sure(self) -> bool:
        """Whether no length here depends on the food."""
        return all(task.kind != "estimate" for task in self.blocks.network.tasks)

    def by_hand(self, members: list[int]) -> list[int]:
        """The tasks of a block that want hands, one after another."""
        tasks = self.blocks.network.tasks
        return sorted([task for task in members if tasks[task].hands], key=self.offsets.__getitem__)

    def _kept(self) -> list[int]:
        kept = [0] * len(self.offsets)
        for members in self.blocks.members if any(self.ahead) else ():
            before = 0
            for task in self.by_hand(members):
                kept[task] = max(0, self.ahead[task] - before)
                before = self.ahead[task]
        return kept

    def _between(self) -> None:
        of, offsets = self.blocks.of, self.offsets
        for _, (a, b, lo, hi, from_start, soon) in self.blocks.between:
            gap = offsets[a] - offsets[b] + (0 if from_start else self.lengths[a]) + lo
            # What must be fresh cannot also be there beforehand: it waits for the food to be nearly done.
            self.after[of[a]].append((of[b], gap if soon or hi is not None else gap + self.ahead[b]))


def _offsets(order: list[list[int]], blocks: Blocks, lengths: list[int]) -> list[int]:
    """Each task's start in its block: in this order, one pair of hands doing one thing at a time."""
    tasks, inside = blocks.network.tasks, blocks.inside
    offsets = [0] * len(tasks)
    for members in order:
        free = 0
        for task in members:
            hands = tasks[task].hands
            at = _soonest(inside.get(task, ()), offsets, lengths, free if hands else 0)
            offsets[task] = at
            if hands:
                free = at + lengths[task]
    return offsets


def _late(blocks: Blocks, lengths: list[int], offsets: list[int], ends: list[int] | None = None) -> list[int]:
    """The same starts, but what only has to be done before something else of its block as late as that and a pair of
    hands let it, and so that it ends no later than at `ends`: what is done beside a wait is done however short
    that turns out to be."""
    later = list(offsets)
    for members in blocks.members:
        if len(members) > 2:
            length = max([offsets[task] + lengths[task] for task in members])
            chains = blocks.chains_of(members)
            for chain in sorted(chains, key=lambda chain: -offsets[chain[0]]) if len(chains) > 1 else ():
                room = _room(chain, blocks, lengths, later, length, ends)
                if room > 0:
                    _move(chain, members, blocks, lengths, later, room)
    return later


def _room(
    chain: list[int], blocks: Blocks, lengths: list[int], offsets: list[int], length: int, ends: list[int] | None
) -> int:
    """By how much later the tasks of a chain may be for what they are linked with."""
    inside = set(chain)
    most = [length if ends is None else min(length, ends[task]) for task in chain]
    room = min([end - offsets[task] - lengths[task] for end, task in zip(most, chain, strict=True)])
    for a, b, lo, hi, from_start, _ in blocks.within(chain) if room > 0 else ():
        gap = offsets[b] - offsets[a] - (0 if from_start else lengths[a])
        if a in inside:
            room = min(room, gap - lo)
        elif hi is not None:
            room = min(room, hi - gap)
    return room


def _move(
    chain: list[int], members: list[int], blocks: Blocks, lengths: list[int], offsets: list[int], room: int
) -> None:
    """Moves the tasks of a chain by so much, or by less where hands are busy then."""
    inside, busy = set(chain), [task for task in members if blocks.network.tasks[task].hands]
    held = [(task in inside, (offsets[task], offsets[task] + lengths[task])) for task in busy]
    room = _clear([one for mine, one in held if mine], [one for mine, one in held if not mine], room)
    for task in chain if room > 0 else ():
        offsets[task] += room


def _clear(mine: list[Stretch], busy: list[Stretch], room: int) -> int:
    """The greatest shift up to `room` at which no stretch of work runs into one that keeps the hands already."""
    clash = True
    while room > 0 and clash:
        clash = False
        for begin, end in mine:
            for other, done in busy:
                if begin + room < done and other < end + room:
                    room, clash = other - end, True
    return room


def _soonest(inside: Sequence[Before], offsets: list[int], lengths: list[int], at: int) -> int:
    for a, lo, from_start in inside:
        soonest = offsets[a] + lo + (0 if from_start else lengths[a])
        if soonest > at:
            at = soonest
    return at


def _order(blocks: Blocks) -> list[list[int]]:
    """The tasks of each block in the order in which hands take them up: that of the text, but what runs beside a wait
    is done in it where it fits even if the wait is at its shortest, and not after the lines behind that."""
    tasks, inside = blocks.network.tasks, blocks.inside
    order = []
    for members in blocks.members:
        if any([from_start for task in members for _, _, from_start in inside.get(task, ())]):
            members = _filled(members, tasks, inside)
        order.append(members)
    return order


def _filled(members: list[int], tasks: Sequence[Task], inside: Mapping[int, Sequence[Before]]) -> list[int]:
    least = [task.lo for task in tasks]
    offsets = [0] * len(tasks)
    busy: list[Stretch] = []
    for task in members:
        hands = tasks[task].hands
        at = _soonest(inside.get(task, ()), offsets, least, 0)
        if hands:
            takes = tasks[task].length("most")
            for begin, end in sorted(busy):
                if end > at and at + takes > begin:
                    at = end
            busy.append((at, at + takes))
        offsets[task] = at
    return sorted(members, key=lambda task: (offsets[task], task))
