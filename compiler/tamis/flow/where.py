"""Where the food of a line lies, how hot it is there, how long and until what: as the line says, and no more.

A station that only its verb means is named as well; where a batch lies that no word of the line tells of is not
guessed.
"""

from __future__ import annotations

from tamis.quantity.display import temperature_c, wait
from tamis.reading.clauses import Cue, Pause, Setting, Target, Tending, Time
from tamis.timeline.words import row_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.places import Here
    from tamis.model.recipe import Action
    from tamis.source import Source, Span

STAYS = "stays on the heat"


def where_of(action: Action, here: Here, language: str, source: Source) -> tuple[str, ...]:
    """Vessels and stations in the cook's words, degrees and levels of heat, and what the food stays on."""
    said: dict[str, None] = {}
    alone = _alone(action)
    for tool in action.tools:
        if tool.equipment.kind in ("vessel", "surface", "station"):
            said[_plain(tool.clause.text) if tool.clause.span in alone else tool.name] = None
    if here.station and not any(tool.equipment.station == here.station for tool in action.tools):
        said[row_words(language).stations[here.station]] = None
    for setting in action.settings:
        said[_heat(setting, source)] = None
    if here.preheat:
        said[f"heated to {temperature_c(here.preheat)} beforehand"] = None
    if here.stays and here.rank != "guess":
        said[STAYS] = None
    return tuple(said)


def _alone(action: Action) -> set[Span]:
    """The clauses that say one thing only."""
    spans = [read.clause.span for read in action.reads]
    return {span for span in spans if spans.count(span) == 1}


def _heat(setting: Setting, source: Source) -> str:
    words = source.slice(setting.degrees_span) if setting.degrees_span.end else ""
    return _plain(words or setting.text or setting.clause.text)


def time_of(action: Action) -> tuple[str, ...]:
    """How long, as the text says, and what is looked for."""
    said: dict[str, None] = {}
    if action.work.wait and action.work.given == "text":
        said[wait(action.work.wait)] = None
    for read in action.reads:
        if isinstance(read, Time) and not said:
            said[wait(read.duration)] = None
        elif isinstance(read, Cue | Target | Tending):
            said[_plain(read.text or read.clause.text)] = None
        elif isinstance(read, Pause):
            said[_plain(read.clause.text)] = None
    return tuple(said)


def _plain(text: str) -> str:
    return " ".join(text.split())
