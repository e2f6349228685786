"""Free words are read for their numbers: each that a production lets stand there is looked at for what may be wrong."""

from __future__ import annotations

from tamis.reading.clause import leaves
from tamis.reading.quantities import amount, check_size, measures
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading
    from tamis.syntax.cutting import Cut


def check_text(reading: Reading, parts: Sequence[Node]) -> None:
    """Read the numbers of a preparation or a purpose; raises for one that cannot be read."""
    for part in parts:
        if part[1].__class__ is not list:
            continue
        if part[0] in ("count", "amount"):
            amount(reading, part)
        elif part[0] == "size":
            check_size(reading, part)
        elif part[0] != "exact":  # a time is no mere word: who keeps the text reads it
            check_text(reading, part[1])


def check_name(reading: Reading, nodes: Sequence[Node]) -> None:
    """Read the numbers within a name or in what is looked for: a percentage, a size, a weight."""
    for node in nodes:
        if node[1].__class__ is not list or node[0] == "degrees":  # who names a temperature reads it
            continue
        if node[0] in ("amount", "count"):
            amount(reading, node)
        elif node[0] == "weight":
            measures(reading, node)
        elif node[0] == "size":
            check_size(reading, node)
        else:
            check_name(reading, node[1])


def check_all_read(reading: Reading, tree: Node, cut: Cut) -> None:
    """Every number of a clause is read by its record; raises for the first that is not. Where as many were read as
    stand there in figures, and none in letters, nothing is to be looked for."""
    if cut.numbers == len(reading.numbers):
        return
    for leaf in leaves(tree[1]):
        if leaf[0] in _NUMBERS and leaf[2] not in reading.numbers:
            message = f"“{leaf[1]}” has no meaning at this place of “{reading.text.strip()}”"
            hint = "give it a clause of its own, or leave it in plain words outside the brackets"
            raise reading.fail("clause-role", reading.span([leaf]), message, hint)


_NUMBERS = frozenset(("NUMBER", "NUMWORD", "MISWRITTEN"))
