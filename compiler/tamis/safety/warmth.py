"""Whether a dish is eaten hot or cold: what was on the heat and has not been cooled since."""

from __future__ import annotations

from tamis.kitchen.equipment import COLD
from tamis.quantity.amount import total
from tamis.reading.clauses import Cue
from tamis.safety.data import rules
from tamis.safety.heatings import HOT
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.equipment import Station
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe
    from tamis.safety.state import State

_LONG = 1800
"""Seconds in the cold, or of cooling, after which food is hot no more (common practice)."""


def eaten_cold(recipe: Recipe, dish: State, hands: Hands) -> bool:
    """Whether all but a little of a dish is cold when it is done."""
    heats: dict[int, bool] = {}
    left, hot = set(dish.uses), set[int]()
    for line, uses in hands.newly(_changes(recipe, heats)):
        if heats[line]:
            hot |= uses & left
        left -= uses
        if not left:
            break
    warm = [recipe.uses[index].mass for index in hot]
    if any([mass.unknown for mass in warm]) or dish.recipes:
        return False
    little = rules().keeping["hot"]
    return total([mass.hi for mass in warm]) <= total([recipe.uses[index].mass.hi for index in dish.uses]) * little


def _changes(recipe: Recipe, heats: dict[int, bool]) -> Iterator[int]:
    """The lines that heat food or leave it cold, the last first, for that decides; which of the two is put down."""
    for action in reversed(recipe.actions):
        here = recipe.places.lines[action.number]
        hot = not here.heats and (here.station in HOT or any([use.verb.heat for use in action.verbs]))
        if hot or _cools(action, here.station, recipe.language):
            heats[action.number] = hot
            yield action.number


def _cools(action: Action, station: Station, language: str) -> bool:
    """Whether a line leaves its food cold: long in the cold, long cooling, or until it is."""
    cools = station in COLD or any([use.verb.cools for use in action.verbs])
    if cools and action.work.wait is not None and action.work.wait.lo >= _LONG:
        return True
    said = [read.text for read in action.reads if isinstance(read, Cue)]
    said += [tool.contains for tool in action.tools if tool.contains]
    return any(map(safety_words(language).signs.cold.search, said))
