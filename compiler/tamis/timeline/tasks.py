"""What of a recipe becomes a task.

A line of a method is seldom one task. "Cover and leave for 8 h" is a moment of the cook's and a night of
the dough's; "[in 4 batches]" is the same again four times; "basting every 15 min" calls the cook back; "1
onion, chopped" is work before it; and an oven must be hot.
"""

from __future__ import annotations

from itertools import pairwise
from math import ceil

from tamis.kitchen.equipment import MADE_READY
from tamis.model.recipe import Action, Recipe, Use
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Manner, Pause, Setting, Tending, Tool
from tamis.syntax.document import Text
from tamis.timeline.heating import heating_seconds, heats_alone, preheating_seconds
from tamis.timeline.network import Kind, Link, Part, Task
from tamis.timeline.oven import turned
from tamis.timeline.preparation import Preparation, goes_along, in_words, is_done_by, preparations
from tamis.timeline.waters import waters
from tamis.timeline.words import title_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb

MOST_ROUNDS = 12
"""Beyond so many rounds of work and wait they become one task: nobody reads further."""

MOMENT = 30
"""Seconds that a cook called back to baste or turn spends; common practice."""

FRESH = 600
"""Seconds for which what is made ready right before its line stays fit for it; common practice."""

IDLE = 400
"""A wait of so many seconds that leaves the cook free is time to make ready what comes after it; common practice."""


def standing(action: Action) -> int:
    """Seconds for which what a line makes stands before it is served (`30 min before serving`); 0 where none is
    said."""
    for read in action.reads:
        if isinstance(read, Pause) and read.kind == "before-serving" and read.duration is not None:
            return ceil(read.duration.lo)
    return 0


def _gap(tending: Tending, length: int) -> int:
    """The seconds of a wait from one call of the cook to the next; 0 where none is called for."""
    gap = ceil(tending.every.lo) if tending.every is not None else (length + 1) // 2 if tending.once else 0
    return gap if gap > MOMENT else 0


def _moments(tending: Tending, length: int) -> range:
    """When a wait calls the cook for it, in seconds from the beginning."""
    if tending.after is not None:
        return range(ceil(tending.after.lo), length, max(1, length))
    gap = _gap(tending, length)
    return range(gap, length, gap) if gap else range(0)


def _rarest(round_: tuple[range, int]) -> tuple[int, int]:
    return round_[0].start, round_[1]


Calls = dict[int, list[Tending]]
"""By its seconds from the beginning of a wait, what the cook is called for."""


def _calls(tending: Sequence[Tending], length: int) -> Calls:
    """When a wait calls the cook: each thing to be done has its own calls. What would be too often for a plan to show
    calls nobody."""
    rounds = sorted(((_moments(one, length), at) for at, one in enumerate(tending)), key=_rarest, reverse=True)
    calls: Calls = {}
    for moments, at in rounds:
        if len(moments) <= MOST_ROUNDS and len(calls.keys() | moments) <= MOST_ROUNDS:
            for moment in moments:
                calls.setdefault(moment, []).append(tending[at])
    return calls


def calls_left_out(action: Action, tending: Tending) -> int:
    """How often a line calls the cook for something, where that is too often for a plan to show it."""
    if action.work.wait is None or action.work.hands:
        return 0
    rounds, factor = _rounds(action)
    length = ceil(action.work.wait.lo) * factor
    moments = _moments(tending, length)
    if not moments or any(tending in those for those in _calls(action.tending, length).values()):
        return 0
    return len(moments) * rounds


def _rounds(action: Action) -> tuple[int, int]:
    """How many rounds of tasks a line has, and how often it is done in each. Where the cook works between waits each
    round has tasks of its own."""
    work = action.work
    count = 1 if action.times == 1 == action.batches else ceil(action.times * action.batches)
    mixed = work.wait is not None and work.handling > 0 and not work.hands
    rounds = count if mixed and count <= MOST_ROUNDS else 1
    return rounds, count // rounds


def _verb_before(action: Action, use: Use) -> Verb | None:
    """The verb that stands before a use in its line."""
    before = [one for one in action.verbs if one.span.start < use.ingredient.clause.span.start]
    return before[-1].verb if before else None


def _greases(action: Action, use: Use, language: str) -> bool:
    """Whether a food is rubbed on equipment, or for that: butter for a tin need not be soft for it."""
    item = use.ingredient
    if item.purpose_spans and item.purpose.lower() in title_words(language).for_tools:
        return True
    at = item.clause.span.start
    verb = _verb_before(action, use)
    behind = [read for read in action.reads if read.clause.span.start < at and not isinstance(read, Setting | Manner)]
    tool = behind[-1] if behind else None
    worked = isinstance(tool, Tool) and not tool.preposition and tool.equipment.kind in MADE_READY
    return worked and verb is not None and bool(verb.purpose)


