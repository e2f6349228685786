"""Blocks with their measures: how long each is, where its tasks lie in it, and how far apart blocks must
start.

The same blocks are longer when estimates take their longest. A frame is their shape in one such case.
Whatever follows an estimate without a gap may be called for at the estimate's least end already, so what it
needs (other work, hands) must be there by then: `ahead` is by how much sooner. That is what lets a plan
hold however the food behaves. Only a pot that is stirred now and then waits for a moment until the cook has a hand
free: no hands are kept for it.
"""

from __future__ import annotations

from operator import add

from tamis.timeline.blocks import Blocks
from tamis.timeline.network import Mode
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from tamis.timeline.network import Task

Before = tuple[int, int, bool]
Edge = tuple[int, int]
"""A block that comes later, and the least seconds from the start of the one before to its start."""


class Frame:
    """`offsets`, `lengths` and `ahead` by task, `ends` (the length) and `after` (what must come later) by
    block."""

    __slots__ = ("after", "ahead", "blocks", "ends", "lengths", "mode", "offsets")

    def __init__(self, blocks: Blocks, mode: Mode) -> None:
        self.blocks = blocks
        self.mode = mode
        tasks = blocks.network.tasks
        self.lengths = [task.lo for task in tasks]
        order = _order(blocks)
        self.offsets = _offsets(order, blocks, self.lengths)
        self.ahead = [0] * len(tasks)
        if mode == "most":
            early = self.offsets
            self.lengths = [task.length("most") for task in tasks]
            self.offsets = _offsets(order, blocks, self.lengths)
            self.ahead = [
                late - soon if late > soon and not task.calls else 0
                for task, late, soon in zip(tasks, self.offsets, early, strict=True)
            ]
        ends = list(map(add, self.offsets, self.lengths))
        self.ends = [max([ends[task] for task in members]) for members in blocks.members]
        self.after: list[list[Edge]] = [[] for _ in blocks.members]
        self._between()

    @property
    def sure(self) -> bool:
        """Whether no length here depends on the food."""
        return all(task.kind != "estimate" for task in self.blocks.network.tasks)

    def _between(self) -> None:
        of, offsets = self.blocks.of, self.offsets
        for _, (a, b, lo, hi, from_start) in self.blocks.between:
            gap = offsets[a] - offsets[b] + (0 if from_start else self.lengths[a]) + lo
            # What must be fresh cannot also be there beforehand: it waits for the food to be nearly done.
            self.after[of[a]].append((of[b], gap if hi is not None else gap + self.ahead[b]))


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
        if len(members) > 2 and any(tasks[task].soon and tasks[task].hands for task in members):
            members = _filled(members, tasks, inside)
        order.append(members)
    return order


def _filled(members: list[int], tasks: Sequence[Task], inside: Mapping[int, Sequence[Before]]) -> list[int]:
    least = [task.lo for task in tasks]
    offsets = [0] * len(tasks)
    busy: list[tuple[int, int]] = []
    for task in members:
        hands, soon = tasks[task].hands, tasks[task].soon
        at = _soonest(inside.get(task, ()), offsets, least, 0)
        if hands:
            takes = tasks[task].length("most")
            for begin, end in sorted(busy):
                if end > at and not (soon and at + takes <= begin):
                    at = end
            busy.append((at, at + takes))
        offsets[task] = at
    return sorted(members, key=lambda task: (offsets[task], task))
