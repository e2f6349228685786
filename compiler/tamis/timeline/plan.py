"""A plan for one kitchen's cooks: what is done when, as late as it can be, and how long the whole takes.

Work done too early spoils (the oven burns gas, the whisked flour waits eight hours in its bowl), so a plan
is made from its end: block by block, the last of the text first, each as late as the work that needs it and
a free pair of hands allow. What the text puts *meanwhile* is done by the end of its wait, however short that is.

The order in which the cook takes things up is settled for estimates at their longest; the hands that an
estimate will call for are kept free from its least end on. The same order then serves for the shortest
plan, so that nothing is to be re-thought at the stove. Bounds that no place satisfies (a meanwhile longer
than its wait) are not silently dropped: the plan lists them as stretched.
"""

from __future__ import annotations

from itertools import accumulate
from operator import add

from tamis.timeline.draft import Draft, drafted
from tamis.timeline.frame import Edge, Frame
from tamis.timeline.network import Network, Plan, broken_limits
from tamis.timeline.standing import AT_ROOM
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

_PASSES = 12
DAY = 86400


def forward(network: Network) -> tuple[Plan, Plan]:
    """The least and the most plan, both from zero and with the cook's work in the same order."""
    draft = drafted(network)
    most = longest(draft)
    return shortest(draft, most), most


def longest(draft: Draft) -> Plan:
    """The plan with estimates at their longest."""
    return _fitted(draft, draft.frame) or _as_drafted(draft)


def shortest(draft: Draft, most: Plan) -> Plan:
    """The plan with estimates at their shortest, and with the order of work of the longest where it fits."""
    if draft.frame.sure:
        return most._replace(mode="least")
    blocks = draft.frame.blocks
    least = _fitted(draft, Frame(blocks, "least", draft.frame.late))
    return least or longest(drafted(blocks.network, "least"))


def backward(network: Network, ready: int, awake: tuple[int, int] | None = None) -> Plan:
    """The latest starts that have everything done at `ready`, with estimates at their longest and windows
    at their least. `ready` is in seconds from midnight; with `awake` (seconds from midnight) nobody works
    at night, unless a limit of the recipe leaves no other way. The plan's zero is its first start, its
    total ends at `ready`."""
    draft = drafted(network)
    if awake is not None and awake != (0, DAY):
        nights = _nights(ready, awake, -min(draft.starts, default=0))
        rested = drafted(network, "most", nights)
        if len(rested.broken) <= len(draft.broken):
            draft = _later(rested, nights)
    return _as_drafted(draft)


def _later(draft: Draft, nights: list[tuple[int, int]]) -> Draft:
    """The windows of a plan that is done too early, or that leaves food standing, as long as it needs, from the last
    one on: better the dough than the loaf waits for the dinner. What comes after a window, and what leads up to that,
    moves with its end."""
    network, lengths, starts = draft.frame.blocks.network, draft.frame.lengths, draft.starts
    windows = [at for at, task in enumerate(network.tasks) if task.kind == "window" and task.hi is not None]
    for at in sorted(windows, key=lambda at: -starts[at]):
        stays = _before(network, (at,))
        after = {task for task, start in enumerate(starts) if task not in stays and start >= starts[at]}
        for those in (after, _until_it_stands(network, starts, lengths, at, after)):
            more = min((network.tasks[at].hi or 0) - lengths[at], _slack(network, starts, lengths, those))
            if more <= 0:
                continue
            moved = [start + more if task in those else start for task, start in enumerate(starts)]
            asleep = _at_night(network, moved, lengths, nights) - _at_night(network, starts, lengths, nights)
            sound = len(broken_limits(network, moved, lengths)) <= len(draft.broken) and _in_hand(
                network, moved, lengths
            )
            if not asleep and sound:
                starts = moved
                break
    return draft._replace(starts=starts)


def _until_it_stands(network: Network, starts: list[int], lengths: list[int], at: int, after: set[int]) -> set[int]:
    """Of what comes after a window, what is done before the food stands for long, and what leads up to that; none if it
    does not stand."""
    follows, stands = {at}, False
    for link in sorted(network.links, key=lambda link: starts[link.b]):
        if link.a in follows and link.b in after and not link.from_start:
            if starts[link.b] - starts[link.a] - lengths[link.a] > AT_ROOM:
                stands = True
            else:
                follows.add(link.b)
    return after & _before(network, follows) if stands else set()


def _slack(network: Network, starts: list[int], lengths: list[int], those: set[int]) -> int:
    """By how much some tasks may come later together."""
    room = [-starts[task] - lengths[task] for task in those]
    for a, b, lo, _, from_start, _ in network.links:
        if a in those and b not in those:
            room.append(starts[b] - starts[a] - (0 if from_start else lengths[a]) - lo)
    return min(room, default=0)


