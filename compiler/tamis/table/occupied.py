"""Which vessels are full when another one is named: two bowls of one name are two while food lies in the first.

Read from the log, line by line in the order of the text. Food counts as lying in a vessel only as long as nothing may
have taken it out: what is moved, divided, drained or worked piece by piece lies there no longer.
"""

from __future__ import annotations

from operator import attrgetter

from tamis.kitchen.equipment import COLD, HOLDS
from tamis.model.effects import Discards, Gives, Splits, Stands, Takes
from tamis.reading.clauses import Tool, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.kitchen.verbs import Verb
    from tamis.model.effects import Entry
    from tamis.model.recipe import Recipe

Occupied = dict[int, tuple[Tool, ...]]


class _Fold:
    """The batches and the vessels that they lie in; what this line has taken out, which is full until the line ends."""

    __slots__ = ("found", "gone", "left", "lies", "waits")

    def __init__(self) -> None:
        self.found: Occupied = {}
        self.lies: dict[int, Tool] = {}
        self.gone: set[int] = set()  # taken by a line that stands before what makes it
        self.left: list[Tool] = []
        self.waits: Tool | None = None  # named before its food

    def begin(self) -> None:
        """The next line."""
        self.left, self.waits = [], None

    def free(self, batch: int) -> None:
        if batch in self.lies:
            self.left.append(self.lies.pop(batch))

    def tool(self, tool: Tool, batch: int) -> None:
        """A vessel is named: what is in hand lies there from now on, and that of others is full."""
        if tool.equipment.kind not in HOLDS or not tool.preposition or tool.contains:
            return
        if not tool.definite:
            others = [held for one, held in self.lies.items() if one != batch and one not in self.gone]
            self.found[tool.clause.span.start] = (*others, *self.left)
        self.free(batch)
        if tool.definite or tool.equipment.kind != "vessel":
            return
        if batch >= 0:
            self.lies[batch] = tool
        else:
            self.waits = tool

    def effect(self, entry: Entry) -> None:
        effect = entry.effect
        if isinstance(effect, Tool):
            self.tool(effect, entry.batch)
        elif isinstance(effect, Gives) and self.waits and effect.batch >= 0:
            self.lies[effect.batch], self.waits = self.waits, None
        elif isinstance(effect, Takes) and effect.whole:
            self.gone.add(effect.source)
            self.free(effect.source)
        elif isinstance(effect, Discards | Splits):
            self.free(effect.batch)
        elif isinstance(effect, VerbUse) and _takes_out(effect.verb):
            self.free(entry.batch)
        elif isinstance(effect, Stands) and not effect.heats:
            self.stand(effect)

    def stand(self, effect: Stands) -> None:
        """What goes to a station without its vessel being for it is in another by then; a bowl may go into the cold."""
        held = self.lies.get(effect.batch)
        if held and effect.station not in ("", *COLD) and effect.station != held.equipment.station:
            self.free(effect.batch)


_TOLD = frozenset((Tool, Gives, Takes, Discards, Splits, VerbUse, Stands))


def _takes_out(verb: Verb) -> bool:
    moved = verb.moves and not verb.adds
    return bool(moved or verb.drains or verb.divides or verb.serves or verb.lifts or verb.separates or verb.per_piece)


def occupied_of(recipe: Recipe) -> Mapping[int, tuple[Tool, ...]]:
    """For each vessel that is named as one more, by the place of its clause: those in which other food lies then."""
    fold = _Fold()
    line = -1
    told = [entry for entry in recipe.log if entry.effect.__class__ in _TOLD]  # most of a log is something else
    for entry in sorted(told, key=attrgetter("action")):
        if entry.action != line:
            line = entry.action
            fold.begin()
        fold.effect(entry)
    return fold.found
