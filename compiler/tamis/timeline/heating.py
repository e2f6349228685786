"""How long a station takes to get hot.

An oven is empty while it heats, so it can be lit long before the food is ready, and must be: a line that
only says *bake at 230 °C* has half an hour hidden in it. The time follows from the temperature and the
house's oven (`heat` and `stone` in `kitchen.toml`).
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from tamis.model.recipe import Action
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.places import Here

ROOM = 20
"""°C from which a station heats: common practice for a kitchen."""

BY_THEMSELVES = ("oven", "grill", "bath")
"""Stations that are heated empty, with nobody standing by."""

GRILL = 300
"""Seconds for a grill without a temperature; common practice."""


def heats_alone(action: Action) -> bool:
    """Whether a line heats a station that needs nobody, and nothing else: it holds up no food."""
    return action.heats in BY_THEMSELVES


def heating_seconds(action: Action, here: Here, kitchen: Kitchen, by: int | Fraction = 0) -> int:
    """How long the line's station heats: the cook's own time, else by temperature, and longer with a stone
    in it; where it is hot already, by so many °C."""
    wait = action.work.wait
    if wait is not None and action.work.given == "text":
        return ceil(wait.lo)
    hottest = max((knob.celsius.hi for knob in here.sets), default=None)
    if hottest is None:
        return ceil(wait.lo) if wait is not None else GRILL
    return _by_temperature(Fraction(ROOM + by) if by else hottest, action, kitchen)


def preheating_seconds(action: Action, here: Here, kitchen: Kitchen) -> int:
    """How long the line's station must heat before it though no line asks for it; 0 where it is hot
    already."""
    return 0 if here.preheat is None else _by_temperature(here.preheat.hi, action, kitchen)


def _by_temperature(hottest: Fraction, action: Action, kitchen: Kitchen) -> int:
    house = kitchen.settings.kitchen
    seconds = ceil((hottest - ROOM) / house.heat * 60) if hottest > ROOM and house.heat > 0 else 0
    return seconds + (house.stone if any(tool.equipment.heats for tool in action.tools) else 0)
