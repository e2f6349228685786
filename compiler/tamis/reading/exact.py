"""The exact words of a clause that a reader of its record is pointed to: the measure, the name, the degrees."""

from __future__ import annotations

from tamis.reading.clauses import Ingredient, Reference, Setting, Target, Tool
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable

    from tamis.source import Span


def _of_food(food: Ingredient) -> Span:
    return food.measure_span if food.measure_text else food.name_span


def _of_tool(tool: Tool) -> Span:
    return tool.size_span if tool.size else tool.clause.span


def _of_heat(heat: Setting | Target) -> Span:
    return heat.degrees_span if heat.degrees_span[1] else heat.clause.span


EXACT: dict[type, Callable[[Any], Span]] = {
    Ingredient: _of_food,
    Reference: lambda reference: reference.name_span,
    Tool: _of_tool,
    Setting: _of_heat,
    Target: _of_heat,
}
"""Of a food its measure, else its name; of what was made its name; of a heat its degrees; of equipment its size. Of all
else, and where these are not said, it is the bracket."""
