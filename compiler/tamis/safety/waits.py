"""Food that spoils and stands too long between cold and hot: at room temperature, or kept warm but not hot; and
garlic in oil that is kept outside the fridge."""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.equipment import COLD
from tamis.quantity.amount import total
from tamis.reading.clauses import Pause
from tamis.safety.data import rules
from tamis.safety.records import Item, Wait
from tamis.safety.signs import oil_with_garlic
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.kitchen.settings import Authority
    from tamis.model.places import Here
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Time
    from tamis.safety.records import Form, HazardKind
    from tamis.safety.state import State

_RISKY: frozenset[HazardKind] = frozenset(
    ("poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "egg", "rice", "raw-milk", "stuffing",
     "leftover", "cut")
)  # fmt: skip
_PUT_BY = 86400
"""Seconds for which nobody leaves a salad to stand."""
_AWAY: tuple[Station, ...] = ("fridge", "freezer", "oven", "grill")


def risky_wait(
    recipe: Recipe, action: Action, here: Here, time: Time | Pause, state: State, authority: Authority
) -> Wait | None:
    """A long wait at a temperature between cold and hot."""
    item = _risky(state)
    if item is None or any(use.verb.base in rules().verbs["thaws"] for use in action.verbs):
        return None
    if item.hazard == "cut" and (item.heated or _sours(action) or _salted(recipe, state)):
        return None
    at = _degrees(here)
    if at is None:
        heats = any(use.verb.base == action.work.verb and use.verb.heat for use in action.verbs)
        if (heats and (here.stays or here.station == "ring")) or here.station == "bath":
            return None
        if any(setting.kind == "heat" for setting in action.settings):
            return None
        return Wait(action.number, item.food, time.clause.span, kept_warm=isinstance(time, Pause))
    window = rules().windows[authority]
    return None if at >= window.hold or at <= window.cold else Wait(action.number, item.food, time.clause.span, at)


def _sours(action: Action) -> bool:
    """Whether cut leaves are put by, and do not stand about: by the verb, or for days, as cabbage in its salt."""
    lasts = action.work.wait
    return action.work.verb in rules().verbs["sours"] or (lasts is not None and lasts.lo >= _PUT_BY)


def _salted(recipe: Recipe, state: State) -> bool:
    """Whether cut leaves lie in salt that keeps them."""
    uses = [recipe.uses[index] for index in state.uses]
    salt = total([use.mass.lo for use in uses if (goods := use.ingredient.goods) and goods.salt])
    return salt >= total([use.mass.hi for use in uses]) * rules().keeping["salt"] and salt > 0


def oil_wait(recipe: Recipe, here: Here, time: Time | Pause, state: State, authority: Authority) -> Wait | None:
    """A long wait of garlic in oil at no stated cold."""
    if here.stays or not oil_with_garlic(recipe, state):
        return None
    at = _degrees(here)
    cold = at is not None and at <= rules().windows[authority].cold
    return None if cold else Wait(here.action, "garlic in oil", time.clause.span, at)


def cooled_in_part(action: Action, here: Here, time: Time | Pause, state: State, authority: Authority) -> Wait | None:
    """Raw meat, fish or poultry that was on the heat, is not done, and goes into the cold for longer than a meal's
    work."""
    lasts = action.work.wait
    if here.station not in COLD or lasts is None or lasts.lo < rules().windows[authority].out:
        return None
    item = state.raw_flesh()
    if item is None or not item.heated or item.form not in _IN_PIECES:
        return None
    return Wait(action.number, item.food, time.clause.span, use=item.use)


_IN_PIECES: tuple[Form, ...] = ("piece", "small", "fine", "whole", "large")


def long(action: Action, here: Here, authority: Authority) -> bool:
    """Whether the action's wait may be longer than food that spoils may stand, and not in the cold or the heat: an oven
    may be at 50 °C."""
    lasts = action.work.wait
    if lasts is None or (here.station in _AWAY and _degrees(here) is None):
        return False
    return (lasts.hi if lasts.hi is not None else lasts.lo) > rules().windows[authority].out


def _risky(state: State) -> Item | None:
    """The first food in the batch that spoils, cooked or raw: not egg in a dough, not what was cured."""
    if state.kinds.isdisjoint(_RISKY):
        return None
    found = (item for item in state.items.values() if item.hazard in _RISKY and item.form != "contact")
    return next((item for item in found if not item.bound), None)


def _degrees(here: Here) -> Fraction | None:
    """°C of the place, as this line or one before it says."""
    return here.celsius.lo if here.celsius else None
