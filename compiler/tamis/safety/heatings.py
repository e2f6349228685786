"""What one clause does to the food in the batch: the heat that it names, the time at it, the cue.

A recipe clears a hazard by a core temperature, a time at a boil or a simmer, a bath or an oven held, or a cue. Which
of these a clause says depends on its line (the verb that waits, the station) and on where the batch is already (at
the boil, in an oven of so many degrees), so both are put together here; what it is worth for each hazard is decided
elsewhere.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clauses import Cue, Pause, Setting, Target, Time
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.degrees import core_temperature, cores
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Read

HOT: tuple[Station, ...] = ("ring", "oven", "grill", "bath")


class Heating(NamedTuple):
    """`core`: exact °C that the food reaches. `held`: °C and seconds that it is kept at. `wet`, `boiled`, `baked`,
    `fried`: seconds. `boils`: it comes to the boil. `cue`: what to look for, while on the heat. `hot`: on the heat.
    `places`: the core asked for in each of several places, with the words for it."""

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
    places: tuple[tuple[str, Fraction], ...] = ()

    @property
    def acts(self) -> bool:
        """Whether it does anything to food: a rest on the worktop does not."""
        return self[1:] != _IDLE[1:]


_IDLE = Heating()


class Place:
    """Where the food is heated: the lines in the order of the text, and which batches have come to the boil."""

    __slots__ = ("boiling", "language", "lines")

    def __init__(self, recipe: Recipe) -> None:
        self.language = recipe.language
        self.lines = recipe.places.lines
        self.boiling: dict[int, bool] = {}

    def hot(self, action: Action, read: Read) -> bool:
        """Whether the food is on the heat, in an oven or a bath while a clause acts on it, by more than a guess."""
        here = self.lines[action.number]
        if not here.stays and here.rank != "said" and _is_off(action, read):
            return False
        if here.station in HOT and here.rank != "guess":
            return True
        off = any(setting.kind == "off" for setting in action.settings)
        return not off and any(use.verb.heat for use in action.verbs)


def heating(action: Action, read: Read, batch: int, place: Place) -> Heating | None:
    """What a clause does to the batch that it acts on; None if it heats or soaks nothing."""
    if place.lines[action.number].heats:
        return None
    if isinstance(read, Pause) and read.kind == "keep-warm":
        place.boiling[batch] = False
    if isinstance(read, Time) or (isinstance(read, Pause) and read.waits):
        return _time(action, Heating(read.clause.text, hot=place.hot(action, read)), _lasts(action), batch, place)
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
    if read.kind != "temperature" or _cools(action):
        return None
    if any(action.reads[knob.read] is read for knob in place.lines[action.number].sets):
        return None
    core = core_temperature(read.clause.text, place.language)
    return Heating(read.clause.text, core=core, hot=True) if core is not None else None


def _cue(action: Action, read: Cue, batch: int, place: Place) -> Heating | None:
    found = () if _cools(action) else cores(read.text, place.language)
    core, places = min((core for _, core in found), default=None), found if len(found) > 1 else ()
    lasts = _lasts(action) if read.duration else 0
    if not place.hot(action, read):
        if core is None and not lasts:
            return None
        done = Heating(read.clause.text, core, places=places)
        return _time(action, done, lasts, batch, place) if lasts else done
    said = read.text.lower()
    boils = any(word in said for word in safety_words(place.language).cues.boils)
    if boils:
        place.boiling[batch] = True
    done = Heating(read.clause.text, core, boils=boils, cue=read.text, hot=True, places=places)
    return _time(action, done, lasts, batch, place)


def _time(action: Action, done: Heating, lasts: int, batch: int, place: Place) -> Heating:
    """What is done, with what so many seconds of it do."""
    verbs, verb, station = rules().verbs, action.work.verb, action.work.station
    if verb in verbs["soaks"]:
        done = done._replace(soaked=lasts)
    boils = done.hot and verb in verbs["boils"]
    stays = verb in verbs["simmers"] or (verb in verbs["stays"] and place.boiling.get(batch, False))
    if boils or (done.hot and stays):
        place.boiling[batch] = True
        return done._replace(wet=lasts, boiled=lasts if boils else 0)
    celsius = place.lines[action.number].celsius
    at = None if celsius is None else celsius.lo
    if station == "oven":
        return done._replace(baked=max(lasts, 1), bath=(at, lasts) if at is not None and at < 110 else None)
    if station == "bath" and at is not None:
        return done._replace(bath=(at, lasts))
    if at is not None and at < 110:
        return done._replace(held=(at, lasts))
    return done._replace(fried=max(lasts, 1)) if done.hot else done


def _is_off(action: Action, read: Read) -> bool:
    """Whether the food has been taken off the heat by the clauses and verbs before this one."""
    at = read.clause.span.start
    before = (other for other in action.reads if other.clause.span.start < at)
    if any(_takes_off(other) for other in before):
        return True
    return any(use.verb.off and use.span.start < at for use in action.verbs)


def _takes_off(read: Read) -> bool:
    if isinstance(read, Pause):
        return read.kind == "keep-warm"
    return isinstance(read, Setting) and read.kind == "off"


def _cools(action: Action) -> bool:
    """Whether food is brought down to a temperature."""
    return any(use.verb.cools for use in action.verbs)


def _lasts(action: Action) -> int:
    """Seconds that a line waits at the least."""
    return int(action.work.wait.lo) if action.work.wait else 0
