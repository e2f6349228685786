"""Where an action happens: which station it takes, what it heats, and whether the food stays on the heat."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from tamis.kitchen.equipment import HOLDS
from tamis.model.effects import Sets, Stands, Why
from tamis.model.off_heat import is_looked_for, leaves_heat, names_heat, off_heat
from tamis.reading.clauses import Reference, Target, Tool, VerbUse
from tamis.reading.exact import EXACT
from tamis.reading.plain_tools import tools_in
from tamis.record import NamedTuple, made
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Equipment, Station
    from tamis.model.batch import Batch
    from tamis.model.effects import Rule
    from tamis.model.labour import Labour
    from tamis.model.line import Line
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Read
    from tamis.reading.plain_tools import Placed
    from tamis.reading.reading import Event

# Above this a temperature in degrees is that of an oven or a pan, not of a room or a proving dough.
_HOT = Fraction(60)
_HOTTEST_FOOD = Fraction(120)
"""°C that no food with water in it reaches: what is brought to more is a station (common practice)."""
_BATH: Station = "bath"
_DRY: tuple[Station, ...] = ("oven", "grill")
_STAYS: tuple[Station, ...] = ("ring", "oven", "grill", "bath")
_RULES: tuple[Rule, ...] = ("said", "verb", "stays", "guess", "nowhere")
_WHY = {rule: Why(rule) for rule in _RULES}


class Heat(NamedTuple):
    """`station` is what the action occupies, by some `rule`; `heats` the empty station that it brings to a temperature;
    `hot` says that it is set to one; `sets` are the clauses that give degrees to the station, with these;
    `vessel` is the empty one that it heats while the food waits elsewhere."""

    station: Station = ""
    rule: Rule = "nowhere"
    heats: Station = ""
    hot: bool = False
    on_heat: bool = False
    sets: tuple[tuple[Read, Amount], ...] = ()
    vessel: Tool | None = None


def heat_of(act: Line, labour: Labour, batch: Batch | None) -> Heat:
    """Work the station out from tools, settings, the verb, and where the batch lies already."""
    hot_oven = "oven" in act.walker.flow.hot_stations
    leaves = leaves_heat(labour)
    moves = _moves(act) if "moves" in labour.does else ""
    lies, sure = _lies(act, None if "first" in (leaves, moves) else batch)
    station, rule = _station(act, labour, lies, act.walker.heated == _BATH, hot_oven)
    if rule == "stays" and not sure:
        rule = "guess"
    inside = batch is not None and batch.on_heat and batch.station == station
    heats = station in (*_DRY, _BATH) and not inside and _only_heats(act)
    fries = station == "ring" and "fries" in labour.does
    sets = () if fries else tuple(_degrees_of(act, labour, station, heats))
    hot = any([heats or celsius.lo >= _HOT for _, celsius in sets])
    if heats:
        return Heat(station, rule, station, hot, sets=sets)
    vessel = _heated_vessel(act)
    on_heat = not leaves and moves != "last" and vessel is None and _stays(labour, lies, station)
    return Heat(station, rule, "", hot, on_heat, sets, vessel)


def _lies(act: Line, batch: Batch | None) -> tuple[Station, bool]:
    """Where the food lies when the line begins, or is put into a vessel that was heated empty; and whether that is
    certain."""
    if batch and batch.on_heat:
        return batch.station, batch.sure
    if act.walker.hot_vessel is None:
        return "", True
    hot, station = act.walker.hot_vessel
    vessels = [tool for tool in act.tools if tool.equipment.kind == "vessel" and not tool.contains]
    if vessels:
        same = any(tool.definite and _may_be(tool.equipment, hot) for tool in vessels)
        return (station, True) if same else ("", True)
    if "moves" not in act.labour.does:
        return "", True
    more = batch is not None and batch.last is not None and any(act.walker.flow.uses[use].in_batch for use in act.uses)
    return station, not more  # whether what is added to a cold bowl goes into the hot pan, nobody can say


def _may_be(equipment: Equipment, hot: Equipment) -> bool:
    """Whether *the pan* is the one that is hot."""
    return equipment.id == hot.id or (equipment.general and equipment.station == hot.station)


def tell(act: Line, heat: Heat, batch: Batch | None) -> None:
    """Write into the log where the line's batch is, and whose degrees its clauses give."""
    walker = act.walker
    number = -1 if batch is None else batch.number
    heats = "station" if heat.heats else "vessel" if heat.vessel else ""
    walker.emit(made(Stands, (number, heat.station, heat.on_heat, heats)), _WHY[heat.rule])
    sets = [(read, celsius, True) for read, celsius in heat.sets]
    for read, setting in act.labour.degrees:
        if setting.kind == "room" and setting.celsius:
            sets.append((read, setting.celsius, False))
    for read, celsius, is_set in sets:
        exact = EXACT.get(type(read))
        walker.at(act.number, read.clause.span, exact(read) if exact else read.clause.span, -1)
        at = next(at for at, other in enumerate(act.reads) if other is read)
        walker.emit(made(Sets, (at, heat.station, celsius, is_set)))
    if sets:
        walker.at(act.number, act.read.span, act.read.span, -1)


