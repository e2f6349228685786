"""A plan for one kitchen's cooks: what is done when, as late as it can be, and how long the whole takes.

Work done too early spoils (the oven burns gas, the whisked flour waits eight hours in its bowl), so a plan
is made from its end: block by block, the last of the text first, each as late as the work that needs it and
a free pair of hands allow. What the text puts *meanwhile* stands at the start of its wait instead, as a
cook would do it.

The order in which the cook takes things up is settled for estimates at their longest; the hands that an
estimate will call for are kept free from its least end on. The same order then serves for the shortest
plan, so that nothing is to be re-thought at the stove. Bounds that no place satisfies (a meanwhile longer
than its wait) are not silently dropped: the plan lists them as stretched.
"""

from __future__ import annotations

from tamis.timeline.blocks import Blocks, layout
from tamis.timeline.draft import Draft, drafted
from tamis.timeline.network import Mode, Network, Plan, broken_limits

_PASSES = 12
DAY = 86400

Edge = tuple[int, int, int]
"""Blocks a and b, and the least seconds from the start of a to the start of b."""


def forward(network: Network) -> tuple[Plan, Plan]:
    """The least and the most plan, both from zero and with the cook's work in the same order."""
    draft = drafted(network)
    return (
        _fitted(network, draft, "least") or _as_drafted(network, drafted(network, mode="least"), "least"),
        _fitted(network, draft, "most") or _as_drafted(network, draft, "most"),
    )


def backward(network: Network, ready: int, awake: tuple[int, int] | None = None) -> Plan:
    """The latest starts that have everything done at `ready`, with estimates at their longest and windows
    at their least. `ready` is in seconds from midnight; with `awake` (seconds from midnight) nobody works
    at night, unless a limit of the recipe leaves no other way. The plan's zero is its first start, its
    total ends at `ready`."""
    draft = drafted(network)
    if awake is not None and awake != (0, DAY):
        nights = _nights(ready, awake, -min(draft.starts, default=0))
        rested = drafted(network, nights)
        if len(rested.broken) <= len(draft.broken):
            draft = rested
    return _as_drafted(network, draft, "most")


def _as_drafted(network: Network, draft: Draft, mode: Mode) -> Plan:
    """A draft as a plan of its own, with no room to move."""
    total = -min(draft.starts, default=0)
    starts = tuple(start + total for start in draft.starts)
    lengths = tuple(task.length(mode) for task in network.tasks)
    return Plan(mode, starts, lengths, starts, starts, total, draft.broken)


def _nights(ready: int, awake: tuple[int, int], length: int) -> list[tuple[int, int]]:
    """The hours of sleep before `ready`, counted from it; the one that `ready` itself falls into does not
    count."""
    dawn, dusk = awake[0] - ready, awake[1] - ready
    days = range(length // DAY * 2 + 9)
    nights = [(dusk - (day + 1) * DAY, dawn - day * DAY) for day in days]
    return [night for night in reversed(nights) if night[0] < night[1] <= 0]


def _fitted(network: Network, draft: Draft, mode: Mode) -> Plan | None:
    """The bounds of every start in one mode with the draft's order of work, and the starts chosen within
    them; None where that order does not fit the mode."""
    blocks = draft.blocks
    offsets, lengths = layout(network, blocks, mode)
    ends = [max(offsets[task] + lengths[task] for task in members) for members in blocks.members]
    edges = _edges(network, draft, offsets, lengths, mode)
    rank = [draft.starts[members[0]] for members in blocks.members]
    edges.sort(key=lambda edge: (rank[edge[0]], rank[edge[1]]))
    earliest = _settled(edges, [0] * len(ends))
    behind = _settled([(b, a, w) for a, b, w in reversed(edges)], ends)
    if earliest is None or behind is None:
        return None
    total = max((at + end for at, end in zip(earliest, ends, strict=True)), default=0)
    latest = [total - distance for distance in behind]
    chosen = _soon_first(network, blocks, edges, latest)
    starts = [chosen[blocks.of[task]] + offsets[task] for task in range(len(offsets))]
    return Plan(
        mode,
        tuple(starts),
        tuple(lengths),
        tuple(earliest[blocks.of[task]] + offset for task, offset in enumerate(offsets)),
        tuple(latest[blocks.of[task]] + offset for task, offset in enumerate(offsets)),
        total,
        broken_limits(network, starts, lengths),
    )


def _edges(network: Network, draft: Draft, offsets: list[int], lengths: list[int], mode: Mode) -> list[Edge]:
    """The links between blocks and the cook's order, as least distances between the starts of blocks."""
    of = draft.blocks.of
    edges = []
    for index, (a, b, lo, hi, from_start) in enumerate(network.links):
        if of[a] == of[b]:
            continue
        gap = offsets[a] - offsets[b] + (0 if from_start else lengths[a])
        edges.append((of[a], of[b], gap + lo))
        if hi is not None and index not in draft.broken:
            edges.append((of[b], of[a], -gap - hi))
    early = layout(network, draft.blocks, "least")[0] if mode == "most" else offsets
    for a, b in draft.turns:
        if of[a] != of[b]:
            edges.append((of[a], of[b], offsets[a] + lengths[a] - min(early[b], offsets[b])))
    return edges


def _settled(edges: list[Edge], least: list[int]) -> list[int] | None:
    """The smallest values, none under `least`, that keep every distance; None where limits pull against
    each other. The edges come nearly in the order of work, so that two passes usually do."""
    value = list(least)
    for _ in range(_PASSES):
        moved = False
        for a, b, w in edges:
            if value[a] + w > value[b]:
                value[b] = value[a] + w
                moved = True
        if not moved:
            return value
    return None


def _soon_first(network: Network, blocks: Blocks, edges: list[Edge], latest: list[int]) -> list[int]:
    """The latest starts, but what is to be done soon as early as the rest lets it."""
    soon = {block for block, members in enumerate(blocks.members) if all(network.tasks[task].soon for task in members)}
    if not soon:
        return latest
    chosen = list(latest)
    waits_for: dict[int, list[tuple[int, int]]] = {block: [] for block in soon}
    for a, b, w in edges:
        if b in soon:
            waits_for[b].append((a, w))
    for block in sorted(soon, key=lambda b: (latest[b], -b)):
        chosen[block] = max([0, *(chosen[a] + w for a, w in waits_for[block])])
    return chosen
