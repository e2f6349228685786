"""Whether a dish is eaten hot or cold: what was on the heat and has not been cooled since."""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import COLD
from tamis.reading.clauses import Cue
from tamis.safety.data import rules
from tamis.safety.heatings import HOT
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe
    from tamis.safety.state import State

_LONG = 1800
"""Seconds in the cold, or of cooling, after which food is hot no more (common practice)."""


def eaten_cold(recipe: Recipe, dish: State, hands: Hands) -> bool:
    """Whether all but a little of a dish is cold when it is done."""
    heats: dict[int, bool] = {}
    for action in recipe.actions:
        here = recipe.places.lines[action.number]
        if not here.heats and (here.station in HOT or any(use.verb.heat for use in action.verbs)):
            heats[action.number] = True
        elif _cools(action, here.station, recipe.language):
            heats[action.number] = False
    hot = {use for line, uses in hands.newly(reversed(heats)) if heats[line] for use in uses}  # the last line decides
    weights = {index: recipe.uses[index].mass for index in dish.uses}
    warm = sum((mass.hi for index, mass in weights.items() if index in hot), Fraction(0))
    little = warm <= sum((mass.hi for mass in weights.values()), Fraction(0)) * rules().keeping["hot"]
    return little and all(mass.known for index, mass in weights.items() if index in hot) and not dish.recipes


def _cools(action: Action, station: Station, language: str) -> bool:
    """Whether a line leaves its food cold: long in the cold, long cooling, or until it is."""
    long = action.work.wait is not None and action.work.wait.lo >= _LONG
    if long and (station in COLD or any(use.verb.cools for use in action.verbs)):
        return True
    cold = safety_words(language).signs.cold
    cues = [read.text for read in action.reads if isinstance(read, Cue)]
    return any(cold.search(said) for said in [*cues, *(tool.contains for tool in action.tools)])
