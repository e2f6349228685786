"""Where an action happens: which station it takes, what it heats, and whether the food stays on the heat."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.reading.clauses import Reference, Time, Tool
from tamis.record import NamedTuple

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.model.act import Act
    from tamis.model.batch import Batch
    from tamis.model.work import Labour
    from tamis.quantity.amount import Amount

# Above this a temperature in degrees is that of an oven or a pan, not of a room or a proving dough.
_HOT = Fraction(60)
_STAYS = ("ring", "oven", "grill", "bath")


class Heat(NamedTuple):
    """`station` is what the action occupies; `heats` the empty station that it brings to `temperature`; `preheat`
    a temperature that the station needs and nobody has heated it to."""

    station: Station = ""
    heats: Station = ""
    temperature: Amount | None = None
    preheat: Amount | None = None
    on_heat: bool = False


def heat_of(act: Act, labour: Labour, batch: Batch | None) -> Heat:
    """Work the station out from tools, settings, the verb, and where the batch lies already."""
    temperature = _temperature(labour)
    hot_oven = "oven" in act.walker.flow.station_temperature
    station = _station(act.tools, labour, batch, act.walker.heated == "bath", hot_oven)
    inside = batch is not None and batch.on_heat and batch.station == station
    if station in ("oven", "bath", "grill") and not inside and _only_heats(act):
        return Heat(station, station, temperature)
    preheat = None
    if station == "oven" and temperature and not inside and labour.time is not None:
        there = act.walker.flow.station_temperature.get("oven")
        preheat = temperature if there is None or temperature.hi > there.hi else None
    return Heat(station, "", temperature, preheat, _stays(labour, batch, station))


def _temperature(labour: Labour) -> Amount | None:
    """The temperature that a station is set or brought to."""
    time = labour.time
    settings = [*labour.settings]
    if isinstance(time, Time) and time.setting:
        settings.append(time.setting)
    for setting in settings:
        if setting.kind == "temperature" and setting.celsius and setting.celsius.lo >= _HOT:
            return setting.celsius
    for target in labour.targets:
        if target.kind == "temperature" and target.celsius:
            return target.celsius
    return None


def _station(tools: list[Tool], labour: Labour, batch: Batch | None, bath: bool, hot_oven: bool) -> Station:
    """The station that an action takes; `bath` says that the component has a water bath on, `hot_oven` that the oven
    has been heated."""
    for tool in tools:
        if tool.equipment.station and tool.equipment.kind == "station":
            return tool.equipment.station
    if "off" in labour.set:
        return ""
    if "heat" in labour.set:
        return "ring"
    if "speed" in labour.set:
        return "mixer"
    lies: Station = batch.station if batch and batch.on_heat else ""
    uses = [labour.time_verb] if labour.time_verb else labour.verbs
    stations = [use.verb.station for use in uses if use.verb.station]
    station = stations[0] if stations else ""
    if station == "ring" and not lies and bath:
        return "bath"
    if station == "ring" and (lies in ("oven", "bath") or _set_hot(labour)):
        return lies or "oven"
    if station == "ring" and hot_oven and not lies and any(tool.equipment.station == "oven" for tool in tools):
        return "oven"  # place on a baking tray and cook
    if station or not lies:
        return station
    moved = any(tool.equipment.kind in ("vessel", "surface") and not tool.definite for tool in tools)
    return "" if moved else lies


def _set_hot(labour: Labour) -> bool:
    """Whether an oven is meant by a setting in degrees."""
    return any(s.kind == "temperature" and s.celsius and s.celsius.lo >= 2 * _HOT for s in labour.settings)


def _only_heats(act: Act) -> bool:
    """An action with no food in it, whose object is the station itself."""
    if act.uses or act.takings:
        return False
    first = next((e for e in act.read.events if isinstance(e, (Tool, Reference))), None)
    named = any(tool.equipment.kind == "station" for tool in act.tools)
    return named and first is not None and first.role in ("equipment", "reference") and _is_station(act, first)


def _is_station(act: Act, first: Tool | Reference) -> bool:
    if isinstance(first, Tool):
        return first.equipment.kind == "station" and not first.preposition
    return bool(act.tools) and act.tools[0].clause is first.clause and act.tools[0].equipment.kind == "station"


def _stays(labour: Labour, batch: Batch | None, station: str) -> bool:
    """Whether the batch lies on the heat when the action ends."""
    if "off" in labour.set:
        return False
    if labour.time_verb and labour.time_verb.verb.keeps:
        return False
    if station in _STAYS:
        return True
    return bool(batch and batch.on_heat and station == batch.station)