def _degrees_of(act: Line, labour: Labour, station: str, heats: bool) -> list[tuple[Read, Amount]]:
    """The clauses of a line that give degrees to its station, not to the food, and those degrees: settings, then
    targets.

    What a line brings to a temperature is the station only if it heats one (`heats`), names it right before (`lower
    [the oven] [to 180 °C]`), or asks for more than food in an oven can reach: `roast [to 74 °C]` is the bird's."""
    found: list[tuple[Read, Amount]] = []
    for read, setting in labour.degrees:
        if setting.kind == "temperature" and setting.celsius:
            found.append((read, setting.celsius))
    for before, target in pairwise((None, *act.reads)) if labour.targets else ():
        if (
            isinstance(target, Target)
            and target.celsius
            and (heats or (station in _DRY and target.celsius.lo > _HOTTEST_FOOD) or _is_set(before, act.tools))
        ):
            found.append((target, target.celsius))
    return found


def only_sets(heat: Heat, labour: Labour) -> bool:
    """Whether a line does nothing but turn the oven up or down with the food in it, which is no wait."""
    set_by = [read for read, _ in heat.sets]
    return not labour.cues and bool(labour.targets) and all(target in set_by for target in labour.targets)


def _is_set(before: Read | None, tools: Sequence[Tool]) -> bool:
    """Whether a clause names a station that a target right behind it is for: in the oven a joint is brought to 60 °C,
    but food in a bath gets as warm as the bath."""
    station = next((tool for tool in tools if before is not None and tool.clause is before.clause), None)
    if station is None or not _is_station(station):
        return False
    return not station.preposition or station.equipment.station == _BATH


def _station(act: Line, labour: Labour, lies: Station, bath: bool, hot_oven: bool) -> tuple[Station, Rule]:
    """The station that an action takes, and by which rule; `lies` is where the batch is, `bath` says that
    the component has a water bath on, `hot_oven` that the oven has been heated."""
    tools, said = act.tools, _said(act, labour)
    if said is not None:
        return said, "said"
    uses = ([labour.time_verb] if labour.time_verb else labour.verbs) if "station" in labour.does else ()
    verb = next((use.verb for use in uses if use.verb.station), None) if uses else None
    station = verb.station if verb else ""
    if verb and not verb.heat and (labour.time_verb is None or off_heat(act.reads) == "room"):
        station = ""  # it is in no fridge, whatever the verb means elsewhere, nor where nothing waits
    if station == "ring" and "fries" in labour.does and lies in ("bath", ""):
        bath, lies = False, ""  # what comes out of the bath is seared in a pan
    if station == "ring" and not lies and bath:
        return "bath", "verb"
    if station == "ring" and (lies in ("oven", "bath") or _set_hot(labour)):
        return (lies, "stays") if lies else ("oven", "verb")
    if station == "ring" and hot_oven and not lies and any(tool.equipment.station == "oven" for tool in tools):
        return "oven", "verb"  # place on a baking tray and cook
    if station == "oven" and lies == "ring" and _heat_is_said(act) and not _has_oven(act):
        return lies, "stays"  # a pancake bakes in its pan
    if station:
        return station, "verb"
    if not lies or any(map(_takes_off, tools)):
        return "", "nowhere"
    return _left(act, labour, lies)


def _heat_is_said(act: Line) -> bool:
    """Whether its component tells how high the heat of the hob is."""
    return any("heat" in labour.set for labour in act.walker.flow.lines_of(act.walker.component))


def _has_oven(act: Line) -> bool:
    """Whether any line of the recipe names an oven, or degrees that only an oven has."""
    flow = act.walker.flow
    if flow.has_oven is None:
        flow.has_oven = any(
            _set_hot(labour) or any(tool.equipment.station == "oven" and _is_station(tool) for tool in labour.tools)
            for labour in flow.labours
        )
    return flow.has_oven


def _left(act: Line, labour: Labour, lies: Station) -> tuple[Station, Rule]:
    """Where food is that its line does not put anywhere, and that lay at a station."""
    verb = labour.time_verb.verb if labour.time_verb else None
    out = "outside" in labour.does
    waits = verb is not None and (verb.keeps or verb.stands) and not any(map(names_heat, act.read.events))
    if lies in _DRY and (out or waits):
        return "", "verb"
    if lies == "ring" and verb and waits:
        return ("", "verb") if verb.keeps else ("ring", "guess")  # *leave* may be on the heat, or off it
    return lies, "stays"


def _said(act: Line, labour: Labour) -> Station | None:
    """The station that the line's clauses name; None if they name none."""
    for tool in act.tools:
        if tool.equipment.station and _is_station(tool) and not _is_turned_off(act, tool):
            return tool.equipment.station
    if labour.off == "waiting":
        return ""
    if "heat" in labour.set:
        return "ring"
    return "mixer" if "speed" in labour.set else None


