"""The pieces of equipment that a line names: in its clauses, in the words of its waits, and in its plain words."""

from __future__ import annotations

from tamis.reading.clauses import Ingredient, Reference, Tending, Time, Tool
from tamis.reading.plain import plain_of
from tamis.reading.plain_tools import placed_tools, tools_in
from tamis.reading.prose import prose_words
from tamis.syntax.document import Text
from tamis.table.words import equipment_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action
    from tamis.reading.plain_tools import Placed
    from tamis.source import Span


def tools_of(action: Action, kitchen: Kitchen) -> list[Tool]:
    """The pieces of a line, in the order of the text."""
    tools = [read for read in action.reads if isinstance(read, Tool)]
    said = {tool.clause.span for tool in tools}
    tools += [tool for tool in action.tools if tool.clause.span not in said]  # put on [the lid]
    tools += _in_words(action, kitchen)
    return sorted(tools, key=lambda tool: tool.clause.span.start)


def _in_words(action: Action, kitchen: Kitchen) -> Iterator[Tool]:
    """Those of plain words, and of what is done while food waits: *covering with foil after 30 min*."""
    tools = {tool.clause.span for tool in action.tools}
    for at, part in enumerate(action.parts):
        if isinstance(part, Text) and plain_of(part.text, kitchen).ask(placed_tools):
            following = action.parts[at + 1].span if at + 1 < len(action.parts) else None
            food = following is not None and following not in tools and _is_food(action, following)
            for placed in tools_in(part, kitchen):
                if not _is_eaten(placed, part, food, kitchen):
                    yield placed.tool
    for read in action.reads:
        if isinstance(read, Tending | Time) and read.clause.span not in tools:
            if not kitchen.cupboard.may_be_in(read.clause.text):  # to cut the words of each wait takes long
                continue
            span = read.clause.span
            words = Text(read.clause.text, span._replace(start=read.clause.inner))
            yield from (placed.tool for placed in tools_in(words, kitchen))


def stands_for(before: Tool, tool: Tool, action: Action, kitchen: Kitchen) -> bool:
    """Whether the line has one piece or the other: *through a mincer, or pulse it in a food processor*."""
    between = range(before.clause.span.end, tool.clause.span.start)
    words: list[str] = []
    for part in action.parts:
        if isinstance(part, Text):
            first, last = (max(0, end - part.span.start) for end in (between.start, between.stop))
            words += plain_of(part.text[first:last], kitchen).said
    if words[:1] == [","]:
        del words[0]
    asked = prose_words(kitchen.language)
    return bool(words) and words[0] in asked.or_else and asked.opens.isdisjoint(words[1:])  # … and put it in a bowl


def _is_food(action: Action, clause: Span) -> bool:
    reads = (read for read in action.reads if isinstance(read, Ingredient | Reference))
    return any(read.clause.span == clause for read in reads)


def _is_eaten(placed: Placed, part: Text, before_food: bool, kitchen: Kitchen) -> bool:
    """Whether a lid is one of dough: *a pastry lid*, and what is laid over food and over no pot."""
    tool = placed.tool
    if tool.equipment.kind != "lid":
        return False
    if equipment_words(kitchen.language).eaten.intersection(tool.adjectives):
        return True
    if not (tool.definite and before_food) or tool.preposition:
        return False
    behind = tuple(part.text[placed.span.end - part.span.start :].lower().split())
    return bool(behind) and behind in prose_words(kitchen.language).puts.get(behind[0], ())
