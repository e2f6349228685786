"""One pan of a name is one pan: what is boiled in it waits until what was boiled before, and cools, is out of it.

What is wanted hot together needs a pan of its own each, whatever the text calls them.
"""

from __future__ import annotations

from tamis.timeline.oven import follows
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.recipe import Action, Recipe
    from tamis.reading.clauses import Tool

Name = tuple[str, tuple[str, ...], str]


def waits_for_pan(recipe: Recipe, before: Sequence[tuple[int, ...]]) -> list[tuple[int, int]]:
    """Pairs of lines of which the first must be begun when the pan of the second is put on. `before` are the lines that
    each line follows anyway."""
    pairs: list[tuple[int, int]] = []
    emptied: dict[Name, Action] = {}
    for action in recipe.actions:
        for tool in action.tools:
            name = _name(tool)
            if name is None or recipe.places.lines[action.number].batch < 0:
                continue
            last = emptied.pop(name, None)
            if last and last.component != action.component and not follows(last.number, action.number, before):
                pairs.append((last.number, action.number))
            empties = _empties(recipe, action)
            if empties is not None:
                emptied[name] = empties
    return pairs


def _name(tool: Tool) -> Name | None:
    """What a pan on the hob is called where it is named as one more."""
    pan = tool.equipment.kind == "vessel" and tool.equipment.station == "ring"
    return (tool.name, tool.adjectives, tool.size) if pan and tool.preposition and not tool.definite else None


def _empties(recipe: Recipe, action: Action) -> Action | None:
    """The line that takes out what a line puts into a pan, if it is left to cool."""
    lines = recipe.places.lines
    here = lines[action.number]
    for other in recipe.actions[action.number + 1 :]:
        if lines[other.number].batch == here.batch and lines[other.number].station != here.station:
            verbs = [use.verb for use in other.verbs]
            cools, leaves = any([verb.cools for verb in verbs]), any([verb.drains or verb.moves for verb in verbs])
            return other if cools and leaves else None
    return None
