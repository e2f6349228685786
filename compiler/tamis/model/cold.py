"""Work that is done on the heat or without it: onions soften in a pan, gelatine in cold water.

The verb does not tell which, so the line is asked; where it says that all is cold, the verb gives no heat there.
"""

from __future__ import annotations

from tamis.model.off_heat import off_heat
from tamis.model.words import model_words
from tamis.reading.clauses import Ingredient, Target, Tool
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.line import Line
    from tamis.reading.clauses import Read


def take_cold(act: Line) -> None:
    """Take the heat from the verbs of a line that are done cold in it."""
    labour = act.labour
    for at, use in enumerate(labour.verbs) if "cold" in labour.does else ():
        if use.verb.cold and _is_cold(act, labour.clauses_of(use)):
            labour.verbs[at] = use._replace(verb=use.verb._replace(heat=False, station=""))
            if labour.time_verb is use:
                labour.time_verb = labour.verbs[at]


def take_rinsed(act: Line) -> None:
    """Take the wait from the verbs of a line that cool under or in cold water: `cool [in iced water]` is a rinse."""
    labour = act.labour
    if "rinsed" not in labour.does or labour.time is not None or labour.cues or labour.targets:
        return
    for at, use in enumerate(labour.verbs):
        if use.verb.rinsed and any(_rinses(act, read) for read in labour.clauses_of(use)) and not _is_liquid(act):
            labour.verbs[at] = use._replace(verb=use.verb._replace(waits=False, takes=use.verb.rinsed))
            labour.time_verb = None


def take_sieved(act: Line) -> None:
    """Give the verbs of a line that press food through a sieve the time that its weight takes there."""
    if "sieved_per_kg" not in act.labour.does:
        return
    through = model_words(act.walker.flow.kitchen.language).through
    for at, use in enumerate(act.labour.verbs):
        if use.verb.sieved_per_kg and any(
            isinstance(read, Tool) and read.preposition in through and read.equipment.kind == "tool"
            for read in act.labour.clauses_of(use)
        ):
            per_kg = use.verb.per_kg + use.verb.sieved_per_kg
            act.labour.verbs[at] = use._replace(verb=use.verb._replace(per_kg=per_kg, least_per_kg=0))


def _rinses(act: Line, read: Read) -> bool:
    """Whether a clause is of water or a tap that food is held under, or of cold water that it goes into."""
    kitchen = act.walker.flow.kitchen
    words = model_words(kitchen.language)
    if not isinstance(read, Ingredient | Tool) or read.preposition not in words.under:
        return False
    if isinstance(read, Ingredient):
        return read.goods is not None and read.goods.role == "water" and not words.cold.isdisjoint(read.states)
    if not read.contains:
        return read.equipment.id in words.taps
    food = kitchen.larder.named(read.contains)
    is_cold = not words.cold.isdisjoint(read.contains.lower().split())
    return food is not None and food.goods.role == "water" and is_cold


def _is_liquid(act: Line) -> bool:
    """Whether a liquid is in hand: a sauce in iced water takes its time, where peas are cold at once."""
    walker = act.walker
    goods = (walker.flow.kitchen.larder.get(food.goods) for food in (walker.present.foods if walker.present else ()))
    return any(one is not None and one.liquid for one in goods)


def _is_cold(act: Line, reads: Sequence[Read]) -> bool:
    if off_heat(reads):
        return True
    if any(isinstance(read, Target) and read.kind in ("temperature", "state") for read in reads):
        return False  # *bring [1 l cold water] [to the boil]*
    return _in_cold_liquid(act, reads) or _in_a_bowl(act.tools, reads)


def _in_cold_liquid(act: Line, reads: Sequence[Read]) -> bool:
    cold = model_words(act.walker.flow.kitchen.language).cold
    foods = (read for read in reads if isinstance(read, Ingredient))
    return any(food.goods and food.goods.liquid and not cold.isdisjoint(food.states) for food in foods)


def _in_a_bowl(tools: Sequence[Tool], reads: Sequence[Read]) -> bool:
    """Whether the only vessels that are named go on no heat."""
    clauses = [read.clause for read in reads]
    vessels = [tool for tool in tools if tool.equipment.kind == "vessel" and tool.clause in clauses]
    return bool(vessels) and not any(tool.equipment.station for tool in vessels)
