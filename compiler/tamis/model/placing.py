"""The places of the food put together from the log: one fold over it.

What a line says of its place stands there already, with the rank of the evidence (`heat.py` decides it once). Batches
go in the order of the log, in which a component is made when it is wanted; the degrees of a station go in the order of
the text, in which a cook turns its knob.
"""

from __future__ import annotations

from tamis.model.effects import Sets, Stands
from tamis.model.places import Here, Knob, Places, Rank
from tamis.quantity.amount import Amount
from tamis.typed import TYPE_CHECKING, cast

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.model.effects import Entry

_KNOBS: tuple[Station, ...] = ("oven", "grill", "bath")
"""Stations that keep the degrees that they were set to."""


def places_of(log: Sequence[Entry], lines: int) -> Places:
    """Where the food of so many lines is, by what the log says."""
    here = [Here(action) for action in range(lines)]
    lies: dict[int, tuple[Station, int]] = {}  # where a batch was left, and by which entry it came there
    for number, action, _, _, _, _, effect, _, why in log:
        if isinstance(effect, Stands):
            station, since = lies.get(effect.batch, ("", -1))
            if station != effect.station or not station:
                since = number
            here[action] = here[action]._replace(
                batch=effect.batch,
                station=effect.station,
                rank=cast("Rank", why.rule),
                since=since,
                stays=effect.stays,
                heats=effect.heats,
            )
            lies[effect.batch] = (effect.station, since) if effect.stays else ("", -1)
        elif isinstance(effect, Sets) and effect.set:
            here[action] = here[action]._replace(sets=(*here[action].sets, Knob(effect.read, effect.celsius)))
    return Places(tuple(_with_degrees(here)))


def _with_degrees(lines: Sequence[Here]) -> list[Here]:
    """The lines with how hot their stations are: what one is set to holds until it is set otherwise."""
    there: dict[Station, Amount] = {}
    found: list[Here] = []
    for here in lines:
        if here.sets and here.station in _KNOBS:
            there[here.station] = here.sets[0].celsius
        celsius = here.sets[0].celsius if here.sets else there.get(here.station)
        found.append(here._replace(celsius=celsius) if celsius else here)
    return found
