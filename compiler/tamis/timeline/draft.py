"""A first placing of everything, made from the end: each block as late as it can be.

Trying every order of a cook's work is out of the question for a long recipe and needless for most. So
blocks are placed once, each as late as what needs it and a free pair of hands allow; only where that breaks
a limit (a starter would stand too long) is the late block glued to what it must follow, and all is placed
again. Where food would stand that is good only hot or fresh, or is only begun, a few other ways of placing
are tried, and the best is taken.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from heapq import heapify, heappop, heappush
from operator import add

from tamis.record import NamedTuple
from tamis.timeline.bench import Bench, Held
from tamis.timeline.blocks import Blocks
from tamis.timeline.frame import Edge, Frame
from tamis.timeline.network import Mode, Network, broken_limits

_ROUNDS = 3
_SOON = 300
"""Seconds for which hot food, or what is only begun, stands without harm; common practice."""
_OTHER_WAYS = ((True, True), (False, False), (False, True))
"""Ways of placing: whether work within a block is done late, and whether what presses goes before the longest way."""


class Draft(NamedTuple):
    """A placing of all blocks in one frame: starts of the tasks (the end of all is zero or less), which
    tasks follow each other in a cook's hands, and the limits that it breaks."""

    frame: Frame
    starts: list[int]
    turns: list[tuple[int, int]]
    broken: tuple[int, ...]


def drafted(network: Network, mode: Mode = "most", nights: Iterable[tuple[int, int]] = ()) -> Draft:
    """The placing that breaks the fewest limits, and of those the one in which the least time goes by and the least
    food stands. Where none stands in the first, that is taken."""
    nights, blocks = list(nights), Blocks(network)
    frame = Frame(blocks, mode)
    best = _glued(frame, nights, False)
    for late, pressing in _OTHER_WAYS:
        if not best.broken and not _standing(best):
            break
        if late != frame.late:
            early = Frame(blocks, mode, late)
            if early.offsets == frame.offsets:
                break
            frame = early
        best = min(best, _glued(frame, nights, pressing), key=_cost)
    begun = _left_begun(best)
    if begun and not best.broken and not nights:
        frame = Frame(Blocks(network, begun), mode, best.frame.late)
        best = min(best, *[_glued(frame, nights, pressing, begun) for pressing in (False, True)], key=_cost)
    return best


def _left_begun(draft: Draft) -> frozenset[int]:
    """The links, by index, from what is only begun to what goes on with it, where other work comes between."""
    starts, lengths = draft.starts, draft.frame.lengths
    links = enumerate(draft.frame.blocks.network.links)
    return frozenset(
        at for at, link in links if link.soon == 1 and starts[link.b] - starts[link.a] - lengths[link.a] > _SOON
    )


def _cost(draft: Draft) -> tuple[int, int]:
    return len(draft.broken), -2 * min(draft.starts, default=0) + _standing(draft)


def _standing(draft: Draft) -> int:
    """The seconds that food stands which is to be taken up soon, beyond what does it no harm; what is hot or fresh
    counts twice, but a sauce in its pan once."""
    starts, ends = draft.starts, list(map(add, draft.starts, draft.frame.lengths))
    soon = [link for link in draft.frame.blocks.network.links if link.soon]
    return sum([(2 if link.soon > 2 else 1) * max(0, starts[link.b] - ends[link.a] - _SOON) for link in soon])


def _glued(frame: Frame, nights: list[tuple[int, int]], pressing: bool, at_first: Collection[int] = ()) -> Draft:
    """The placing of one way that breaks the fewest limits: what comes too late is glued to what it must follow, and
    all is placed again. The frame has links that are glued `at_first`."""
    network, glued = frame.blocks.network, set(at_first)
    best = draft = _placed(frame, nights, pressing)
    for _ in range(_ROUNDS):
        loose = {index for index in draft.broken if not network.links[index].joins} - glued
        if not loose:
            break
        glued |= loose
        blocks = Blocks(network, glued)
        if blocks.members == draft.frame.blocks.members:
            break  # nothing took the glue: what already follows one task at once cannot be glued to a second
        draft = _placed(Frame(blocks, frame.mode, frame.late), nights, pressing)
        if len(draft.broken) < len(best.broken):
            best = draft
    return _within_waits(best, nights, pressing)


