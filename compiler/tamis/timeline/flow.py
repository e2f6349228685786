"""What must follow what, and how soon.

The recipe knows which line works on which food. For time that is not enough: after a bake the bread comes
out at once, after a rest it may wait, a starter may not stand for ever, a gravy is made while the meat
rests, and an oven that is heating holds up nothing but the baking.
"""

from __future__ import annotations

from itertools import dropwhile

from tamis.kitchen.equipment import COLD, MADE_READY
from tamis.model.recipe import Action, Recipe
from tamis.reading.clauses import Ingredient, Naming, Reference, Tool
from tamis.syntax.document import Text
from tamis.timeline.fresh import keeps_warm, soon_lines, wanted_soon
from tamis.timeline.network import Link
from tamis.timeline.oven import waits_for_oven
from tamis.timeline.pans import waits_for_pan
from tamis.timeline.tasks import Tasks
from tamis.timeline.words import title_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen

COOLING = 1800
"""Seconds in which an empty jar or bottle cools that was heated; common practice."""

WRAPPING = 120
"""Seconds at most of work that only gets food ready for the cold: wrapped, covered; common practice."""

_PUT_BY = ("", *COLD)
"""Where food waits without anybody having to see to it."""


def flow_links(recipe: Recipe, tasks: Tasks) -> list[Link]:
    """The links between the lines of a recipe."""
    links: list[Link] = []
    before, cut = _before(recipe, tasks, links)
    followed: set[int] = set()
    soon = soon_lines(recipe, before)
    for action in recipe.actions:
        if not tasks.alone[action.number]:
            links += _after(recipe, tasks, action, before[action.number], followed, cut, soon)
            if action.beside is not None:
                links += _beside(recipe, tasks, action, action.beside)
        first = tasks.first[action.number]
        links += [Link(tasks.waits[line], first, from_start=True) for line in action.after_start]
        if action.before is not None:
            links.append(Link(tasks.last[action.number], tasks.first[action.before]))
        if tasks.stands[action.number]:
            links += _served(tasks, action)
    links += _heated(recipe, tasks)
    links += _cooled(recipe, tasks, before)
    links += _oven_free(recipe, tasks, before)
    links += _pan_free(recipe, tasks, before)
    links += _in_text_order(recipe, tasks, before)
    links += _ready_first(recipe, tasks, before)
    return list(dict.fromkeys(links))


def _before(recipe: Recipe, tasks: Tasks, links: list[Link]) -> tuple[list[tuple[int, ...]], set[int]]:
    """The lines that each line must wait for; one that only heats a station stands for those before it. A pan of fat or
    water is put on, a tin greased, and food that nothing was done to is cut, beside the work on what it goes into: what
    comes next waits for both. Given too are the lines that only cut."""
    cut: set[int] = set()
    before: list[tuple[int, ...]] = []
    aside: dict[int, tuple[int, ...]] = {}
    for action in recipe.actions:
        lines: list[int] = []
        for line in action.after:
            if line < action.number and tasks.alone[line]:
                lines += before[line]
            elif line != action.number:
                lines += (line, *aside.get(line, ()))
        if lines and action.uses and _cuts_its_own(recipe, action) and _idle_before(recipe, tasks, action):
            aside[action.number], lines = tuple(lines), [line for line in lines if line in cut]
            cut.add(action.number)
        elif (
            lines
            and action.beside is None
            and (_mixed_beside(recipe, action, lines[-1]) or tasks.during.get(action.number) == lines[-1])
        ):
            links.append(Link(tasks.waits[lines[-1]], tasks.first[action.number], from_start=True))
            aside[action.number] = (lines.pop(),)
        elif _puts_on(recipe, action) or (_makes_ready(recipe, action) and not _fills(action, tasks.kitchen)):
            here = tasks.places[action.number].batch
            empty = here == -1  # a pan without any food follows no work on food
            aside[action.number] = tuple(line for line in lines if empty or tasks.places[line].batch == here)
            lines = [line for line in lines if line not in aside[action.number]]
        before.append(tuple(dict.fromkeys(lines)))
    return before, cut