def _is_turned_off(act: Line, tool: Tool) -> bool:
    """*Turn off [the oven]*: nothing is heated there any more."""
    before = [use for use in act.labour.verbs if use.span.start < tool.clause.span.start]
    return bool(before) and before[-1].verb.off and not tool.preposition


def _takes_off(tool: Tool) -> bool:
    """Whether food that goes there leaves its station: another vessel, the bench, a rack."""
    cool = tool.equipment.kind == "surface" and not tool.equipment.station
    return cool or (tool.equipment.kind in HOLDS and not tool.definite)


def _moves(act: Line) -> Literal["", "first", "last"]:
    """Whether a verb moves the food to a place without heat: before a time, a cue or degrees of another verb, or after.

    The place is a clause, or stands behind the verb in plain words: *tip on to a plate*."""
    events = act.read.events
    uses = [at for at, event in enumerate(events) if isinstance(event, VerbUse)]
    moved: Literal["", "first", "last"] = ""
    for use, following in zip(uses, [*uses, len(events)][1:], strict=True):
        verb = events[use]
        if not isinstance(verb, VerbUse) or not verb.verb.moves:
            continue
        end = events[following].span.start if following < len(events) else act.read.span.end  # type: ignore[union-attr]
        if _is_off(act, events[use + 1 : following], range(verb.span.end, end)):
            moved = "last" if any(map(is_looked_for, events[:use])) else "first"
    return moved


def _is_off(act: Line, behind: Sequence[Event], words: range) -> bool:
    """Whether a verb's own clauses, or its plain words, name a place without heat."""
    kitchen = act.walker.flow.kitchen
    for event in behind:
        if isinstance(event, Tool) and _takes_off(event):
            return True
        if isinstance(event, Target) and event.kind == "state":
            found = kitchen.cupboard.find(event.word.lower().split())
            if found and _is_cool(found.item):
                return True
    parts = (
        part
        for part in act.read.parts
        if isinstance(part, Text) and part.span.end > words.start and part.span.start < words.stop
    )
    placed = (one for part in parts for one in tools_in(part, kitchen) if one.span.start in words)
    return any(one.tool.preposition and not one.tool.contains and _is_away(one) for one in placed)


def _is_away(placed: Placed) -> bool:
    vessel = placed.tool.equipment.kind == "vessel" and placed.indefinite
    return vessel or _is_cool(placed.tool.equipment)


def _is_cool(equipment: Equipment) -> bool:
    """Whether a piece is for food that is on no heat: a plate, a board, a bowl."""
    return equipment.kind in HOLDS and not equipment.station


def _set_hot(labour: Labour) -> bool:
    """Whether an oven is meant by a setting in degrees."""
    if "fries" in labour.does:
        return False
    return any(s.kind == "temperature" and s.celsius and s.celsius.lo >= _HOTTEST_FOOD for s in labour.settings)


def _only_heats(act: Line) -> bool:
    """An action with no food in it, whose object is the station itself."""
    into_batch = act.takings or any(act.walker.flow.uses[use].in_batch for use in act.uses)
    if into_batch or not any(map(_is_station, act.tools)):
        return False
    named = [event for event in act.read.events if isinstance(event, Tool | Reference)]
    if _names_station(act, named[0]):
        return True
    use = act.labour.time_verb or next(reversed(act.labour.verbs), None)  # *set [a rack] in and heat [the oven]*
    behind = [event for event in named if use and use.verb.sets and event.clause.span.start > use.span.start]
    return bool(behind) and _names_station(act, behind[0]) and all(_is_empty(act, event) for event in named)


def _heated_vessel(act: Line) -> Tool | None:
    """The empty pan that is heated while the food waits elsewhere: `heat [a wok] [until it smokes]`."""
    if "heat" not in act.labour.does or act.uses or act.takings:
        return None
    heats = next((use for use in act.labour.verbs if use.verb.heat), None)
    if heats is None:
        return None
    following = next((read for read in act.reads if read.clause.span.start > heats.span.start), None)
    named = _tool_of(act, following) if isinstance(following, Tool | Reference) else None
    return None if named is None or named.preposition else named


def _names_station(act: Line, named: Tool | Reference) -> bool:
    tool = _tool_of(act, named)
    if tool is None or not _is_station(tool) or _is_turned_off(act, tool):
        return False
    return not (isinstance(named, Tool) and named.preposition)


def _is_empty(act: Line, named: Tool | Reference) -> bool:
    """Whether no food lies there: a rack, a tin that is new here."""
    tool = _tool_of(act, named)
    return tool is not None and (tool.equipment.kind != "vessel" or not tool.definite)


def _tool_of(act: Line, named: Tool | Reference) -> Tool | None:
    return next((tool for tool in act.tools if tool.clause is named.clause), None)


def _is_station(tool: Tool) -> bool:
    return tool.equipment.kind == "station"


def _stays(labour: Labour, lies: str, station: str) -> bool:
    """Whether the batch lies on the heat when the action ends."""
    if labour.off:
        return False
    if labour.time_verb and labour.time_verb.verb.keeps and "heat" not in labour.set:
        return False
    if station in _STAYS:
        return True
    return bool(lies and station == lies)
