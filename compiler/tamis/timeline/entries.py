"""From a plan's tasks to the rows that a cook reads.

A plan has several tasks for one line of the recipe (the kneading, the rise, the fold that calls the cook
back). A reader wants one row a line, with its time as the recipe gives it and the parts that need hands
told apart.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache
from math import ceil

from tamis.model.recipe import Action, Recipe
from tamis.quantity.duration import Duration
from tamis.quantity.times import duration, duration_range, wait
from tamis.source import Span
from tamis.timeline.lengths import rough_length
from tamis.timeline.network import Network, Plan, Task
from tamis.timeline.rounds import Together, one_round, together_of
from tamis.timeline.rows import Entry, RowPart, Segment
from tamis.timeline.tasks import standing
from tamis.timeline.titles import by_hand_and_heat, heat_title, title
from tamis.timeline.words import row_words

Groups = dict[tuple[int, RowPart, int], list[int]]
"""Tasks by action, part, and (for preparation, which is one entry each) task."""

_FREE = 600
"""A wait of so many seconds that leaves the cook free: who is called back for the next round wants a row of his own."""


def entries_of(recipe: Recipe, network: Network, plans: tuple[Plan, Plan], critical: list[bool]) -> tuple[Entry, ...]:
    groups: Groups = {}
    together = together_of(recipe)
    apart = _apart(recipe, together)
    recipe = one_round(recipe, [one for one in together if one in apart.values()])
    rounds: dict[tuple[Together, int], list[int]] = {}
    for index, task in enumerate(network.tasks):
        own = index if task.part == "prepare" else 0
        part: RowPart = "work" if task.part == "handle" or task.part == "wait" else task.part
        if task.turn and task.action in apart:
            rounds.setdefault((apart[task.action], task.turn), []).append(index)
        else:
            groups.setdefault((task.action, part, own), []).append(index)
    _heat_with_its_lighting(recipe, groups)
    rows = [_entry(recipe, network, plans, critical, part, tasks) for (_, part, _), tasks in groups.items()]
    rows += [_round(recipe, network, plans, critical, one, turn, tasks) for (one, turn), tasks in rounds.items()]
    # A line that takes no time (`Repeat twice`, counted where it applies) is no row.
    entries = [row for row in rows if any([one.most_end > one.most_start for one in row.segments])]
    entries.sort(key=lambda entry: (entry.start, entry.end, entry.action, entry.part))
    return _with_neighbours(recipe, entries)


def _apart(recipe: Recipe, together: tuple[Together, ...]) -> dict[int, Together]:
    """By line, the steps whose rounds after the first have rows of their own, as long waits part them."""
    found: dict[int, Together] = {}
    for one in together:
        works = [recipe.actions[number].work for number in range(one.first, one.last + 1)]
        if one.step and any(work.wait is not None and work.wait.lo >= _FREE and not work.hands for work in works):
            found |= dict.fromkeys(range(one.first, one.last + 1), one)
    return found


def _round(
    recipe: Recipe,
    network: Network,
    plans: tuple[Plan, Plan],
    critical: list[bool],
    one: Together,
    turn: int,
    tasks: list[int],
) -> Entry:
    """One row for a step done again: `Round 2 of 5: lift out parsnips … leave`."""
    first, *_, last = dict.fromkeys(network.tasks[task].action for task in tasks if plans[1].lengths[task])
    entry = _entry(recipe, network, plans, critical, "work", tasks)
    least, most = entry.end - entry.start, entry.most_end - entry.most_start
    return entry._replace(
        title=row_words(recipe.language).round.format(
            round=turn + 1,
            rounds=one.often,
            first=_small(title(recipe.actions[first], recipe.language).partition(",")[0]),
            last=_small(title(recipe.actions[last], recipe.language).rpartition(", ")[2]),
        ),
        length=f"≈ {rough_length(least, most)[0]}",
        estimated=True,
        cue="",
        tended=False,
        span=Span(recipe.actions[first].span.start, recipe.actions[last].span.end),
    )


def _heat_with_its_lighting(recipe: Recipe, groups: Groups) -> None:
    """A line that heats a station is one entry, the turning on included; heating that no line asks for is
    its own."""
    for number, part, own in list(groups):
        here = recipe.places.lines[number]
        if part == "heat" and here.heats == "station" and not here.preheat:
            groups[number, part, own] = groups.pop((number, "work", 0), []) + groups[number, part, own]


def _entry(
    recipe: Recipe,
    network: Network,
    plans: tuple[Plan, Plan],
    critical: list[bool],
    part: RowPart,
    tasks: list[int],
) -> Entry:
    first = network.tasks[tasks[0]]
    action = recipe.actions[first.action]
    segments = tuple([_segment(network, plans, task) for task in tasks])
    own = part == "work"
    begins, ends, most_begins, most_ends, *_ = zip(*segments, strict=True)
    return Entry(
        action=action.number,
        part=part,
        title=_called(action, part, first, recipe),
        length=_length(action, segments) if own else f"≈ {_rounded(sum(s.end - s.start for s in segments))}",
        component=action.component,
        start=min(begins),
        end=max(ends),
        most_start=min(most_begins),
        most_end=max(most_ends),
        earliest=plans[0].earliest[tasks[0]],
        latest=plans[0].latest[tasks[0]],
        segments=segments,
        estimated=not own or action.work.given != "text",
        critical=any([critical[task] for task in tasks]),
        machine=own and action.work.machine,
        station=network.tasks[tasks[-1]].station,
        cue=action.work.cue if own else "",
        span=action.span,
        tended=own and bool(action.tending),
    )


def _called(action: Action, part: RowPart, first: Task, recipe: Recipe) -> str:
    if part == "work":
        return title(action, recipe.language)
    if part == "prepare":
        return _large(first.title)
    heated = by_hand_and_heat if first.part == "handle" else heat_title
    return heated(action, recipe.places.lines[action.number], recipe.language)


def _segment(network: Network, plans: tuple[Plan, Plan], task: int) -> Segment:
    it = network.tasks[task]
    least, most = plans
    start, most_start = least.starts[task], most.starts[task]
    end, most_end = start + least.lengths[task], most_start + most.lengths[task]
    until = start + it.hi if it.kind == "window" and it.hi is not None and it.hi > it.lo else None
    calls_for = it.title if it.part == "handle" else ""
    return Segment(start, end, most_start, most_end, it.hands, it.kind, until, calls_for)


def _length(action: Action, segments: tuple[Segment, ...]) -> str:
    """The line's time as the text gives it, or the kitchen's figure with a sign that it is one."""
    work = action.work
    count = 1 if action.times == 1 == action.batches else action.times * action.batches
    often = f"{count} × " if count != 1 else ""
    if work.wait is None and standing(action):
        return _said(standing(action), None, False)
    if work.wait is None:
        total = sum(segment.end - segment.start for segment in segments)
        return f"≈ {often}{_rounded(ceil(total / count), bool(often))}"
    if work.given != "text":
        # The kitchen's figure is for the whole line: the next one begins where it ends.
        total = sum(segment.end - segment.start for segment in segments)
        return f"≈ {often}{_rounded(ceil(total / count), bool(often))}"
    return often + _said(ceil(work.wait.lo), None if work.wait.hi is None else ceil(work.wait.hi), work.window)


@lru_cache(4096)
def _said(lo: int, hi: int | None, window: bool) -> str:
    """A time as the text gives it; remembered, since kitchens live on few figures."""
    if window:
        return wait(Duration(Fraction(lo), None if hi is None else Fraction(hi), window))
    return duration_range(lo, hi or lo)


@lru_cache(4096)
def _rounded(seconds: int, often: bool = False) -> str:
    """A kitchen's figure without false precision: to the half minute up to one, to the minute above; what is done often
    adds up, so less than that is told too."""
    part = 10 if often and seconds <= 20 else 30 if seconds <= 60 else 60
    return duration(Fraction(-(-seconds // part) * part))


def _large(text: str) -> str:
    return text[:1].upper() + text[1:]


def _small(text: str) -> str:
    return text[:1].lower() + text[1:]


def _with_neighbours(recipe: Recipe, entries: list[Entry]) -> tuple[Entry, ...]:
    """The entries, each with those beside whose wait it runs: the one that the text names, unless that is over by then,
    or all in which it starts. A heating oven is beside every wait that it overlaps."""
    own: dict[int, int] = {}  # of a line done in rounds, the row of the first
    for index, entry in enumerate(entries):
        if entry.part == "work":
            own.setdefault(entry.action, index)
    waits: list[tuple[int, int, int]] = []
    found = []
    for index, entry in enumerate(entries):
        waits = [wait_ for wait_ in waits if wait_[1] > entry.start]
        named = recipe.actions[entry.action].beside if entry.part != "prepare" else None
        if entry.part == "heat":
            beside = {at for _, _, at in waits} | set(_during(entries, index))
        elif named is not None and named in own and _waits_after(entries[own[named]], entry.start):
            beside = {own[named]}
        else:
            beside = {at for begin, _, at in waits if begin <= entry.start}
        found.append(entry._replace(beside=tuple(sorted(beside))) if beside and entry.end > entry.start else entry)
        if entry.part == "work":
            waits += [(s.start, s.end, index) for s in entry.segments if not s.hands and s.end > s.start]
    return tuple(found)


def _waits_after(entry: Entry, moment: int) -> bool:
    return any(not segment.hands and segment.end > moment for segment in entry.segments)


def _during(entries: list[Entry], index: int) -> Iterator[int]:
    """The entries with a wait that begins while this one lasts."""
    end = entries[index].end
    for at in range(index + 1, len(entries)):
        if entries[at].start >= end:
            return
        if entries[at].part == "work" and any(
            not segment.hands and segment.start < end for segment in entries[at].segments
        ):
            yield at
