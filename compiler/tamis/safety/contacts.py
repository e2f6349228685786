"""Boards, knives and plates that held raw meat, poultry or fish, and what they touch next without a wash.

A board called by its noun is the kitchen's one board unless the text says *clean* or *another*; a bowl or a plate is
the same one only if it is called *the*.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.safety.data import rules
from tamis.safety.records import Item
from tamis.syntax.document import Text

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Action
    from tamis.reading.clauses import Tool
    from tamis.safety.state import State


class Counter:
    """The worktop: which tools are dirty, since which action, from what."""

    __slots__ = ("_dirty", "_washed")

    def __init__(self, actions: Sequence[Action], verbs: Sequence[frozenset[str]]) -> None:
        self._dirty: dict[str, tuple[int, Item]] = {}
        self._washed = _washings(actions, verbs)

    def work(self, action: Action, place: int, state: State) -> None:
        """A batch, as it is at this place of the line, is worked on with the tools named so far: it soils them, or
        they it."""
        for tool in action.tools:
            if not _counts(tool) or tool.clause.span.start > place:
                continue
            name = tool.equipment.name
            raw = state.raw_flesh()
            if raw:
                if _same(tool) or _first_of(tool):
                    self._dirty[name] = (action.number, raw)
            elif _same(tool):
                self._soil(tool, action, state)

    def _soil(self, tool: Tool, action: Action, state: State) -> None:
        since, raw = self._dirty.get(tool.equipment.name, (-1, None))
        if raw is None or since >= action.number or not (state.foods or state.items):
            return
        if any(since < washed <= action.number for washed in self._washed.get(tool.equipment.name, ())):
            return
        path = (raw.food, tool.name)
        state.put(Item(raw.hazard, raw.food, raw.use, tool.clause.span, "contact", path))


def _counts(tool: Tool) -> bool:
    """Tools of which a kitchen has more than one and that food lies on or is cut with: not the oven, not a hot pan."""
    return tool.equipment.kind != "station" and tool.equipment.station not in ("ring", "oven", "grill", "bath")


def _first_of(tool: Tool) -> bool:
    return not tool.definite


def _same(tool: Tool) -> bool:
    """Whether the clause means the piece that was used before."""
    said = {*tool.adjectives, *tool.clause.text.lower().split()}
    if any(word in said for word in rules().words["fresh"]):
        return False
    return tool.definite or tool.equipment.name in rules().words["shared"]


def _washings(actions: Sequence[Action], verbs: Sequence[frozenset[str]]) -> dict[str, list[int]]:
    """The actions that wash a tool: by a verb of washing in the line that names it, in a clause or in plain words."""
    washings: dict[str, list[int]] = {}
    washes = rules().words["washes"]
    for action, said in zip(actions, verbs, strict=True):
        if said.isdisjoint(washes):
            continue
        text = " ".join(part.text for part in action.parts if isinstance(part, Text)).lower()
        named = {tool.equipment.name for tool in action.tools}
        named |= {name for name in (*rules().words["shared"], "plate", "bowl", "dish", "tray") if name in text}
        for name in named:
            washings.setdefault(name, []).append(action.number)
    return washings
