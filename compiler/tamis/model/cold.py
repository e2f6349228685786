"""Work that is done on the heat or without it: onions soften in a pan, gelatine in cold water.

The verb does not tell which, so the line is asked; where it says that all is cold, the verb gives no heat there.
"""

from __future__ import annotations

from tamis.model.off_heat import off_heat
from tamis.model.words import model_words
from tamis.reading.clauses import Ingredient, Target, Tool, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.line import Line
    from tamis.reading.clauses import Read


def take_cold(act: Line) -> None:
    """Take the heat from the verbs of a line that are done cold in it."""
    labour = act.labour
    for at, use in enumerate(labour.verbs):
        if use.verb.cold and _is_cold(act, _behind(act, use)):
            labour.verbs[at] = use._replace(verb=use.verb._replace(heat=False, station=""))
            if labour.time_verb is use:
                labour.time_verb = labour.verbs[at]


def take_rinsed(act: Line) -> None:
    """Take the wait from the verbs of a line that cool under water: `cool [under cold water]` is a rinse."""
    labour = act.labour
    if labour.time is not None or labour.cues or labour.targets:
        return
    for at, use in enumerate(labour.verbs):
        if use.verb.rinsed and any(_rinses(act, read) for read in _behind(act, use)):
            labour.verbs[at] = use._replace(verb=use.verb._replace(waits=False, takes=use.verb.rinsed))
            labour.time_verb = None


def _rinses(act: Line, read: Read) -> bool:
    """Whether a clause is of water or a tap that food is held under."""
    words = model_words(act.walker.flow.kitchen.language)
    if isinstance(read, Ingredient):
        return read.preposition in words.under and read.goods is not None and read.goods.role == "water"
    return isinstance(read, Tool) and read.preposition in words.under and read.equipment.id in words.taps


def _is_cold(act: Line, reads: Sequence[Read]) -> bool:
    if off_heat(reads):
        return True
    if any(isinstance(read, Target) and read.kind in ("temperature", "state") for read in reads):
        return False  # *bring [1 l cold water] [to the boil]*
    return _in_cold_liquid(act, reads) or _in_a_bowl(act.tools, reads)


def _behind(act: Line, use: VerbUse) -> list[Read]:
    """The clauses of a verb: those up to the next one."""
    events = act.read.events
    reads: list[Read] = []
    for event in events[events.index(use) + 1 :]:
        if isinstance(event, VerbUse):
            break
        reads.append(event)
    return reads


def _in_cold_liquid(act: Line, reads: Sequence[Read]) -> bool:
    cold = model_words(act.walker.flow.kitchen.language).cold
    foods = (read for read in reads if isinstance(read, Ingredient))
    return any(food.goods and food.goods.liquid and not cold.isdisjoint(food.states) for food in foods)


def _in_a_bowl(tools: Sequence[Tool], reads: Sequence[Read]) -> bool:
    """Whether the only vessels that are named go on no heat."""
    clauses = [read.clause for read in reads]
    vessels = [tool for tool in tools if tool.equipment.kind == "vessel" and tool.clause in clauses]
    return bool(vessels) and not any(tool.equipment.station for tool in vessels)
