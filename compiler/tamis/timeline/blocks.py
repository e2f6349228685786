"""Tasks that move together.

What is joined without a gap (the handling and its wait, a bake and the taking out) can only be moved as
one, and so can what is caught between two moments of it (the yolks whisked while the milk infuses). Such a
block is laid out once, in the order of the text; the planner then has a few rigid blocks to place instead
of many tasks to keep together.

Blocks come out with each one after all that wait for it: the order in which a plan is made from its end.
"""

from __future__ import annotations

from collections.abc import Collection

from tamis.timeline.network import Link, Network


class Blocks:
    """The blocks of a network, last work first. `of` tells a task's block; `members` are its tasks in text
    order.

    `inside` are the links within blocks by their second task: the first task, the least gap, and whether it
    counts from the start. `between` are the links from block to block, with their index in the network.
    """

    __slots__ = ("between", "chain_of", "inside", "members", "network", "of", "rigid")

    def __init__(self, network: Network, glued: Collection[int] = ()) -> None:
        self.network = network
        chain_of, chains = _chains(network, glued)
        self.chain_of = chain_of
        self.members = [
            chains[group[0]] if len(group) == 1 else sorted(task for chain in group for task in chains[chain])
            for group in _strongly_connected(_successors(network, chain_of, len(chains)))
        ]
        self.of = [0] * len(network.tasks)
        for block, tasks in enumerate(self.members):
            for task in tasks:
                self.of[task] = block
        self.inside: dict[int, list[tuple[int, int, bool]]] = {}
        self.between: list[tuple[int, Link]] = []
        self.rigid: dict[int, list[Link]] = {}
        for index, link in enumerate(network.links):
            a, b, lo, _, from_start, _ = link
            if self.of[a] != self.of[b]:
                self.between.append((index, link))
                continue
            if chain_of[a] != chain_of[b]:
                self.rigid.setdefault(chain_of[a], []).append(link)
                self.rigid.setdefault(chain_of[b], []).append(link)
            if a < b:
                self.inside.setdefault(b, []).append((a, lo, from_start))

    def chains_of(self, members: list[int]) -> list[list[int]]:
        """The tasks of a block that are joined without a gap, each chain in the order of the text."""
        chains: dict[int, list[int]] = {}
        for task in members:
            chains.setdefault(self.chain_of[task], []).append(task)
        return list(chains.values())

    def within(self, chain: list[int]) -> list[Link]:
        """The links between a chain and the others of its block."""
        return self.rigid.get(self.chain_of[chain[0]], [])


def _chains(network: Network, glued: Collection[int]) -> tuple[list[int], list[list[int]]]:
    """Tasks joined without a gap. Only the first join into a task counts: two waits cannot end at one
    moment."""
    before: dict[int, int] = {}
    for a, b, lo, hi, from_start, _ in network.links:
        if hi == 0 and a < b and lo == 0 and not from_start:
            before.setdefault(b, a)
    for index in sorted(glued):
        a, b = network.links[index][:2]
        if a < b:
            before.setdefault(b, a)
    chains: list[list[int]] = []
    chain_of: list[int] = []
    for task in range(len(network.tasks)):
        if task in before:
            chain_of.append(chain_of[before[task]])
            chains[chain_of[task]].append(task)
        else:
            chain_of.append(len(chains))
            chains.append([task])
    return chain_of, chains


def _successors(network: Network, chain_of: list[int], count: int) -> list[list[int]]:
    after: list[list[int]] = [[] for _ in range(count)]
    for a, b, *_ in network.links:
        if chain_of[a] != chain_of[b]:
            after[chain_of[a]].append(chain_of[b])
    return after


def _strongly_connected(after: list[list[int]]) -> list[list[int]]:
    """Groups of chains that wait for each other, each group after all that wait for it (Tarjan's algorithm,
    with a stack of its own: a recipe may be long). Chains late in the text are visited first.

    The library's sorter takes no circles, and here they are the rule.
    """
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
