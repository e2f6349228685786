"""More of a food behind its name: `75 g butter plus 2 tbsp` is one amount; `75 g butter, plus 10 g for the tin` is two
uses of the butter."""

from __future__ import annotations

from tamis.reading.clause import child
from tamis.reading.food_parts import Parts
from tamis.reading.measured import MEASURES
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def second_use(reading: Reading, parts: Parts) -> tuple[Parts, Parts | None]:
    """The food without what more of it has a purpose of its own, and that."""
    at = next((n for n, node in enumerate(parts.tail) if node[0] == "surplus"), -1)
    measure = measured_more(parts.tail[at][1]) if at >= 0 else ()
    if not measure:
        return parts, None
    behind = parts.tail[at + 1 :]
    purposes = [node for node in (*parts.tail[at][1], *behind) if node[0] == "purpose"]
    if not purposes:
        if measure[0][0] == "counted":
            said = reading.said(measure)
            message = f"“{said}” more of what, and what for?"
            raise reading.fail(
                "clause-role", reading.span(measure), message, "write one number, or what the rest is for"
            )
        return parts, None
    comma = at > 0 and parts.tail[at - 1][0] == "COMMA"
    rest = tuple(node for node in behind if node[0] != "purpose")
    name = tuple(node for node in parts.name if node[0] not in ("bracket", *MEASURES))
    more = Parts("", "", None, measure, None, name, tuple(purposes), False)
    return parts._replace(tail=(*parts.tail[: at - comma], *rest)), more


def measured_more(nodes: Sequence[Node]) -> tuple[Node, ...]:
    """What is measured behind *plus*, as a measure before a name; nothing of `plus extra for the tin`."""
    found = child(nodes, "weight") or child(nodes, "amount") or child(nodes, "NUMWORD")
    if found is None:
        return ()
    hedges = child(nodes, "hedges")
    inside = [hedges] if hedges else []
    if found[0] == "weight":
        return (("weighed", [*inside, found]),)
    return (("counted", [*inside, ("count", [found])]),)