def _cuts_its_own(recipe: Recipe, action: Action) -> bool:
    """Whether a line only cuts or cleans food that it names first, and puts it nowhere: *peel [3 carrots] and slice
    them*. It is written where it is wanted, and done when there is time."""
    if not action.verbs or action.takings or action.work.wait is not None or action.beside is not None:
        return False
    first, food = action.verbs[0], action.reads[0]
    if not (first.verb.prepares or first.verb.outside) or food.clause.span.start - first.span.end != 1:
        return False
    if any([use.verb.adds or use.verb.heat or use.verb.serves for use in action.verbs]):
        return False
    there = any([isinstance(read, Reference) for read in action.reads])
    there = there or any([tool.definite and tool.equipment.kind != "tool" for tool in action.tools])
    if there or not isinstance(food, Ingredient) or not all([recipe.uses[index].in_batch for index in action.uses]):
        return False
    words = title_words(recipe.language).prepositions.difference(*(use.text.split() for use in action.verbs))
    *between, last = [part.text.lower().rstrip(".").split() for part in action.parts if isinstance(part, Text)]
    return words.isdisjoint(last) and all([words.isdisjoint(said[:-1]) for said in between])


def _idle_before(recipe: Recipe, tasks: Tasks, action: Action) -> bool:
    """Whether a wait of its component, or for its butter to soften, stands before a line."""
    those = [one for one in tasks.tasks if one.part in ("wait", "prepare") and not one.hands]
    return any(recipe.actions[one.action].component == action.component and one.action < action.number for one in those)


def _mixed_beside(recipe: Recipe, action: Action, line: int) -> bool:
    """Whether a meanwhile that takes some of what waits, and is named, only needs that wait to have begun:
    *[meanwhile], mix [15 g flour] with [the rest of the milk] [as flour milk]*."""
    if not action.reads or action.reads[0].role != "meanwhile":
        return False
    waits = recipe.actions[line].work
    return isinstance(action.reads[-1], Naming) and waits.wait is not None and not waits.hands


def _puts_on(recipe: Recipe, action: Action) -> bool:
    """Whether a line only brings a pan of its own to its heat, empty or with fat or water, for what will go into it."""
    work, uses = action.work, [recipe.uses[index] for index in action.uses]
    pans = [tool for tool in action.tools if tool.equipment.kind == "vessel"]
    by_itself = work.wait is not None and not work.hands and action.beside is None and not action.takings
    heats = len(action.verbs) == 1 and not action.verbs[0].verb.cooks and (bool(uses) or action.verbs[0].verb.heat)
    own = bool(pans) and not any(tool.definite for tool in pans)
    return by_itself and heats and own and all(not use.in_batch for use in uses)


def _makes_ready(recipe: Recipe, action: Action) -> bool:
    """Whether a line only greases, lines or dusts a piece of equipment that nothing lies in yet."""
    return bool(_made_ready(action)) and not any(recipe.uses[use].in_batch for use in action.uses)


def _fills(action: Action, kitchen: Kitchen) -> bool:
    """Whether a line goes on with food that it names in plain words: *grease [a dish] and pour in the mixture*, but not
    *lay the rulers out*."""
    words = title_words(kitchen.language)
    for use in action.verbs:
        part = next((part for part in action.parts if part.span.start <= use.span.start < part.span.end), None)
        if not (use.verb.moves or use.verb.outside) or not isinstance(part, Text):
            continue
        behind = part.text[use.span.end - part.span.start :].lower().partition(",")[0].strip(" .").split()
        said = list(dropwhile(words.empty.__contains__, behind))
        ends = (at for at, word in enumerate(said) if word in words.joints or word in words.particles)
        said = said[: next(ends, len(said))]
        if said and kitchen.cupboard.find(said) is None:
            return True
    return False


def _made_ready(action: Action) -> list[str]:
    """The equipment that a line greases, lines or dusts, be it with something that is eaten in the end."""
    if action.work.wait is not None or action.takings or action.beside is not None or not action.verbs:
        return []
    tools = [tool for tool in action.tools if not tool.preposition and tool.equipment.kind in MADE_READY]
    if any(tool.definite for tool in tools) or not action.verbs[0].verb.purpose:
        return []
    return [_noun(tool) for tool in tools]


