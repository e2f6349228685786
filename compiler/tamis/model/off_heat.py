"""Where a line says that its food is on no heat: in the room, in the cold, kept warm over nothing that it names."""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clauses import Cue, Ingredient, Pause, Reference, Setting, Target, Time, Tool, VerbUse
from tamis.reading.tables import Phrases, match, tables
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from tamis.model.labour import Labour
    from tamis.reading.clauses import Read
    from tamis.reading.reading import Event

_WARM_ROOM = Fraction(40)
"""°C below which food is on no heat: the warmest place in which dough proves (common practice)."""
_FRIDGE = Fraction(10)
"""°C up to which a place is cold (common practice)."""


def leaves_heat(labour: Labour) -> Literal["", "first", "last"]:
    """Whether the food of a line is taken off the heat: before a cue or a target of another verb is looked for, or in
    the end, after that."""
    told = (*labour.cues, *labour.targets, *[read for read, _ in labour.degrees])
    drains = any([use.verb.drains for use in labour.verbs[:1]])
    if not ("off" in labour.does or drains or labour.pauses or off_heat(told)):
        return ""
    verbs = 0
    looked: int | None = None
    for event in labour.events:
        if isinstance(event, Ingredient):
            continue
        verbs += isinstance(event, VerbUse)
        if _takes_off(event, labour):
            return "first" if looked is None or looked == verbs else "last"
        if looked is None and is_looked_for(event):
            looked = verbs
    return ""


def is_looked_for(event: Event) -> bool:
    """A time, a cue, degrees; `[to a plate]` is a place."""
    return isinstance(event, Time | Cue) or (isinstance(event, Target) and event.celsius is not None)


def _takes_off(event: Event, labour: Labour) -> bool:
    if isinstance(event, VerbUse):
        clauses = labour.clauses_of(event)
        drained = event.verb.drains and event is labour.verbs[0] and not any(isinstance(c, Reference) for c in clauses)
        return (event.verb.off or drained) and not any(map(names_heat, clauses))
    return _kept_warm(event) or off_heat((event,)) != ""


def names_heat(event: Event) -> bool:
    """Whether a clause says that food is on the heat all the same: `rest [for 10 min] [in the oven]`."""
    if isinstance(event, Tool):
        return event.equipment.kind == "station" and event.preposition != ""
    setting = event.setting if isinstance(event, Time | Pause) else event
    if not isinstance(setting, Setting):
        return False
    return setting.kind == "heat" or (setting.celsius is not None and setting.celsius.lo >= _WARM_ROOM)


def off_heat(reads: Iterable[Read]) -> Literal["", "room", "cold"]:
    """Where food stands that is on no heat, if the degrees or words of its clauses say so."""
    said: list[str] = []
    language = ""
    for read in reads:
        language = read.clause.language
        setting = read.setting if isinstance(read, Time) else read
        if isinstance(setting, Cue):
            said.append(setting.text)
        elif isinstance(setting, Target):
            said.append(setting.word)
        elif isinstance(setting, Setting):
            if setting.celsius is not None and setting.celsius.hi < _WARM_ROOM:
                return "room" if setting.celsius.lo > _FRIDGE else "cold"
            said.append(setting.word)
    if not said or not _says(said, tables(language).rooms):
        return ""
    return "cold" if _says(said, tables(language).cold_rooms) else "room"


def _kept_warm(event: Event) -> bool:
    if not isinstance(event, Pause) or event.kind != "keep-warm":
        return False
    return event.setting is None or event.setting.kind != "heat"


def _says(texts: Sequence[str], phrases: Phrases) -> bool:
    for text in texts:
        words = tuple(text.lower().split())
        if not phrases.keys().isdisjoint(words) and any(match(phrases, words, at) for at in range(len(words))):
            return True
    return False