def _within_waits(draft: Draft, nights: list[tuple[int, int]], pressing: bool) -> Draft:
    """The placing again, where what runs beside a wait has found its place only after that: now the wait is placed
    first. It holds if all that runs beside it lies within."""
    frame = draft.frame
    tasks, of = frame.blocks.network.tasks, frame.blocks.of
    beside = [link for _, link in frame.blocks.between if link.from_start and link.hi is None and tasks[link.b].hands]
    ends = (draft.starts[link.a] + frame.lengths[link.a] <= draft.starts[link.b] for link in beside)
    if not any(ends):
        return draft
    loose = {(of[link.a], of[link.b]) for link in beside}
    other = _placed(frame, nights, pressing, loose)
    at = [other.starts[members[0]] - frame.offsets[members[0]] for members in frame.blocks.members]
    apart = all(at[later] - at[block] >= gap for block, _ in loose for later, gap in frame.after[block])
    sound = apart and len(other.broken) <= len(draft.broken)
    return other if sound and min(other.starts) > min(draft.starts) else draft


def _placed(
    frame: Frame, nights: list[tuple[int, int]], pressing: bool, loose: Collection[tuple[int, int]] = ()
) -> Draft:
    """Every block at its latest place. Of those that nothing unplaced waits for, the one with the longest
    way before it is placed first: the long braise ends at the table, and the peeling finds its place while
    it simmers. If it is `pressing`, what something is to follow soon is placed before that. Of a `loose` pair of blocks
    the first does not wait for the second."""
    network, members, after = frame.blocks.network, frame.blocks.members, frame.after
    if loose:
        after = [[edge for edge in edges if (block, edge[0]) not in loose] for block, edges in enumerate(after)]
    bench = Bench(network.cooks, nights)
    before = _before(after)
    ways = _ways(frame, before)
    wanted = [len(edges) for edges in after]
    starts = [0] * len(members)
    soon = [0] * len(members)
    for _, link in frame.blocks.between if pressing else ():
        soon[frame.blocks.of[link.a]] = max(soon[frame.blocks.of[link.a]], link.soon)
    rank = [(-soon[block], frame.ends[block] if soon[block] else -way, block) for block, way in enumerate(ways)]
    ready = [rank[block] for block, count in enumerate(wanted) if not count]
    heapify(ready)
    while ready:
        block = heappop(ready)[2]
        latest = -frame.ends[block]
        for later, gap in after[block]:
            if starts[later] - gap < latest:
                latest = starts[later] - gap
        starts[block] = bench.place(_held(frame, members[block]), latest)
        for earlier, _ in before[block]:
            wanted[earlier] -= 1
            if not wanted[earlier]:
                heappush(ready, rank[earlier])
    at = [starts[block] + offset for block, offset in zip(frame.blocks.of, frame.offsets, strict=True)]
    return Draft(frame, at, bench.turns(), broken_limits(network, at, frame.lengths))


def _before(after: list[list[Edge]]) -> list[list[Edge]]:
    """The same distances, by the block that comes later."""
    before: list[list[Edge]] = [[] for _ in after]
    for block, edges in enumerate(after):
        for later, gap in edges:
            before[later].append((block, gap))
    return before


def _ways(frame: Frame, before: list[list[Edge]]) -> list[int]:
    """The longest way from the beginning to the end of each block, if nobody had to wait for hands."""
    starts = [0] * len(before)
    for block in range(len(before) - 1, -1, -1):
        for earlier, gap in before[block]:
            if starts[earlier] + gap > starts[block]:
                starts[block] = starts[earlier] + gap
    return list(map(add, starts, frame.ends))


def _held(frame: Frame, members: list[int]) -> list[Held]:
    """When a block wants hands: from the moment that they may be called for to the end of the work."""
    held = []
    free = 0
    for task in frame.by_hand(members):
        length = frame.lengths[task]
        if length:
            end = frame.offsets[task] + length
            held.append((max(free, frame.offsets[task] - frame.kept[task]), end, task))
            free = end
    return held
