"""Food that spoils and stands too long between cold and hot: at room temperature, or kept warm but not hot."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.safety.data import rules
from tamis.safety.records import Item, Wait

if TYPE_CHECKING:
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Time
    from tamis.safety.state import State

_RISKY = frozenset(
    ("poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "egg", "rice", "raw-milk", "stuffing")
)
_AWAY = ("fridge", "freezer", "oven", "grill")


def risky_wait(action: Action, time: Time, state: State, authority: str) -> Wait | None:
    """A wait of more than the window at a temperature between cold and hot."""
    item = risky(state)
    lasts = action.work.wait
    if item is None or lasts is None or action.work.station in _AWAY:
        return None
    window = rules().windows[authority]
    longest = lasts.hi if lasts.hi is not None else lasts.lo
    if longest <= window.out or any(use.verb.base in ("thaw",) for use in action.verbs):
        return None
    at = _degrees(action, time)
    if at is None:
        heats = any(use.verb.base == action.work.verb and use.verb.heat for use in action.verbs)
        if (heats and (action.on_heat or action.work.station == "ring")) or action.work.station == "bath":
            return None
        return Wait(action.number, item.food, time.clause.span)
    least = window.hold
    return None if at >= least or at <= window.cold else Wait(action.number, item.food, time.clause.span, at)


def risky(state: State) -> Item | None:
    """The first food in the batch that spoils, cooked or raw: not egg in a dough, not what was cured."""
    found = (item for item in state.items.values() if item.hazard in _RISKY and item.form != "contact")
    return next((item for item in found if not item.bound), None)


def _degrees(action: Action, time: Time) -> Fraction | None:
    settings = [*action.settings, *([time.setting] if time.setting else [])]
    return next((s.celsius.lo for s in settings if s.kind in ("temperature", "room") and s.celsius), None)
