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
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Read

_BAKING = 110
"""°C from which no food is as hot as the air or the fat round it; where no station is named, that is an oven."""
HOT: tuple[Station, ...] = ("ring", "oven", "grill", "bath")


class Heating(NamedTuple):
    """`core`: exact °C that the food reaches. `held`: °C and seconds that it is kept at. `wet`, `boiled`, `baked`,
    `fried`: seconds. `oven`: °C and seconds in it. `boils`: it comes to the boil. `cue`: what to look for, while on the
    heat. `hot`: on the heat. `places`: the core asked for in each of several places, with the words for it."""

    words: str = ""
    core: Fraction | None = None
    held: tuple[Fraction, int] | None = None
    bath: tuple[Fraction, int] | None = None
    wet: int = 0
    boiled: int = 0
    baked: int = 0
    fried: int = 0
    oven: tuple[Fraction, int] | None = None
    soaked: int = 0
    boils: bool = False
    cue: str = ""
    hot: bool = False
    places: tuple[tuple[str, Fraction], ...] = ()

    @property
    def acts(self) -> bool:
        """Whether it does anything to food: a rest on the worktop does not."""
        return self.core is not None or any(self[2:])


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
        if not any([use.verb.heat for use in action.verbs]):
            return False
        return not any([setting.kind == "off" for setting in action.settings])

    def boils(self, action: Action) -> bool:
        """Whether what a line brings to the boil stays on the heat, by all that it says."""
        off = any([type(read) in _OFF and _takes_off(read) for read in action.reads])
        return not off and self.lines[action.number].station in ("", "ring")


def heating(action: Action, read: Read, batch: int, place: Place) -> Heating | None:
    """What a clause does to the batch that it acts on; None if it heats or soaks nothing."""
    if place.lines[action.number].heats:
        return None
    if isinstance(read, Cue):
        return _cue(action, read, batch, place)
    if isinstance(read, Target):
        return _target(action, read, batch, place)
    if _takes_off(read):
        place.boiling[batch] = False
    if isinstance(read, Time) or (isinstance(read, Pause) and read.waits):
        return _time(action, batch, place, _lasts(action), words=read.clause.text, hot=place.hot(action, read))
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
        facts: dict[str, Any] = {"words": read.clause.text, "core": core, "places": places}
        return _time(action, batch, place, lasts, **facts) if lasts else Heating(**facts)
    said = read.text.lower()
    boils = any([word in said for word in safety_words(place.language).cues.boils])
    if boils:
        place.boiling[batch] = True
    facts = {"words": read.clause.text, "core": core, "boils": boils, "cue": read.text, "hot": True, "places": places}
    return _time(action, batch, place, lasts, **facts)


def _time(action: Action, batch: int, place: Place, lasts: int, hot: bool = False, **facts: Any) -> Heating:
    """What is done by a clause of which some facts are known, with what so many seconds of it do."""
    verbs, verb, station = rules().verbs, action.work.verb, action.work.station
    if verb in verbs["soaks"]:
        facts["soaked"] = lasts
    boils = hot and verb in verbs["boils"]
    if boils or (hot and (verb in verbs["simmers"] or (verb in verbs["stays"] and place.boiling.get(batch, False)))):
        place.boiling[batch] = True
        return Heating(**facts, hot=hot, wet=lasts, boiled=lasts if boils else 0)
    celsius = place.lines[action.number].celsius
    baking = celsius is not None and celsius.lo >= _BAKING
    kept = None if celsius is None or (station != "bath" and baking) else (celsius.lo, lasts)
    if station == "oven" or (baking and not station):  # return to the oven [for 15 min at 180 °C]
        oven = None if celsius is None else (celsius.lo, lasts)
        return Heating(**facts, hot=hot, baked=max(lasts, 1), bath=kept, oven=oven)
    if kept is not None and station == "bath":
        return Heating(**facts, hot=hot, bath=kept)
    if kept is not None:
        return Heating(**facts, hot=hot, held=kept)
    return Heating(**facts, hot=hot, fried=max(lasts, 1) if hot else 0)


def _is_off(action: Action, read: Read) -> bool:
    """Whether the food has been taken off the heat by the clauses and verbs before this one."""
    at = read.clause.span.start
    if any([use.verb.off and use.span.start < at for use in action.verbs]):
        return True
    return any([_takes_off(other) for other in action.reads if type(other) in _OFF and other.clause.span.start < at])


_OFF = frozenset((Pause, Setting))


def _takes_off(read: Read) -> bool:
    if isinstance(read, Pause):
        return read.kind == "keep-warm"
    return isinstance(read, Setting) and read.kind == "off"


def _cools(action: Action) -> bool:
    """Whether food is brought down to a temperature."""
    return any([use.verb.cools for use in action.verbs])


def _lasts(action: Action) -> int:
    """Seconds that a line waits at the least."""
    return int(action.work.wait.lo) if action.work.wait else 0
