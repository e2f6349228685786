"""Lines that are done together more than once: a step that is repeated, batches that are lifted out in a line of their
own.

A step that is repeated is done from its first line to its last, and then from the first again: the second coat goes on
when the first is dry. So the tasks of such lines are laid one round after another, and none of them is done again by
itself.
"""

from __future__ import annotations

from itertools import groupby, pairwise

from tamis.model.recipe import Recipe
from tamis.reading.clauses import Repeat
from tamis.record import NamedTuple
from tamis.timeline.network import Link, Task
from tamis.timeline.tasks import MOST_ROUNDS, calls_left_out
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence
    from fractions import Fraction

    from tamis.model.recipe import Action

_MOST_TASKS = 60
"""Lines of all rounds; beyond, each line is done as often as it is by itself."""


class Together(NamedTuple):
    """The lines from the first to the last, done so many times; of a `step` that is repeated, or in batches."""

    first: int
    last: int
    often: int
    step: bool


def together_of(recipe: Recipe) -> tuple[Together, ...]:
    """What is done together more than once, in the order of the text."""
    found: list[Together] = []
    for _, lines in groupby(recipe.actions, lambda action: (action.component, action.step)):
        found += _in_step(list(lines))
    return tuple(found)


def _in_step(lines: list[Action]) -> Iterator[Together]:
    for read in lines[-1].reads:
        if isinstance(read, Repeat) and read.kind == "step-times":
            yield from _together(lines, read.number + 1, True)
            return
    for number, those in groupby(lines, lambda line: line.batches):
        yield from _together(list(those), number, False)


def _together(lines: list[Action], count: Fraction, step: bool) -> Iterator[Together]:
    working = [line for line in lines if line.work.handling or line.work.wait is not None]
    few = 1 < count <= MOST_ROUNDS and count.denominator == 1 and count * len(working) <= _MOST_TASKS
    often = any(calls_left_out(line, tending) for line in lines for tending in line.tending)
    if few and len(working) > 1 and not often and not any(line.heats for line in lines):
        yield Together(lines[0].number, lines[-1].number, int(count), step)


def one_round(recipe: Recipe, those: Sequence[Together]) -> Recipe:
    """The recipe with such lines as they are done in one round."""
    actions = list(recipe.actions)
    for one in those:
        for number in range(one.first, one.last + 1):
            action = actions[number]
            times, batches = (one.often, 1) if one.step else (1, one.often)
            actions[number] = action._replace(times=action.times / times, batches=action.batches / batches)
    return recipe._replace(actions=tuple(actions)) if those else recipe


def in_rounds(
    tasks: Sequence[Task], links: Sequence[Link], those: Sequence[Together]
) -> tuple[tuple[Task, ...], tuple[Link, ...]]:
    """The tasks and links with every round after the first put behind it."""
    if not those:
        return tuple(tasks), tuple(links)
    of = {number: one for one in those for number in range(one.first, one.last + 1)}
    laid: list[Task] = []
    places: list[list[int]] = []  # of each task its place in every round; once made ready, it is there for all
    for one, group in groupby(range(len(tasks)), lambda at: of.get(tasks[at].action)):
        members = list(group)
        for at in members:
            places.append([len(laid)])
            laid.append(tasks[at])
        for turn in range(1, one.often if one else 1):
            for at in members:
                if tasks[at].part not in ("prepare", "heat"):
                    places[at].append(len(laid))
                    laid.append(tasks[at]._replace(id=f"{tasks[at].id}.{turn}", turn=turn))
    return tuple(laid), (*_linked(tasks, links, places, of), *_between(tasks, links, places, of))


def _linked(
    tasks: Sequence[Task], links: Sequence[Link], places: list[list[int]], of: dict[int, Together]
) -> Iterator[Link]:
    """Each link in every round; what comes after all of them waits for the last."""
    for link in links:
        a, b = places[link.a], places[link.b]
        inside = of.get(tasks[link.a].action)
        if inside is None or inside is not of.get(tasks[link.b].action):
            yield link._replace(a=a[-1], b=b[0])
        else:
            yield from (link._replace(a=one, b=other) for one, other in zip(a, b, strict=False))


def _lies_by_itself(task: Task) -> bool:
    """A batch that cools or drains: the next one need not wait for it."""
    return task.part == "wait" and not task.hands and not task.station


def _between(
    tasks: Sequence[Task], links: Sequence[Link], places: list[list[int]], of: dict[int, Together]
) -> Iterator[Link]:
    """From what ends a round to what begins the next."""
    inside = [link for link in links if (one := of.get(tasks[link.a].action)) and one is of.get(tasks[link.b].action)]
    for one in dict.fromkeys(of.values()):
        members = [at for at, task in enumerate(tasks) if of.get(task.action) is one and len(places[at]) > 1]
        busy = [at for at in members if one.step or not _lies_by_itself(tasks[at])]
        led = {link.b for link in inside if len(places[link.a]) > 1}
        leads = {link.a for link in inside if link.b in busy}
        ends, begins = [at for at in busy if at not in leads], [at for at in members if at not in led]
        for end in ends:
            for begin in begins:
                for turn, after in pairwise(range(one.often)):
                    yield Link(places[end][turn], places[begin][after], soon=1)
