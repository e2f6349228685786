"""The places of the food put together from the log: one fold over it.

What a line says of its place stands there already, with the rank of the evidence (`heat.py` decides it once). Batches
go in the order of the log, in which a component is made when it is wanted; the degrees of a station go in the order of
the text, in which a cook turns its knob.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.effects import Sets, Stands
from tamis.model.places import Here, Knob, Places, Rank
from tamis.quantity.amount import Amount
from tamis.typed import TYPE_CHECKING, cast

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.model.effects import Entry
    from tamis.model.recipe import Action

_KNOBS: tuple[Station, ...] = ("oven", "grill", "bath")
"""Stations that keep the degrees that they were set to."""


_HOT = Fraction(60)
"""°C above which an oven is hot, and not a warm place for dough (common practice)."""


def places_of(log: Sequence[Entry], actions: Sequence[Action]) -> Places:
    """Where the food of the lines is, by what the log says."""
    here = [Here(action.number) for action in actions]
    lies: dict[int, tuple[Station, int]] = {}  # where a batch was left, and by which entry it came there
    for number, action, _, _, _, _, effect, _, why in log:
        if isinstance(effect, Stands):
            station, since = lies.get(effect.batch, ("", -1))
            if station != effect.station or not station:
                since = number
            here[action] = here[action]._replace(
                batch=-1 if effect.heats else effect.batch,
                station=effect.station,
                rank=cast("Rank", why.rule),
                since=since,
                stays=effect.stays,
                heats=effect.heats,
            )
            lies[effect.batch] = (effect.station, since) if effect.stays else ("", -1)
        elif isinstance(effect, Sets) and effect.set:
            here[action] = here[action]._replace(sets=(*here[action].sets, Knob(effect.read, effect.celsius)))
        elif isinstance(effect, Sets):
            here[action] = here[action]._replace(celsius=effect.celsius)
    return Places(tuple(_with_degrees(here, log, actions)))


def _with_degrees(lines: Sequence[Here], log: Sequence[Entry], actions: Sequence[Action]) -> list[Here]:
    """The lines with how hot their stations are: what one is set to holds until it is set otherwise."""
    there: dict[Station, Amount] = {}
    found: list[Here] = []
    for here in lines:
        comes = log[here.since].action == here.action
        timed = actions[here.action].work.given == "text"
        preheat = _preheat(here, there.get("oven")) if here.station == "oven" and comes and timed else None
        if here.sets and here.station in _KNOBS:
            there[here.station] = here.sets[0].celsius
        celsius = here.sets[0].celsius if here.sets else here.celsius or there.get(here.station)
        found.append(here._replace(celsius=celsius, preheat=preheat) if celsius else here)
    return found


def _preheat(here: Here, before: Amount | None) -> Amount | None:
    """How hot an oven must be for the food of a line that does not heat it, where it was colder before."""
    hot = next((knob.celsius for knob in here.sets if knob.celsius.lo >= _HOT), None)
    if here.heats == "station" or hot is None:
        return None
    return hot if before is None or hot.hi > before.hi else None
