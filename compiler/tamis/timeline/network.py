"""A recipe as work to be planned: tasks, the links between them, and who or what is needed.

A plan can come from many methods, and more will follow (several dishes on one kitchen, proofs against the
food's own pace). They must not each read recipes. So this is the only thing that a planner sees: whole
seconds, numbered tasks, and bounds between them. Nothing here knows how to plan.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import Literal

Kind = Literal["fixed", "window", "estimate"]
Part = Literal["prepare", "handle", "wait", "heat"]
Mode = Literal["least", "most"]

COOK: Literal["cook"] = "cook"


class Resource(NamedTuple):
    """Somebody or something that only so many tasks can have at a time."""

    name: str
    capacity: int


class Task(NamedTuple):
    """A stretch of work or waiting.

    `lo` and `hi` are seconds; `hi` None is an open end. Of a `window` the cook chooses the length, of an
    `estimate` the food does. `hands` holds a cook all through. `action` is the index of the recipe's action
    that it belongs to, `span` its line. `needs` counts resources other than the cook. `turn` counts the rounds in
    which lines are done again together, from zero.
    """

    id: str
    lo: int
    hi: int | None
    kind: Kind = "fixed"
    hands: bool = False
    part: Part = "handle"
    action: int = 0
    title: str = ""
    machine: bool = False
    station: str = ""
    needs: tuple[tuple[str, int], ...] = ()
    span: Span = Span(0, 0)
    turn: int = 0

    @property
    def calls(self) -> bool:
        """Whether a wait calls the cook for a moment: to stir, to baste."""
        return self.part == "handle" and bool(self.title)

    def length(self, mode: Mode) -> int:
        """Seconds in the least plan, or in the one where every estimate takes its longest (windows stay
        least)."""
        if mode == "most" and self.kind == "estimate" and self.hi is not None:
            return self.hi
        return self.lo


class Link(NamedTuple):
    """A bound between two tasks: end(a) + lo <= start(b) <= end(a) + hi, where `hi` None sets no limit.

    `from_start` counts from the start of `a` instead: for what runs beside a wait, and for the latest end
    of a window. `a` and `b` are indices of tasks. Both bounds zero join two tasks without a gap. `soon` asks for
    `b` soon after `a` if nothing else suffers: 1 for what is only begun, 2 for a hot sauce, 3 for other food that is
    hot or fresh.
    """

    a: int
    b: int
    lo: int = 0
    hi: int | None = None
    from_start: bool = False
    soon: int = 0

    @property
    def joins(self) -> bool:
        """Whether nothing may come between the two."""
        return self.hi == 0 and self.lo == 0 and not self.from_start


class Network(NamedTuple):
    """All the work of one recipe, tasks in the order of the text."""

    tasks: tuple[Task, ...]
    links: tuple[Link, ...]
    resources: tuple[Resource, ...] = (Resource(COOK, 1),)

    @property
    def cooks(self) -> int:
        """How many hands-on tasks may run at a time."""
        return next((r.capacity for r in self.resources if r.name == COOK), 1)


class Plan(NamedTuple):
    """A start for every task (seconds from the plan's zero), for one way the estimates may turn out.

    `earliest` and `latest` are the bounds of each start that do not lengthen the whole and keep the cook's
    order; where they are equal the task is critical. `stretched` lists links (by index) whose upper bound
    no plan of this kind could keep: what was asked at once comes late.
    """

    mode: Mode
    starts: tuple[int, ...]
    lengths: tuple[int, ...]
    earliest: tuple[int, ...]
    latest: tuple[int, ...]
    total: int
    stretched: tuple[int, ...] = ()

    def end(self, task: int) -> int:
        """When a task ends."""
        return self.starts[task] + self.lengths[task]

    def slack(self, task: int) -> int:
        """Seconds by which a task may move without making the whole longer."""
        return self.latest[task] - self.earliest[task]

    def critical(self, task: int) -> bool:
        """Whether a delay of this task delays the whole."""
        return self.latest[task] == self.earliest[task]


def broken_limits(network: Network, starts: list[int], lengths: list[int]) -> tuple[int, ...]:
    """The links whose upper bound these starts do not keep, by index."""
    late = []
    for index, (a, b, _, hi, from_start, _) in enumerate(network.links):
        if hi is not None and starts[b] - starts[a] > hi + (0 if from_start else lengths[a]):
            late.append(index)
    return tuple(late)
