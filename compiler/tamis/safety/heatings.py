"""What one clause does to the food in the batch: the heat that it names, the time at it, the cue.

A recipe clears a hazard by a core temperature, a time at a boil or a simmer, a bath or an oven held, or a cue. Which
of these a clause says depends on its line (the verb that waits, the station) and on where the batch is already (at
the boil, in an oven of so many degrees), so both are put together here; what it is worth for each hazard is decided
elsewhere.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.heat import settings_of
from tamis.reading.clauses import Cue, Pause, Setting, Target, Time, Tool
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.degrees import core_temperature
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Read

HOT: tuple[Station, ...] = ("ring", "oven", "grill", "bath")


class Heating(NamedTuple):
    """`core`: exact °C that the food reaches. `held`: °C and seconds that it is kept at. `wet`, `boiled`, `baked`,
    `fried`: seconds. `boils`: it comes to the boil. `cue`: what to look for, while on the heat. `hot`: on the heat."""

    words: str = ""
    core: Fraction | None = None
    held: tuple[Fraction, int] | None = None
    bath: tuple[Fraction, int] | None = None
    wet: int = 0
    boiled: int = 0
    baked: int = 0
    fried: int = 0
    soaked: int = 0
    boils: bool = False
    cue: str = ""
    hot: bool = False

    @property
    def acts(self) -> bool:
        """Whether it does anything to food: a rest on the worktop does not."""
        return self[1:] != _IDLE[1:]


_IDLE = Heating()


class Line(NamedTuple):
    """What a line says of the food's heat, whichever clause asks: `oven` and `bath`: the °C of each by then. `lasts`:
    seconds. `hot`: the food is on the heat, in an oven or a bath. `cools`: it is brought down to a temperature.
    `spares`: what is heated is a station or an empty tool, and the food waits elsewhere."""

    oven: Fraction | None
    bath: Fraction | None
    lasts: int
    hot: bool
    cools: bool
    spares: bool


class Place:
    """Where the food is heated: the lines in the order of the text, and which batches have come to the boil."""

    __slots__ = ("boiling", "language", "lines")

    def __init__(self, actions: Sequence[Action], verbs: Sequence[frozenset[str]], language: str) -> None:
        self.language = language
        cools = rules().verbs["cools"]
        self.lines: list[Line] = []
        self.boiling: dict[int, bool] = {}
        oven = bath = None
        for action, said in zip(actions, verbs, strict=True):
            work = action.work
            station = action.heats or work.station
            degrees = _station_degrees(action) if station in ("oven", "bath") else None
            if degrees is not None and station == "oven":
                oven = degrees
            elif degrees is not None:
                bath = degrees
            lasts = int(work.wait.lo) if work.wait else 0
            spares = bool(action.heats) or _heats_tool(action)
            self.lines.append(Line(oven, bath, lasts, _hot(action), not cools.isdisjoint(said), spares))


def heating(action: Action, read: Read, batch: int, place: Place) -> Heating | None:
    """What a clause does to the batch that it acts on; None if it heats or soaks nothing."""
    line = place.lines[action.number]
    if line.spares:
        return None
    if isinstance(read, Pause) and read.kind == "keep-warm":
        place.boiling[batch] = False
    if isinstance(read, Time) or (isinstance(read, Pause) and read.waits):
        return _time(action, Heating(read.clause.text, hot=line.hot), line.lasts, batch, place, read)
    if isinstance(read, Cue):
        return _cue(action, read, batch, place)
    if isinstance(read, Target):
        return _target(action, read, batch, place)
    if isinstance(read, Setting) and read.kind == "off":
        place.boiling[batch] = False
    return None


def _target(action: Action, read: Target, batch: int, place: Place) -> Heating | None:
    if read.kind == "state":
        cues, said = safety_words(place.language).cues, read.text.lower()
        if not any(word in said for word in cues.target_simmers):
            return None
        place.boiling[batch] = True
        return Heating(read.clause.text, boils=any(word in said for word in cues.target_boils), hot=True)
    if read.kind != "temperature" or place.lines[action.number].cools:
        return None
    if any(setting is read for setting, _ in settings_of(action)):
        return None
    core = core_temperature(read.clause.text, place.language)
    return Heating(read.clause.text, core=core, hot=True) if core is not None else None


def _cue(action: Action, read: Cue, batch: int, place: Place) -> Heating | None:
    line = place.lines[action.number]
    core = None if line.cools else core_temperature(read.text, place.language)
    lasts = line.lasts if read.duration else 0
    if not line.hot:
        if core is None and not lasts:
            return None
        done = Heating(read.clause.text, core)
        return _time(action, done, lasts, batch, place, None) if lasts else done
    said = read.text.lower()
    boils = any(word in said for word in safety_words(place.language).cues.boils)
    if boils:
        place.boiling[batch] = True
    done = Heating(read.clause.text, core, boils=boils, cue=read.text, hot=True)
    return _time(action, done, lasts, batch, place, None)


def _time(action: Action, done: Heating, lasts: int, batch: int, place: Place, read: Time | Pause | None) -> Heating:
    """What is done, with what so many seconds of it do."""
    verbs, verb, station = rules().verbs, action.work.verb, action.work.station
    if verb in verbs["soaks"]:
        done = done._replace(soaked=lasts)
    boils = done.hot and verb in verbs["boils"]
    stays = verb in verbs["simmers"] or (verb in verbs["stays"] and place.boiling.get(batch, False))
    if boils or (done.hot and stays):
        place.boiling[batch] = True
        return done._replace(wet=lasts, boiled=lasts if boils else 0)
    line = place.lines[action.number]
    if station == "oven":
        hold = (line.oven, lasts) if line.oven is not None and line.oven < 110 else None
        return done._replace(baked=max(lasts, 1), bath=hold)
    if station == "bath" and line.bath is not None:
        return done._replace(bath=(line.bath, lasts))
    if read and read.setting and read.setting.celsius:
        return done._replace(held=(read.setting.celsius.lo, lasts))
    at = next((s.celsius.lo for s in action.settings if s.kind == "temperature" and s.celsius), None)
    if at is not None and at < 110:
        return done._replace(held=(at, lasts))
    return done._replace(fried=max(lasts, 1)) if done.hot else done


def _hot(action: Action) -> bool:
    """Whether the food is on the heat, in an oven or a bath during this action."""
    if action.work.station in HOT or action.on_heat:
        return True
    if action.settings and any(setting.kind == "off" for setting in action.settings):
        return False
    return any(use.verb.heat for use in action.verbs)


def _heats_tool(action: Action) -> bool:
    """Whether the line heats an empty pan, and the food waits elsewhere: `heat [a wok] [until it smokes]`."""
    if action.uses or action.takings:
        return False
    heats = next((use for use in action.verbs if use.verb.heat), None)
    if heats is None:
        return False
    following = next((read for read in action.reads if read.clause.span.start > heats.span.start), None)
    return isinstance(following, Tool) and not following.preposition


def _station_degrees(action: Action) -> Fraction | None:
    """Exact °C that the action's oven or bath is set or brought to."""
    return next((celsius.lo for _, celsius in settings_of(action)), None)
