"""Where the food of a line lies and how hot it is there, how long and until what.

A vessel on the heat and the degrees of an oven are told again in the lines behind, as long as the food stays there and
no line says anything else. Where a batch lies that no word tells of is not guessed.
"""

from __future__ import annotations

from tamis.kitchen.equipment import HOLDS
from tamis.quantity.display import number, temperature_c, wait
from tamis.reading.clauses import Cue, Pause, Target, Tending, Time, Tool
from tamis.reading.prose import prose_words
from tamis.timeline.words import row_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.places import Here
    from tamis.model.recipe import Action, Recipe
    from tamis.source import Source, Span

_KNOBS = ("oven", "grill", "bath")
"""Stations that keep the degrees that they were set to."""
_ON_RING, _IN_OVEN = "then off the heat", "then out of the oven"
ANOTHER, EACH_BATCH = "another {wait}", "each of {number} batches"


class Places:
    """What the lines so far have told: the vessel and the heat of each batch on a ring, the degrees of each oven.

    `used_hot` are the lines whose vessel goes on hot, without their food."""

    __slots__ = ("_degrees", "_heat", "_hot", "_on_ring", "_vessel", "language", "lines", "source", "used_hot")

    def __init__(self, recipe: Recipe, source: Source, used_hot: set[int]) -> None:
        self.language = recipe.language
        self.lines = recipe.places.lines
        self.source = source
        self.used_hot = used_hot
        self._degrees: dict[str, str] = {}
        self._vessel: dict[int, str] = {}
        self._heat: dict[int, str] = {}
        self._on_ring: set[int] = set()
        self._hot: dict[int, tuple[str, str]] = {}

    def of(self, action: Action, batch: int, after: int = -1, goes_on: Action | None = None) -> tuple[str, ...]:
        """Of a line: its vessel and station, the heat, and whether the food comes off. `after` is the line that heated
        an empty vessel for it, `goes_on` the next line of the batch."""
        covers = prose_words(self.language).each_with  # cover *with* a plate: nothing lies in it
        named = [tool for tool in action.tools if tool.preposition not in covers]
        tools = [tool for tool in named if tool.equipment.kind in ("vessel", "surface", "station")]
        here = self.lines[action.number]
        station = here.station if here.rank != "guess" else ""
        station = station or ("ring" if after in self._hot else "")
        degrees, heats = self._said_heats(action, here)
        own = {tool.equipment.station for tool in tools if tool.equipment.kind == "station"}
        if station in _KNOBS:
            if degrees:
                self._degrees[station] = degrees[-1]
            stands = action.heats or action.work.wait or own
            said = [*self._tools(action, tools), *([] if own else [self._station(station)]), *heats]
            said += degrees or filter(None, [self._degrees.get(station, "")])
            said = said if stands else self._tools(action, tools)
            return (*self._once(said), *self._ends(action, goes_on, _IN_OVEN))
        if station == "ring" and not self._is_off_heat(action, heats, tools):
            return (*self._ring(action, batch, after, tools, heats + degrees), *self._ends(action, goes_on, _ON_RING))
        if _lifts(action):
            return self._once(self._tools(action, tools))
        if batch in self._on_ring:
            self._hot[action.number] = self._vessel.get(batch, ""), self._heat.get(batch, "")
        self._leave(batch, tools)
        if station and station != "ring" and station not in own:
            tools_said = [*self._tools(action, tools), self._station(station)]
        else:
            tools_said = self._tools(action, tools)
        return self._once([*tools_said, *heats, *degrees])

    def _ring(
        self, action: Action, batch: int, after: int, tools: Sequence[Tool], heats: Sequence[str]
    ) -> tuple[str, ...]:
        """The vessel on the ring, and how high that is turned: named here, or when it got there."""
        vessels = [tool.name for tool in tools if tool.equipment.kind == "vessel"]
        there = batch in self._on_ring
        vessel, heat = self._vessel.get(batch, ""), self._heat.get(batch, "") if there else ""
        if after in self._hot:
            vessel, heat = self._hot[after]
        vessel, heat = [*vessels, vessel][0], [*heats, heat][0]
        self._hot[action.number] = vessel, heat
        if batch >= 0:
            self._vessel[batch], self._heat[batch] = vessel, heat
            self._on_ring.add(batch)
        return tuple(filter(None, (vessel, heat))) or (self._station("ring"),)

    def _leave(self, batch: int, tools: Sequence[Tool]) -> None:
        """The batch is on no ring; it may have gone into another vessel."""
        self._on_ring.discard(batch)
        self._heat.pop(batch, None)
        vessels = [tool for tool in tools if tool.equipment.kind in HOLDS]
        if vessels and batch >= 0:
            self._vessel[batch] = vessels[-1].name

    def _is_off_heat(self, action: Action, heats: Sequence[str], tools: Sequence[Tool]) -> bool:
        """Whether the food goes on to a plate or a board, or the line only puts it by or serves it."""
        if heats:
            return False
        over = not action.work.wait and (action.product is not None or any(use.verb.serves for use in action.verbs))
        return over or any(tool.equipment.kind != "station" and not tool.equipment.station for tool in tools)

    def _said_heats(self, action: Action, here: Here) -> tuple[list[str], list[str]]:
        """The degrees and the levels of heat that a line says."""
        degrees = [
            _plain(self.source.slice(knob.degrees_span)) for knob in knobs(action, here) if knob.degrees_span.end
        ]
        levels: list[str] = []
        for setting in action.settings:
            words = self.source.slice(setting.degrees_span) if setting.degrees_span.end else ""
            said = _plain(words or setting.text or setting.clause.text)
            (levels if setting.celsius is None else degrees).append(said)
        if here.preheat:
            degrees.append(temperature_c(here.preheat))
        return degrees, levels

    def _tools(self, action: Action, tools: Sequence[Tool]) -> list[str]:
        alone = _alone(action)
        return [_plain(tool.clause.text) if tool.clause.span in alone else tool.name for tool in tools]

    def _station(self, station: str) -> str:
        return row_words(self.language).stations[station]

    def _once(self, said: Sequence[str]) -> tuple[str, ...]:
        return tuple(dict.fromkeys(said))

    def _ends(self, action: Action, goes_on: Action | None, says: str) -> tuple[str, ...]:
        """What is done in the end, where the next line of the batch tells that it is."""
        if goes_on is None or self._stays(goes_on):
            return ()
        if says == _ON_RING and (_lifts(goes_on) or goes_on.number in self.used_hot):
            return ()  # the vessel stays where it is
        return (says,) if self._stays(action) else ()

    def _stays(self, action: Action) -> bool:
        here = self.lines[action.number]
        return here.stays and here.rank != "guess"


