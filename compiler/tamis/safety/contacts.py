"""Boards, knives and plates that held raw meat, poultry or fish, and what they touch next without a wash.

A board called by its noun is the kitchen's one board unless the text says *clean* or *another*; a bowl or a plate is
the same one only if it is called *the*.
"""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.records import Item
from tamis.safety.words import safety_words
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool
    from tamis.safety.state import State


class Counter:
    """The worktop: which tools are dirty, since which action, from what."""

    __slots__ = ("_fresh", "_washed", "dirty")

    def __init__(self, actions: Sequence[Action], verbs: Sequence[frozenset[str]], kitchen: Kitchen) -> None:
        self.dirty: dict[str, tuple[int, Item]] = {}
        self._fresh = safety_words(kitchen.language).fresh
        self._washed = _washings(actions, verbs, kitchen)

    def work(self, action: Action, place: int, state: State) -> None:
        """A batch, as it is at this place of the line, is worked on with the tools named so far: it soils them, or
        they it."""
        raw = state.raw_flesh()
        for tool in action.tools:
            if not _counts(tool) or tool.clause.span.start > place:
                continue
            name = tool.equipment.id
            if raw:
                if self._same(tool) or _first_of(tool):
                    self.dirty[name] = (action.number, raw)
            elif self._same(tool):
                self._soil(tool, action, state)

    def _soil(self, tool: Tool, action: Action, state: State) -> None:
        since, raw = self.dirty.get(tool.equipment.id, (-1, None))
        if raw is None or since >= action.number or not (state.foods or state.items):
            return
        if any(since < washed <= action.number for washed in self._washed.get(tool.equipment.id, ())):
            return
        path = (raw.food, tool.name)
        state.put(Item(raw.hazard, raw.food, raw.use, tool.clause.span, "contact", path))

    def _same(self, tool: Tool) -> bool:
        """Whether the clause means the piece that was used before."""
        if not self._fresh.isdisjoint((*tool.adjectives, *tool.clause.text.lower().split())):
            return False
        return tool.definite or tool.equipment.id in rules().equipment["shared"]


def _counts(tool: Tool) -> bool:
    """Tools of which a kitchen has more than one and that food lies on or is cut with: not the oven, not a hot pan."""
    return tool.equipment.kind != "station" and tool.equipment.station not in ("ring", "oven", "grill", "bath")


def _first_of(tool: Tool) -> bool:
    return not tool.definite


def _washings(actions: Sequence[Action], verbs: Sequence[frozenset[str]], kitchen: Kitchen) -> dict[str, list[int]]:
    """The actions that wash a tool: by a verb of washing in the line that names it, in a clause or in plain words."""
    washings: dict[str, list[int]] = {}
    washes = rules().verbs["washes"]
    if all([said.isdisjoint(washes) for said in verbs]):
        return washings
    pieces = [piece for id in rules().equipment["washed"] if (piece := kitchen.cupboard.of_id(id))]
    for action, said in zip(actions, verbs, strict=True):
        if said.isdisjoint(washes):
            continue
        text = " ".join(part.text for part in action.parts if isinstance(part, Text)).lower()
        named = {tool.equipment.id for tool in action.tools}
        named |= {piece.id for piece in pieces if piece.name in text}
        for id in named:
            washings.setdefault(id, []).append(action.number)
    return washings
