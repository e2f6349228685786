"""Clauses about the pieces that a batch is divided into."""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.reading.clause import child
from tamis.reading.clauses import Division, Manner, Read, Tool
from tamis.reading.food_parts import is_manner
from tamis.reading.measured import MEASURES, NAMES, Measured, bracketed, read_measure
from tamis.reading.quantities import amount, as_one, check_size, one_measure
from tamis.reading.soundness import check_name
from tamis.reading.things import preposition_of
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_division(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...] | None:
    """`into 2 pieces`, `into 40 pieces (11 g each)`, `into 2-cm cubes`, `into quarters`, `at 450 g`; None for `over
    steam`."""
    if children[0][0] == "AT":
        weight = child(children, "weight")
        assert weight is not None
        return (Division(reading.clause, None, "", one_measure(reading, weight), reading.text),)
    preposition, nodes = preposition_of(children)
    measure = [node for node in nodes if node[0] in MEASURES or node[0] == "counted"]
    shared = preposition in reading.words.cut_in and child(nodes, "FRACTION") is not None  # in half, in quarters
    if not measure and not shared and preposition not in reading.words.into and child(nodes, "food") is None:
        return (Manner(reading.clause),) if is_manner(reading, nodes) else None
    measured = read_measure(reading, measure)
    weight = child(nodes, "weight")  # `into 6 balls of 90 g each`
    each = one_measure(reading, weight) if weight else None
    for node in nodes:
        if node[0] == "bracket":
            found = bracketed(reading, Measured(), node)
            each = found.each or (as_one(reading, found.also) if found.also else None)
        elif node[0] == "size":
            check_size(reading, node)
    words = [node for node in nodes if node[0] in ("adj", "SIZEWORD", "SETWORD", "verb", "noun", "FRACTION")]
    name = [node for node in nodes if node[0] in NAMES or node in words]
    weighed = measured.measures and not measured.pieces and not measured.size
    if weighed:
        each = as_one(reading, measured.measures)
    if measured.each and measured.weight_first:
        each = measured.each
    count = child(nodes, "count")  # into 2 halves
    number = amount(reading, count) if count else measured.pieces if not measured.article else None
    noun = reading.said(name)
    if measured.article and name and not count:
        number = measured.pieces
    check_name(reading, name)
    if name and preposition in reading.words.into and reading.keys(name)[-1] in reading.words.filled:
        message = f"how many “{noun}”? Food that is filled is an ingredient"
        raise reading.fail("clause-role", reading.clause.span, message, f"write {_filled(reading, preposition, noun)}")
    of_each = child(nodes, "EACH") is not None and weight is None
    return (Division(reading.clause, number, noun, each, reading.text, of_each=of_each),)


def as_pieces(tool: Tool) -> Division:
    """Rings and sheets that food is cut into, though a kitchen has such things too."""
    text = tool.clause.text.strip()
    return Division(tool.clause, Amount(tool.number, tool.number), tool.name, None, text)


def _filled(reading: Reading, preposition: str, noun: str) -> str:
    return example(reading.kitchen.language, "filled", into=preposition, food=noun)