def _in_hand(network: Network, starts: list[int], lengths: list[int]) -> bool:
    """Whether there are never more hands needed than there are."""
    held = [at for at, task in enumerate(network.tasks) if task.hands and lengths[at]]
    moments = [(starts[at], 1) for at in held] + [(starts[at] + lengths[at], -1) for at in held]
    return max(accumulate([change for _, change in sorted(moments)]), default=0) <= network.cooks


def _before(network: Network, tasks: Iterable[int]) -> set[int]:
    """Some tasks and all that come before them."""
    before: dict[int, list[int]] = {}
    for link in network.links:
        before.setdefault(link.b, []).append(link.a)
    found = set(tasks)
    todo = list(found)
    while todo:
        new = [one for one in before.get(todo.pop(), ()) if one not in found]
        found.update(new)
        todo += new
    return found


def _at_night(network: Network, starts: list[int], lengths: list[int], nights: list[tuple[int, int]]) -> set[int]:
    """The tasks for which a cook would have to be up."""
    return {
        at
        for at, task in enumerate(network.tasks)
        if task.hands and any(starts[at] < dawn and dusk < starts[at] + lengths[at] for dusk, dawn in nights)
    }


def _as_drafted(draft: Draft) -> Plan:
    """A draft as a plan of its own, with no room to move."""
    total = -min(draft.starts, default=0)
    starts = tuple(start + total for start in draft.starts)
    lengths = tuple(draft.frame.lengths)
    return Plan(draft.frame.mode, starts, lengths, starts, starts, total, draft.broken)


def _nights(ready: int, awake: tuple[int, int], length: int) -> list[tuple[int, int]]:
    """The hours of sleep before `ready`, counted from it; the one that `ready` itself falls into does not
    count."""
    dawn, dusk = awake[0] - ready, awake[1] - ready
    days = range(length // DAY * 2 + 9)
    nights = [(dusk - (day + 1) * DAY, dawn - day * DAY) for day in days]
    return [night for night in reversed(nights) if night[0] < night[1] <= 0]


def _fitted(draft: Draft, frame: Frame) -> Plan | None:
    """The bounds of every start in a frame with the draft's order of work, and the starts chosen within
    them; None where that order does not fit the frame."""
    network, of = frame.blocks.network, frame.blocks.of
    after = _distances(draft, frame)
    rank = [draft.starts[members[0]] for members in frame.blocks.members]
    order = sorted(range(len(rank)), key=rank.__getitem__)
    earliest = _earliest(order, after)
    behind = _behind(order, after, frame.ends)
    if earliest is None or behind is None:
        return None
    total = max(map(add, earliest, frame.ends), default=0)
    latest = [total - distance for distance in behind]
    starts = [latest[block] + offset for block, offset in zip(of, frame.offsets, strict=True)]
    return Plan(
        frame.mode,
        tuple(starts),
        tuple(frame.lengths),
        tuple([earliest[block] + offset for block, offset in zip(of, frame.offsets, strict=True)]),
        tuple([latest[block] + offset for block, offset in zip(of, frame.offsets, strict=True)]),
        total,
        broken_limits(network, starts, frame.lengths),
    )


def _distances(draft: Draft, frame: Frame) -> list[list[Edge]]:
    """The links between blocks, their limits that can be kept, and the cook's order, by the block before."""
    of, offsets, lengths = frame.blocks.of, frame.offsets, frame.lengths
    after = [list(edges) for edges in frame.after]
    for index, (a, b, _, hi, from_start, _) in frame.blocks.between:
        if hi is not None and index not in draft.broken:
            gap = offsets[a] - offsets[b] + (0 if from_start else lengths[a])
            after[of[b]].append((of[a], -gap - hi))
    for a, b in draft.turns:
        if of[a] != of[b]:
            after[of[a]].append((of[b], offsets[a] + lengths[a] - offsets[b] + frame.kept[b]))
    return after


def _earliest(order: list[int], after: list[list[Edge]]) -> list[int] | None:
    """The first start of each block that keeps every distance; None where limits pull against each other.
    The blocks come nearly in the order of work, so that two passes usually do."""
    value = [0] * len(order)
    for _ in range(_PASSES):
        moved = False
        for a in order:
            at = value[a]
            for b, gap in after[a]:
                if at + gap > value[b]:
                    value[b] = at + gap
                    moved = True
        if not moved:
            return value
    return None


def _behind(order: list[int], after: list[list[Edge]], ends: list[int]) -> list[int] | None:
    """The least seconds from the start of each block to the end of all, as `_earliest` does from the
    beginning."""
    value = list(ends)
    for _ in range(_PASSES):
        moved = False
        for a in reversed(order):
            for b, gap in after[a]:
                if value[b] + gap > value[a]:
                    value[a] = value[b] + gap
                    moved = True
        if not moved:
            return value
    return None
