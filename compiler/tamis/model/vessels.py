"""How many vessels a line fills, lays on or labels: ten jars take longer than one, whatever they weigh together.

A bracket often says only *into the jars*: then they are as many as were brought out anywhere, or as the recipe makes;
where nobody counts them, as many as what is in hand fills.
"""

from __future__ import annotations

from math import ceil

from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.batch import Batch
    from tamis.model.line import Line
    from tamis.reading.clauses import Tool

_HOLDS = 300
"""Grams that one of several vessels holds of which nobody tells how many there are: a jar, a bowl of soup; common
practice."""


def vessels_of(act: Line, batch: Batch | None) -> int:
    """The vessels of a line that are more than one, else those in which the food in hand lies; 0 where it is one."""
    own = [tool for tool in act.tools if tool.equipment.kind in ("vessel", "surface")]
    before = (tool for tool in reversed(act.walker.tools) if tool.equipment.kind == "vessel")
    tools = own or [tool for tool in (next(before, None),) if tool is not None]
    return max([_said(act), *[_number(act, tool, batch) for tool in tools]])


def _number(act: Line, tool: Tool, batch: Batch | None) -> int:
    """How many a tool is: as it says, as many of that name as were brought out, or as the recipe makes."""
    flow = act.walker.flow
    one = nouns(flow.kitchen.language).singular
    word = tool.name.lower().rpartition(" ")[2]
    if tool.number > 1 or one(word) == word:
        return int(tool.number) if tool.number > 1 else 0
    makes, serves = flow.reading.header.makes, flow.reading.header.serves
    made = makes is not None and one(makes.noun.lower().rpartition(" ")[2]) == one(word)
    known = flow.vessels.get(one(word)) or (int(makes.amount.hi) if made and makes else 0)
    if known or batch is None or not batch.mass.known:
        return known
    fills = ceil(batch.mass.hi / _HOLDS)
    return min(fills, ceil(serves.hi)) if serves is not None else fills


def _said(act: Line) -> int:
    """As many as were brought out of what the plain words of a line name: *label the jars*."""
    flow = act.walker.flow
    if not flow.vessels:
        return 0
    one = nouns(flow.kitchen.language).singular
    said = [word for _, plain in act.labour.texts(flow.kitchen) for word in plain.said]
    return max((flow.vessels.get(one(word), 0) for word in said if one(word) != word), default=0)
