"""What one clause does to the food in the batch: the heat that it names, the time at it, the cue.

A recipe clears a hazard by a core temperature, a time at a boil or a simmer, a bath or an oven held, or a cue. Which
of these a clause says depends on its line (the verb that waits, the station) and on where the batch is already (at
the boil, in an oven of so many degrees), so both are put together here; what it is worth for each hazard is decided
elsewhere.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.reading.clauses import Cue, Setting, Target, Time, Tool
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.degrees import core_temperature, says

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Action
    from tamis.reading.clauses import Read

HOT = ("ring", "oven", "grill", "bath")


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


class Place:
    """Where the food is heated: the °C of oven and bath at each action, in the order of the text, and which batches
    have come to the boil."""

    __slots__ = ("bath", "boiling", "oven")

    def __init__(self, actions: Sequence[Action]) -> None:
        self.oven: list[Fraction | None] = []
        self.bath: list[Fraction | None] = []
        self.boiling: dict[int, bool] = {}
        oven = bath = None
        for action in actions:
            station, degrees = action.heats or action.work.station, _station_degrees(action)
            if degrees is not None and station == "oven":
                oven = degrees
            elif degrees is not None and station == "bath":
                bath = degrees
            self.oven.append(oven)
            self.bath.append(bath)


def heating(action: Action, read: Read, batch: int, place: Place) -> Heating | None:
    """What a clause does to the batch that it acts on; None if it heats or soaks nothing."""
    if action.heats or _heats_tool(action):
        return None
    if isinstance(read, Setting) and read.kind == "off":
        place.boiling[batch] = False
        return None
    if isinstance(read, Target):
        return _target(action, read, batch, place)
    if isinstance(read, Cue):
        return _cue(action, read, batch, place)
    if isinstance(read, Time):
        return _time(action, read.clause.text, int(action.work.wait.lo if action.work.wait else 0), batch, place, read)
    return None


def _target(action: Action, read: Target, batch: int, place: Place) -> Heating | None:
    if read.kind == "state":
        boils = any(word in read.text.lower() for word in ("boil", "simmer", "bubbl"))
        place.boiling[batch] = place.boiling.get(batch, False) or boils
        return Heating(read.clause.text, boils="boil" in read.text.lower(), hot=True, wet=0) if boils else None
    if read.kind != "temperature" or _cools(action):
        return None
    core = core_temperature(read.clause.text)
    return Heating(read.clause.text, core=core, hot=True) if core is not None else None


def _cue(action: Action, read: Cue, batch: int, place: Place) -> Heating | None:
    hot = _hot(action)
    core = core_temperature(read.text) if not _cools(action) else None
    boils = hot and any(word in read.text.lower() for word in ("boils", "boiling", "comes to the boil"))
    if boils:
        place.boiling[batch] = True
    wait = action.work.wait
    timed = int(wait.lo) if wait and read.duration else 0
    spent = _time(action, read.clause.text, timed, batch, place, None) if timed or hot else None
    cue = read.text if hot else ""
    if core is None and not cue and spent is None:
        return None
    return (spent or Heating())._replace(words=read.clause.text, core=core, cue=cue, boils=boils, hot=hot)


def _time(action: Action, text: str, lasts: int, batch: int, place: Place, read: Time | None) -> Heating:
    words, verb, station = rules().words, action.work.verb, action.work.station
    hot = _hot(action)
    boils = verb in words["boils"] and hot
    wet = boils or (verb in words["simmers"] and hot)
    wet = wet or (verb in words["stays"] and place.boiling.get(batch, False) and hot)
    done = Heating(text, hot=hot, soaked=lasts if verb == "soak" else 0)
    if wet:
        place.boiling[batch] = True
        return done._replace(wet=lasts, boiled=lasts if boils else 0)
    if station == "oven":
        degrees = place.oven[action.number]
        hold = (degrees, lasts) if degrees is not None and degrees < 110 else None
        return done._replace(baked=max(lasts, 1), bath=hold)
    bath = place.bath[action.number]
    if station == "bath" and bath is not None:
        return done._replace(bath=(bath, lasts))
    if read and read.setting and read.setting.celsius:
        return done._replace(held=(read.setting.celsius.lo, lasts))
    at = next((s.celsius.lo for s in action.settings if s.kind == "temperature" and s.celsius), None)
    if at is not None and at < 110:
        return done._replace(held=(at, lasts))
    return done._replace(fried=max(lasts, 1) if hot else 0)


def _hot(action: Action) -> bool:
    """Whether the food is on the heat, in an oven or a bath during this action."""
    if any(setting.kind == "off" for setting in action.settings):
        return False
    if action.work.station in HOT or action.on_heat:
        return True
    return any(use.verb.heat for use in action.verbs)


def _cools(action: Action) -> bool:
    """Whether the line brings the food down to a temperature."""
    return any(use.verb.base in ("cool", "chill", "freeze", "thaw") for use in action.verbs)


def _heats_tool(action: Action) -> bool:
    """Whether the line heats an empty pan, and the food waits elsewhere: `heat [a wok] [until it smokes]`."""
    heats = next((use for use in action.verbs if use.verb.heat), None)
    if heats is None or action.uses or action.takings:
        return False
    following = next((read for read in action.reads if read.clause.span.start > heats.span.start), None)
    return isinstance(following, Tool) and not following.preposition


def _station_degrees(action: Action) -> Fraction | None:
    """Exact °C that the action's oven or bath is set or brought to."""
    for read in action.reads:
        setting = read.setting if isinstance(read, Time) else read
        if isinstance(setting, Setting | Target) and setting.celsius is not None:
            return setting.celsius.lo
    return None


def pertains_to_stuffing(text: str) -> bool:
    """Whether a cue speaks of what is inside, and not of the thigh or the skin alone."""
    return says(text, "stuffed")
