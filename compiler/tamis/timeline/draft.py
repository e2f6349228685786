"""A first placing of everything, made from the end: each block as late as it can be.

Trying every order of a cook's work is out of the question for a long recipe and needless for most. So
blocks are placed once, each as late as what needs it and a free pair of hands allow; only where that breaks
a limit (a starter would stand too long) is the late block glued to what it must follow, and all is placed
again.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from heapq import heapify, heappop, heappush
from typing import NamedTuple

from tamis.timeline.bench import Bench, Held
from tamis.timeline.blocks import Blocks, layout
from tamis.timeline.network import Mode, Network, broken_limits

_ROUNDS = 3


class Draft(NamedTuple):
    """A placing of all blocks for estimates at their longest: starts of the tasks (the end of all is zero
    or less), who does what in which order, and the limits that it breaks."""

    blocks: Blocks
    starts: list[int]
    turns: list[tuple[int, int]]
    broken: tuple[int, ...]


def drafted(network: Network, nights: Iterable[tuple[int, int]] = (), mode: Mode = "most") -> Draft:
    """The placing that breaks the fewest limits: what comes too late is glued to what it must follow, and
    all is placed again."""
    nights, glued = list(nights), set[int]()
    best = draft = _placed(network, glued, nights, mode)
    for _ in range(_ROUNDS):
        loose = {index for index in draft.broken if not network.links[index].joins} - glued
        if not loose:
            break
        glued |= loose
        draft = _placed(network, glued, nights, mode)
        if len(draft.broken) < len(best.broken):
            best = draft
    return best


def _placed(network: Network, glued: Collection[int], nights: list[tuple[int, int]], mode: Mode) -> Draft:
    """Every block at its latest place. Of those that nothing unplaced waits for, the one with the longest
    way before it is placed first: the long braise ends at the table, and the peeling finds its place while
    it simmers."""
    blocks = Blocks(network, glued)
    offsets, lengths = layout(network, blocks, mode)
    early, _ = layout(network, blocks, "least")
    starts = [0] * len(network.tasks)
    bench = Bench(network.cooks, nights)
    ways = _ways(network, blocks, offsets, lengths)
    wanted = _wanted(network, blocks)
    ready = [(-ways[block], block) for block, count in enumerate(wanted) if not count]
    heapify(ready)
    while ready:
        _, block = heappop(ready)
        members = blocks.members[block]
        latest = 0
        for task in members:
            latest = min(latest, _latest(network, blocks, starts, task, lengths[task]) - offsets[task])
        at = bench.place(_held(network, members, early, offsets, lengths), latest)
        for task in members:
            starts[task] = at + offsets[task]
            for index in blocks.incoming[task]:
                before = blocks.of[network.links[index].a]
                if before != block:
                    wanted[before] -= 1
                    if not wanted[before]:
                        heappush(ready, (-ways[before], before))
    return Draft(blocks, starts, bench.turns(), broken_limits(network, starts, lengths))


def _held(network: Network, members: list[int], early: list[int], offsets: list[int], lengths: list[int]) -> list[Held]:
    """When a block wants hands: from the moment that they may be called for to the end of the work."""
    held = []
    free = 0
    for task in members:
        if network.tasks[task].hands and lengths[task]:
            end = offsets[task] + lengths[task]
            held.append((max(free, min(early[task], offsets[task])), end, task))
            free = end
    return held


def _latest(network: Network, blocks: Blocks, starts: list[int], task: int, length: int) -> int:
    """The latest start of a task by the starts of what is placed already."""
    latest = -length
    for index in blocks.outgoing[task]:
        _, b, lo, _, from_start = network.links[index]
        if blocks.of[b] != blocks.of[task]:
            latest = min(latest, starts[b] - lo - (0 if from_start else length))
    return latest


def _wanted(network: Network, blocks: Blocks) -> list[int]:
    """How many links lead from each block to others."""
    wanted = [0] * len(blocks.members)
    for link in network.links:
        if blocks.of[link.a] != blocks.of[link.b]:
            wanted[blocks.of[link.a]] += 1
    return wanted


def _ways(network: Network, blocks: Blocks, offsets: list[int], lengths: list[int]) -> list[int]:
    """The longest way from the beginning to the end of each block, if nobody had to wait for hands."""
    starts = [0] * len(blocks.members)
    ways = [0] * len(blocks.members)
    for block in reversed(range(len(blocks.members))):
        for task in blocks.members[block]:
            for index in blocks.incoming[task]:
                a, _, lo, _, from_start = network.links[index]
                if blocks.of[a] != block:
                    at = starts[blocks.of[a]] + offsets[a] + lo + (0 if from_start else lengths[a])
                    starts[block] = max(starts[block], at - offsets[task])
        ways[block] = starts[block] + max(offsets[task] + lengths[task] for task in blocks.members[block])
    return ways