def _noun(tool: Tool) -> str:
    """*The tin* of a square tin."""
    return tool.name.lower().rpartition(" ")[2]


def _after(
    recipe: Recipe,
    tasks: Tasks,
    action: Action,
    before: tuple[int, ...],
    followed: set[int],
    cut: set[int],
    soon: tuple[frozenset[int], frozenset[int]],
) -> list[Link]:
    """Links to what comes before: at once, within a time, soon, or no later than its window allows. What is cut beside
    it is passed over: the bread comes out of the oven when it is baked, and not when the lemon is sliced."""
    links = []
    tied = _stays(tasks, action)
    at_once = action.at_once
    if cut and not cut.isdisjoint(before):
        at_once = at_once or any(recipe.actions[line].at_once for line in cut.intersection(before))
    asked = at_once or tied or action.within is not None
    batch = _batch(recipe, action, [line for line in before if line not in cut]) if asked else None
    for line in before:
        a, b = tasks.last[line], tasks.first[action.number]
        limit = None
        if line == batch and line not in followed and not keeps_warm(recipe.actions[line]):
            followed.add(line)
            limit = 0 if at_once or (tied and tasks.tasks[a].kind != "window") else action.within
        elif _heats_empty(recipe.actions[line]):
            limit = 0
        links.append(Link(a, b, 0, limit, soon=wanted_soon(recipe, line, action, *soon)))
        wait = tasks.tasks[a]
        if limit is None and wait.kind == "window" and wait.hi is not None and wait.hi > wait.lo:
            links.append(Link(a, b, 0, wait.hi, from_start=True))
    return links


def _heats_empty(action: Action) -> bool:
    """Whether a line heats a vessel with nothing in it: the next thing that happens there is its food."""
    if action.uses or action.takings or action.after or action.heats or not action.work.wait:
        return False
    return any(use.verb.heat for use in action.verbs) and any(
        tool.equipment.kind == "vessel" and tool.equipment.station and not tool.preposition for tool in action.tools
    )


def _stays(tasks: Tasks, action: Action) -> bool:
    """Whether a line is only a wait of food that is put by where the line before leaves it, or in the cold, wrapped if
    the cook may choose how long: it waits from then on, and what a plan can spare comes after."""
    first, last = tasks.tasks[tasks.first[action.number]], tasks.tasks[tasks.last[action.number]]
    if first.part == "handle" and last.kind == "window" and last.station in COLD and first.lo <= WRAPPING:
        return True
    return first.part == "wait" and not first.hands and not first.machine and first.station in _PUT_BY


def _batch(recipe: Recipe, action: Action, before: list[int]) -> int | None:
    """The line before that had the same batch in hand; of those of other components what is kept warm, and not
    the salad that goes with it."""
    lines = [line for line in before if recipe.actions[line].before != action.number]
    if action.beside is not None:
        lines = [line for line in lines if recipe.actions[line].beside == action.beside]
    own = [line for line in lines if recipe.actions[line].component == action.component]
    last = max(own or lines, default=None)
    cold = last is not None and not own and not recipe.actions[last].work.station
    return next((line for line in lines if cold and keeps_warm(recipe.actions[line])), last)


def _beside(recipe: Recipe, tasks: Tasks, action: Action, beside: int) -> list[Link]:
    """A meanwhile begins no sooner than its wait, and after the meanwhile before it."""
    b = tasks.first[action.number]
    waits = recipe.actions[beside].work.wait is not None
    links = [Link(tasks.waits[beside] if waits else tasks.last[beside], b, from_start=waits)]
    previous = action.number - 1
    while previous > beside and tasks.alone[previous]:
        previous -= 1
    if previous > beside and recipe.actions[previous].beside == beside:
        links.append(Link(tasks.last[previous], b))
    return links


def _served(tasks: Tasks, action: Action) -> list[Link]:
    """What is done some time before serving, and the last line of the recipe, which serves."""
    serving = len(tasks.first) - 1
    if action.number == serving:
        return []
    last = tasks.last[serving]
    gap = max(0, tasks.stands[action.number] - tasks.tasks[last].lo)
    return [Link(tasks.first[action.number], last, gap, from_start=True)]