def _during(recipe: Recipe, kitchen: Kitchen) -> dict[int, int]:
    """The lines that their plain words put beside the wait of the line before: *while they fry, spoon …*, and not
    *while it is hot, …*."""
    found, words = dict[int, int](), title_words(kitchen.language)
    for before, action in pairwise(recipe.actions):
        first = action.parts[0]
        if not isinstance(first, Text) or before.work.wait is None or before.number not in action.after:
            continue
        opens, *said = first.text.lower().partition(",")[0].split() or [""]
        if opens not in words.during or (before.component, before.step) != (action.component, action.step):
            continue
        verbs = [kitchen.verbs.get(one) for word in said for one in (word, nouns(kitchen.language).singular(word))]
        if any([verb is not None and (verb.cooks or verb.base == before.work.verb) for verb in verbs]):
            found[action.number] = before.number
    return found


Stretch = tuple[int, int, int]
"""The lines of a step with no long wait between them: its component, its number, the long waits in it before them."""


def _stretches(recipe: Recipe) -> list[Stretch]:
    """Of each line the stretch that it stands in."""
    waits: dict[tuple[int, int], int] = {}
    found = []
    for action in recipe.actions:
        step, work = (action.component, action.step), action.work
        found.append((*step, waits.get(step, 0)))
        if work.wait is not None and work.wait.lo >= IDLE and not work.hands:
            waits[step] = waits.get(step, 0) + 1
    return found


