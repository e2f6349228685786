"""The food clause that most are, `200 g flour, sifted`: a weight, a known name and free words.

What is read here in a few steps `food.py` would read in many; a test holds the two to the same record.
"""

from __future__ import annotations

from tamis.reading.clause import end_of, first_leaf, only_leaf, start_of
from tamis.reading.clauses import Ingredient
from tamis.reading.measured import may_be_unit
from tamis.reading.quantities import measures
from tamis.reading.soundness import LENGTHS
from tamis.record import made
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def usual_food(reading: Reading, children: Sequence[Node]) -> Ingredient | None:
    """The record of an ingredient clause if it is such a one, else None."""
    if len(children) not in (2, 4):
        return None
    weighed, name = children[0], children[1]
    if weighed[0] != "weighed" or len(weighed[1]) != 1 or name[0] != "food":
        return None
    found = reading.kitchen.larder.find(reading.keys(name[1]))
    if found is None or found.piece_word:
        return None
    if may_be_unit(reading, first_leaf(name), only_leaf(name[1]) is not None):
        return None
    if len(children) == 4 and not _is_free(children[2:]):
        return None
    start, end = start_of(name), end_of(name)
    first, last, inner = start_of(weighed), end_of(weighed), reading.inner
    behind = children[3:]
    return Ingredient(
        reading.clause,
        reading.text[start:end],
        made(Span, (inner + start, inner + end)),
        found.goods,
        found.states,
        "",
        measures(reading, weighed[1][0]),
        reading.text[first:last],
        preparation=reading.said(behind),
        measure_span=made(Span, (inner + first, inner + last)),
        preparation_spans=(reading.span(behind),) if behind else (),
    )


def _is_free(nodes: Sequence[Node]) -> bool:
    """Whether these are a comma and words with no number or time among them."""
    comma, preparation = nodes
    if comma[0] != "COMMA" or preparation[0] != "preparation" or len(preparation[1]) != 1:
        return False
    text = preparation[1][0]
    if text[0] != "text":
        return False
    return not any([part[1].__class__ is list or part[0] in LENGTHS for part in text[1]])