def _heated(recipe: Recipe, tasks: Tasks) -> list[Link]:
    """From each heating to the next line that cooks there."""
    links = []
    cooks_there: dict[str, int] = {}
    for action in reversed(recipe.actions):
        if tasks.alone[action.number] and action.heats in cooks_there:
            links.append(Link(tasks.last[action.number], tasks.first[cooks_there[action.heats]]))
        if action.work.station and not tasks.alone[action.number]:
            cooks_there[action.work.station] = action.number
    return links


def _cooled(recipe: Recipe, tasks: Tasks, before: list[tuple[int, ...]]) -> list[Link]:
    """From a bottle that lay in the oven to the cold syrup that is poured into it: it would crack."""
    links = []
    for action in recipe.actions:
        for line in before[action.number]:
            other = recipe.actions[line]
            verb = tasks.kitchen.verbs.of_base(other.work.verb) if other.work.wait is not None else None
            hot = verb is not None and (verb.heat or other.work.station == "oven")
            empty = tasks.places[line].batch == -1 and not other.uses and not other.heats
            empty = empty and not any(
                tool.equipment.kind == "vessel" and tool.equipment.station for tool in other.tools
            )
            filled = tasks.places[action.number].batch != -1 and not tasks.places[action.number].hot
            if hot and empty and filled:
                links.append(Link(tasks.last[line], tasks.first[action.number], COOLING))
    return links


def _oven_free(recipe: Recipe, tasks: Tasks, before: list[tuple[int, ...]]) -> list[Link]:
    """From what bakes at one temperature to what heats or uses the oven for another one."""
    if tasks.kitchen.settings.kitchen.ovens != 1:
        return []
    links = []
    heats: dict[int, int] = {}
    for at, task in enumerate(tasks.tasks):
        if task.part == "heat":
            heats.setdefault(task.action, at)
    for earlier, later in waits_for_oven(recipe, before):
        first = tasks.first[later] if tasks.alone[later] else heats.get(later, tasks.first[later])
        links.append(Link(tasks.last[earlier], first))
    return links


def _pan_free(recipe: Recipe, tasks: Tasks, before: list[tuple[int, ...]]) -> list[Link]:
    """From what empties a pan to what is put on in it, and to the water that comes to the boil there."""
    links = []
    for earlier, later in waits_for_pan(recipe, before):
        waters = [at for at, task in enumerate(tasks.tasks) if task.action == later and task.part == "prepare"]
        for at in (*(at for at in waters if not tasks.tasks[at].hands), tasks.first[later]):
            links.append(Link(tasks.first[earlier], at))
    return links


def _in_text_order(recipe: Recipe, tasks: Tasks, before: list[tuple[int, ...]]) -> list[Link]:
    """A line that no food leads on from (a tin greased, a bench wiped) is done before the next line of its
    component, since the cook wrote it there."""
    wanted = {line for lines in before for line in lines}
    links = []
    following: dict[int, int] = {}
    for action in reversed(recipe.actions):
        free = action.beside is None and not tasks.alone[action.number]
        if free and action.number not in wanted and action.component in following:
            links.append(Link(tasks.last[action.number], tasks.first[following[action.component]]))
        if free:
            following[action.component] = action.number
    return links


def _ready_first(recipe: Recipe, tasks: Tasks, before: list[tuple[int, ...]]) -> list[Link]:
    """From a line that makes a tin ready to those that put food into it, wherever it stands in the text: until another
    one is made ready, and also those further up, if it is the only one and waits for nothing."""
    made = {action.number: _made_ready(action) for action in recipe.actions}
    links: list[Link] = []
    for number, names in made.items():
        for name in names:
            alike = [other for other, those in made.items() if name in those]
            ends = min((other for other in alike if other > number), default=len(made))
            begins = number + 1 if len(alike) > 1 or before[number] else 0
            for action in recipe.actions[begins:ends]:
                placed = any(tool.definite and tool.preposition and _noun(tool) == name for tool in action.tools)
                if placed and action.number != number:
                    links.append(Link(tasks.last[number], tasks.first[action.number]))
    return links