class Tasks:
    """The tasks so far, and the links inside a line. `first`, `handled` and `last` are the tasks of each
    action by its index: the one that it begins with, the first that holds the cook, and the one that it
    ends with; `waits` is the one with which the wait of its last round begins. `alone` and `stands` tell of
    each action whether it only heats a station, and how many seconds what it makes stands before it is
    served; `along` are the seconds of what a line makes ready itself, `beside` of what runs beside it so far;
    `during` are the lines done in the wait of another, which leaves the hands free for that;
    `cut` are the lines of which food is made ready by hand before their step; `early` and `late` hold what is
    prepared before a step (or before what follows a long wait in it) and before a line."""

    __slots__ = (
        "alone",
        "along",
        "beside",
        "cut",
        "during",
        "early",
        "first",
        "handled",
        "kitchen",
        "last",
        "late",
        "links",
        "places",
        "recipe",
        "stands",
        "stretch",
        "tasks",
        "turned",
        "waits",
    )

    def __init__(self, recipe: Recipe, kitchen: Kitchen) -> None:
        self.recipe = recipe
        self.kitchen = kitchen
        self.tasks: list[Task] = []
        self.links: list[Link] = []
        self.first: list[int] = []
        self.handled: list[int] = []
        self.last: list[int] = []
        self.waits: list[int] = []
        self.places = recipe.places.lines
        self.turned = turned(recipe)
        self.alone = [heats_alone(action) for action in recipe.actions]
        self.stands = [standing(action) for action in recipe.actions]
        self.stretch = _stretches(recipe)
        self.during = _during(recipe, kitchen)
        self.beside: dict[int, int] = {}
        self.along: dict[int, int] = {}
        self.early: dict[Stretch, list[Preparation]] = {}
        self.late: dict[int, list[Preparation]] = {}
        self.cut: set[int] = set()
        for action in recipe.actions:
            for index in action.uses:
                verb, item = _verb_before(action, recipe.uses[index]), recipe.uses[index].ingredient
                along = verb is not None and goes_along(item, verb.base, kitchen.language)
                for one in preparations(recipe.uses[index], kitchen):
                    if along:
                        self.along[action.number] = self.along.get(action.number, 0) + one.seconds
                        continue
                    if one.when == "waits" and _greases(action, recipe.uses[index], kitchen.language):
                        continue
                    if verb is not None and is_done_by(one, verb, kitchen):
                        continue  # said twice, done once
                    if one.when == "before":
                        self.cut.add(action.number)
                        self.early.setdefault(self.stretch[action.number], []).append(one)
                    else:
                        self.late.setdefault(action.number, []).append(one)
        for number, water in waters(recipe, kitchen).items():
            self.late.setdefault(number, []).append(water)

    def add(self, action: Action) -> None:
        """All tasks of one line."""
        before = self._before(action)
        start = len(self.tasks)
        self.first.append(start)
        self.handled.append(start)
        self.waits.append(start)
        self.links += [Link(task, start, 0, limit) for task, limit in before]
        if action.beside is not None:
            self._beside(action, action.beside, [task for task, _ in before])
        if self.alone[action.number]:
            self._heating(action)
        else:
            self._rounds(action)
        stands = self.stands[action.number]
        if stands and action is self.recipe.actions[-1]:
            self._join()
            self._task(action, "wait", stands)
        self.last.append(len(self.tasks) - 1)

    def _task(
        self,
        action: Action,
        part: Part,
        lo: int,
        hi: int | None = None,
        kind: Kind = "fixed",
        hands: bool = False,
        title: str = "",
    ) -> int:
        index, work, waits = len(self.tasks), action.work, part == "wait"
        self.tasks.append(
            Task(
                id=f"{action.number}.{part}.{index}",
                lo=lo,
                hi=lo if kind == "fixed" else hi,
                kind=kind,
                hands=hands,
                part=part,
                action=action.number,
                title=title,
                machine=work.machine and waits,
                station=work.station if waits else action.heats or work.station if part == "heat" else "",
                span=action.span,
            )
        )
        return index

    def _before(self, action: Action) -> list[tuple[int, int | None]]:
        """Tasks that a line asks for before it, each with how long before at most."""
        tasks: list[tuple[int, int | None]] = []
        heat = preheating_seconds(action, self.places[action.number], self.kitchen)
        if heat:
            tasks.append((self._task(action, "heat", heat), None))
        stretch = self.stretch[action.number]
        if stretch in self.early and self._takes_food(action):
            tasks.append((self._by_hand(action, self.early.pop(stretch)), None))
        wanted = self.late.get(action.number, ())
        late = [one for one in wanted if one.when == "just-before"]
        if late:
            tasks.append((self._by_hand(action, late), FRESH))
        for one in wanted:
            if one.when in ("boils", "waits"):
                task = self._task(action, "prepare", one.seconds, title=in_words([one]))
                tasks.append((task, FRESH if one.when == "boils" else None))
        return tasks

    def _takes_food(self, action: Action) -> bool:
        """Whether what a step wants chopped is chopped before this line: not before a pan comes to its heat that holds
        nothing or only water, and nothing that is made ready by hand."""
        if action.number in self.cut or action.takings or not action.uses:
            return bool(action.uses or action.takings)
        goods, work = self.recipe.uses[action.uses[0]].ingredient.goods, action.work
        water = goods is not None and goods.wet
        return not water or work.wait is None or work.hands or work.handling > 0

    def _beside(self, action: Action, line: int, before: list[int]) -> None:
        """What a meanwhile asks for by hand is done beside its wait too, where that is so long that nobody has to look
        at the clock: with all that runs beside it at least half of it is left."""
        own, wait = action.work, self.recipe.actions[line].work
        by_hand = [task for task in before if self.tasks[task].hands]
        takes = own.handling + sum([self.tasks[task].lo for task in by_hand])
        takes += 0 if own.wait is None else ceil(own.wait.hi or own.wait.lo)
        self.beside[line] = taken = self.beside.get(line, 0) + takes
        if wait.given == "text" and wait.wait is not None and 2 * taken <= wait.wait.lo:
            self.links += [Link(self.waits[line], task, from_start=True) for task in by_hand]

    def _by_hand(self, action: Action, group: list[Preparation]) -> int:
        takes = sum(one.seconds for one in group)
        return self._task(action, "prepare", takes, hands=True, title=in_words(group))

    def _heating(self, action: Action) -> None:
        if action.work.handling:
            self._task(action, "handle", action.work.handling, hands=True)
            self._join()
        here, by = self.places[action.number], self.turned.get(action.number, 0)
        seconds = heating_seconds(action, here, self.kitchen)
        # An oven that is turned down is hot already, and so is one that is raised, and not heated.
        if by < 0 and action.work.given != "text":
            seconds = MOMENT
        elif by > 0 and any([use.verb.sets and not use.verb.heat for use in action.verbs]):
            seconds = max(MOMENT, heating_seconds(action, here, self.kitchen, by))
        self._task(action, "heat", seconds)

    def _join(self) -> None:
        """Lets the task that comes next follow the last one without a gap."""
        self.links.append(Link(len(self.tasks) - 1, len(self.tasks), 0, 0))

    def _rounds(self, action: Action) -> None:
        """The line as often as it is done."""
        rounds, factor = _rounds(action)
        for turn in range(rounds):
            if turn:
                limit = None if action.work.window else 0
                self.links.append(Link(len(self.tasks) - 1, len(self.tasks), 0, limit))
            self._round(action, factor)

    def _round(self, action: Action, factor: int) -> None:
        work = action.work
        if work.handling or work.wait is None:
            more = self.along.get(action.number, 0)
            self._task(action, "handle", work.handling * factor + more, hands=True)
        if work.wait is None:
            return
        if work.handling:
            self._join()
        if work.boils_up:
            self._task(action, "wait", work.boils_up, hands=work.hands)
            self._join()
        lo = ceil(work.wait.lo) * factor
        hi = None if work.wait.hi is None else max(lo, ceil(work.wait.hi) * factor)
        self.waits[action.number] = len(self.tasks)
        spent = self._called_back(action, lo) if action.tending and not work.hands else 0
        kind: Kind = "window" if work.window or hi is None else "fixed" if hi == lo else "estimate"
        hands = work.hands and action.number not in self.during.values()
        self._task(action, "wait", lo - spent, None if hi is None else hi - spent, kind, hands)

    def _called_back(self, action: Action, length: int) -> int:
        """Cuts a wait at the moments at which it calls the cook; returns the seconds up to the end of the
        last."""
        spent = 0
        for moment, those in sorted(_calls(action.tending, length).items()):
            self._task(action, "wait", max(0, moment - spent))
            self._join()
            spent = max(spent, moment)
            busy = min(MOMENT, length - spent)
            self._task(action, "handle", busy, hands=True, title="\n".join(one.text for one in those))
            self._join()
            spent += busy
        return spent