def _lifts(action: Action) -> bool:
    """Whether food is lifted out, and the rest stays where it is."""
    return any(use.verb.lifts for use in action.verbs)


def knobs(action: Action, here: Here) -> list[Target]:
    """Degrees that a station is brought to, and not the food."""
    reads = (action.reads[knob.read] for knob in here.sets)
    return [read for read in reads if isinstance(read, Target)]


def _alone(action: Action) -> set[Span]:
    """The clauses that say one thing only."""
    spans = [read.clause.span for read in action.reads]
    return {span for span in spans if spans.count(span) == 1}


def time_of(action: Action, here: Here) -> tuple[str, ...]:
    """How long, as the text says, and what is looked for."""
    said: dict[str, None] = {}
    of_oven = knobs(action, here)
    more = next((ANOTHER for read in action.reads if isinstance(read, Time) and read.more), "{wait}")
    if action.work.wait and action.work.given == "text":
        said[more.format(wait=wait(action.work.wait))] = None
    for read in action.reads:
        if isinstance(read, Time) and not said:
            said[more.format(wait=wait(read.duration))] = None
        elif isinstance(read, Cue | Tending) or (
            isinstance(read, Target) and read.kind != "size" and read not in of_oven  # a size is no end of work
        ):
            said[_plain(read.text or read.clause.text)] = None
        elif isinstance(read, Pause) and read.duration:
            said[_plain(read.clause.text)] = None
    if said and action.batches > 1 and action.work.wait:
        said[EACH_BATCH.format(number=number(action.batches))] = None
    return tuple(said)


def _plain(text: str) -> str:
    said = " ".join(text.split())
    return said[:1].lower() + said[1:]
