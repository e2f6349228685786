"""What should be taken up soon: what is hot or fresh, and what is only begun.

Sauces and fried food are good hot, what was whipped or dressed is good fresh, and a mayonnaise is not left in the
middle. What the next line heats again need not be hot.
"""

from __future__ import annotations

from tamis.kitchen.equipment import COLD
from tamis.reading.clauses import Pause
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Action, Recipe

_COLD_AFTER = 1800
"""Seconds off the heat after which food is hot no more; common practice."""


def soon_lines(recipe: Recipe, before: Sequence[tuple[int, ...]]) -> tuple[frozenset[int], frozenset[int]]:
    """The lines that leave food hot, and those that leave food that is good only fresh; `before` are those that each
    line follows by way of the food."""
    hot: set[int] = set()
    fresh: set[int] = set()
    for action in recipe.actions:
        if action.heats or _puts_by(action):
            continue
        after, heats = before[action.number], _heats(action)
        if heats or not hot.isdisjoint(after):
            hot.add(action.number)
        if any([use.verb.fresh for use in action.verbs]) or not (heats or fresh.isdisjoint(after)):
            fresh.add(action.number)
    return frozenset(hot), frozenset(fresh)


def _puts_by(action: Action) -> bool:
    """Whether a line leaves food that may stand: it cools, or waits in the cold or for long."""
    work = action.work
    long = work.wait is not None and not work.station and work.wait.lo >= _COLD_AFTER
    cools = any([use.verb.cools for use in action.verbs])
    return cools or long or work.station in COLD or (work.window and not keeps_warm(action))


def _heats(action: Action) -> bool:
    return any([use.verb.heat for use in action.verbs])


def wanted_soon(recipe: Recipe, line: int, action: Action, hot: frozenset[int], fresh: frozenset[int]) -> int:
    """How soon a line is wanted after one that it follows: 3 for what is fresh or to stay hot, 2 for a hot sauce, which
    stands in its pan, 1 for what is begun."""
    if line in fresh or (line in hot and not _heats(action)):
        return 2 if line not in fresh and _is_sauce(recipe, line) else 3
    return int(_begun(recipe, recipe.actions[line], action))


def _is_sauce(recipe: Recipe, line: int) -> bool:
    """Whether a line leaves its food in a hot liquid, which stays hot for longer than what is fried."""
    return recipe.places.lines[line].hot and not any([use.verb.drains for use in recipe.actions[line].verbs])


def keeps_warm(action: Action) -> bool:
    """Whether a line ends with food that is kept warm: what comes next need not come at once."""
    return any(isinstance(read, Pause) and read.verb is not None for read in action.reads[-1:])


def _begun(recipe: Recipe, one: Action, other: Action) -> bool:
    """Whether a line goes on by hand with what another has in hand: more than cut, seasoned, or a tin greased for it,
    and without a wait between."""
    here = recipe.places.lines
    same = one.component == other.component and here[one.number].batch == here[other.number].batch >= 0
    by_hand = one.work.wait is None or one.work.hands
    food = bool(one.takings) or any([recipe.uses[use].in_batch for use in one.uses]) or not one.uses
    return same and by_hand and food and not all([use.verb.prepares or use.verb.purpose for use in one.verbs])
