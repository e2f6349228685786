"""Water that a line takes hot and nobody has put on: `[into a pan of boiling water]`, `[in plenty of salted water]`.

Nobody writes *put a pan of water on* where eggs go into boiling water, though it is the first thing to do. It heats by
itself; where nobody measures it, it is what a cook puts on (`grammar/preparations.toml`). What a line of a component
has put on stays there for the lines after it.
"""

from __future__ import annotations

from math import ceil

from tamis.kitchen.pans import pan_to_boil
from tamis.model.mass import cold_water, weighed
from tamis.model.words import model_words
from tamis.reading.clauses import Ingredient, Tool
from tamis.timeline.preparation import Preparation, hot_word, made_hot
from tamis.timeline.words import row_words, title_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.recipe import Action, Recipe

RING: Station = "ring"
MOMENT = 60
"""Seconds in which so little comes to the boil that nobody sees it as work; common practice."""

Pan = tuple[int, str, bool]
"""By which water is known again: the component, the vessel that it lies in, and whether food lies in it or over it."""


def waters(recipe: Recipe, kitchen: Kitchen) -> dict[int, Preparation]:
    """The water to be put on before each line."""
    found: dict[int, Preparation] = {}
    there: set[Pan] = set()
    for action in recipe.actions:
        asked = [read for read in action.reads if isinstance(read, Ingredient | Tool) and _is_water(read, kitchen)]
        cold = []
        for read in asked:
            pan, word = _pan(action, read, kitchen), hot_word(_said(read).split(), kitchen.language)
            if not word:
                cold.append(read)
            elif pan not in there and not read.definite:
                there.add(pan)
                found[action.number] = _hot(action, read, word, kitchen)
        if len(cold) == len(asked) > 0 and action.work.given == "verb":  # the line itself brings it to its heat
            there |= {*(_pan(action, read, kitchen) for read in cold), (action.component, "", True)}
        elif len(cold) == len(asked) and (verb := _boils(action, kitchen)):
            found |= _brought(action, [read for read in cold if _pan(action, read, kitchen)[2]], verb, kitchen)
    return found


def _is_water(read: Ingredient | Tool, kitchen: Kitchen) -> bool:
    """Whether a clause is of a liquid that food lies in or over and that is no part of the batch, and not kept cold."""
    words = title_words(kitchen.language)
    if isinstance(read, Ingredient):
        goods, inside = read.goods, read.preposition in words.boils_in
        hot = hot_word(read.states, kitchen.language)
        fills = inside and (read.measured or not read.vague or read.vague in words.plenty)
        lies = not read.measured if hot else fills or cold_water(read, kitchen)
    else:
        found = kitchen.larder.named(read.contains)
        goods, lies = found.goods if found else None, True
    if goods is None or not lies or not goods.liquid or goods.role == "fat":
        return False
    return model_words(kitchen.language).cold.isdisjoint(_said(read).split())


def _said(water: Ingredient | Tool) -> str:
    return water.name if isinstance(water, Ingredient) else water.contains


def _pan(action: Action, water: Ingredient | Tool, kitchen: Kitchen) -> Pan:
    vessel = water.equipment.name if isinstance(water, Tool) else ""
    return action.component, vessel, water.preposition not in title_words(kitchen.language).over


def _boils(action: Action, kitchen: Kitchen) -> Verb | None:
    """The verb of a line whose time begins when its water boils."""
    verb = kitchen.verbs.of_base(action.work.verb) if action.work.given == "text" else None
    return verb if verb is not None and verb.water_per_kg and verb.cooks else None


def _hot(action: Action, water: Ingredient | Tool, word: str, kitchen: Kitchen) -> Preparation:
    """Water that is hot when it is taken: a pan of it, in which food cooks, takes longer than what a kettle holds."""
    much = isinstance(water, Tool) or water.vague in title_words(kitchen.language).plenty or _cooks(action, kitchen)
    takes = pan_to_boil(_adjectives(water) or _of_pan(action)) if much and _pan(action, water, kitchen)[2] else 0
    return made_hot(word, _said(water), kitchen, takes)


def _cooks(action: Action, kitchen: Kitchen) -> bool:
    """Whether a line cooks food in its water: what only soaks there is poured over from the kettle."""
    verb = kitchen.verbs.of_base(action.work.verb)
    return verb is not None and verb.cooks


def _of_pan(action: Action) -> tuple[str, ...]:
    """The adjectives of the pan that a line brings out."""
    return next((tool.adjectives for tool in action.tools if tool.equipment.station == RING), ())


def _brought(
    action: Action, waters: Sequence[Ingredient | Tool], verb: Verb, kitchen: Kitchen
) -> dict[int, Preparation]:
    """Water that comes to the boil before the time of its line begins."""
    takes = 0
    for water in waters:
        known = weighed(water, kitchen) if isinstance(water, Ingredient) else None
        takes += ceil(verb.water_per_kg * min(known) / 1000) if known else pan_to_boil(_adjectives(water))
    if takes < MOMENT:
        return {}
    title = row_words(kitchen.language).boil_up
    return {action.number: Preparation("boils", takes, title, _said(waters[0]))}


def _adjectives(water: Ingredient | Tool) -> tuple[str, ...]:
    return water.adjectives if isinstance(water, Tool) else ()
