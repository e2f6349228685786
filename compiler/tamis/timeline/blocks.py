"""Tasks that move together.

What is joined without a gap (the handling and its wait, a bake and the taking out) can only be moved as
one, and so can what is caught between two moments of it (the yolks whisked while the milk infuses). Such a
block is laid out once, in the order of the text; the planner then has a few rigid blocks to place instead
of many tasks to keep together.

Blocks come out with each one after all that wait for it: the order in which a plan is made from its end.
"""

from __future__ import annotations

from collections.abc import Collection

from tamis.timeline.network import Mode, Network


class Blocks:
    """The blocks of a network, last work first. `of` tells a task's block; `members` are its tasks in text
    order."""

    __slots__ = ("incoming", "members", "of", "outgoing")

    def __init__(self, network: Network, glued: Collection[int] = ()) -> None:
        count = len(network.tasks)
        self.incoming: list[list[int]] = [[] for _ in range(count)]
        self.outgoing: list[list[int]] = [[] for _ in range(count)]
        for index, link in enumerate(network.links):
            self.incoming[link.b].append(index)
            self.outgoing[link.a].append(index)
        chains = _chains(network, glued)
        self.members = [
            sorted(task for chain in group for task in chains[chain]) for group in _knots(_successors(network, chains))
        ]
        self.of = [0] * count
        for block, tasks in enumerate(self.members):
            for task in tasks:
                self.of[task] = block


def _chains(network: Network, glued: Collection[int]) -> list[list[int]]:
    """Tasks joined without a gap. Only the first join into a task counts: two waits cannot end at one
    moment."""
    before: dict[int, int] = {}
    for index, link in enumerate(network.links):
        if (link.joins or index in glued) and link.a < link.b:
            before.setdefault(link.b, link.a)
    chains: list[list[int]] = []
    chain_of: list[int] = []
    for task in range(len(network.tasks)):
        if task in before:
            chain_of.append(chain_of[before[task]])
            chains[chain_of[task]].append(task)
        else:
            chain_of.append(len(chains))
            chains.append([task])
    return chains


def _successors(network: Network, chains: list[list[int]]) -> list[list[int]]:
    chain_of = {task: chain for chain, tasks in enumerate(chains) for task in tasks}
    after: list[list[int]] = [[] for _ in chains]
    for link in network.links:
        a, b = chain_of[link.a], chain_of[link.b]
        if a != b:
            after[a].append(b)
    return after


def _knots(after: list[list[int]]) -> list[list[int]]:
    """Groups of chains that wait for each other, each group after all that wait for it (Tarjan's algorithm,
    with a stack of its own: a recipe may be long). Chains late in the text are visited first."""
    seen = [0] * len(after)
    low = [0] * len(after)
    open_: list[int] = []
    groups: list[list[int]] = []
    clock = 0
    for root in reversed(range(len(after))):
        path = [] if seen[root] else [(root, 0)]
        while path:
            node, at = path.pop()
            if at == 0:
                clock += 1
                seen[node] = low[node] = clock
                open_.append(node)
            elif low[after[node][at - 1]] < low[node]:
                low[node] = low[after[node][at - 1]]
            following = after[node]
            while at < len(following) and seen[following[at]]:
                low[node] = min(low[node], low[following[at]])
                at += 1
            if at < len(following):
                path += [(node, at + 1), (following[at], 0)]
            elif low[node] == seen[node]:
                group = _cut(open_, node)
                groups.append(group)
                for member in group:
                    low[member] = 2 * len(after)
    return groups


def _cut(stack: list[int], node: int) -> list[int]:
    """Takes a node and all above it off the stack."""
    group = [stack.pop()]
    while group[-1] != node:
        group.append(stack.pop())
    return group


def layout(network: Network, blocks: Blocks, mode: Mode) -> tuple[list[int], list[int]]:
    """Each task's offset in its block, and its length, in seconds. In a block one pair of hands does one
    thing at a time, in text order."""
    tasks, links, of = network.tasks, network.links, blocks.of
    lengths = [task.length(mode) for task in tasks]
    offsets = [0] * len(tasks)
    for block, members in enumerate(blocks.members):
        if len(members) == 1:
            continue
        free = 0
        for task in members:
            at = free if tasks[task].hands else 0
            for index in blocks.incoming[task]:
                a, _, lo, _, from_start = links[index]
                if a < task and of[a] == block:
                    at = max(at, offsets[a] + lo + (0 if from_start else lengths[a]))
            offsets[task] = at
            if tasks[task].hands:
                free = at + lengths[task]
    return offsets, lengths
