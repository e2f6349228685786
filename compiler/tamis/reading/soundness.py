"""Free words are read for their numbers: each that a production lets stand there is looked at for what may be wrong."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.reading.clause import is_leaf
from tamis.reading.quantities import amount, check_size, stretch

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def check_text(reading: Reading, parts: Sequence[Node]) -> None:
    """Read the numbers of a preparation or a purpose; raises for one that cannot be read."""
    for part in parts:
        if is_leaf(part):
            continue
        if part[0] in ("count", "amount"):
            amount(reading, part)
        elif part[0] == "size":
            check_size(reading, part)
        elif part[0] == "exact":
            stretch(reading, ("stretch", [part]))
        else:
            check_text(reading, part[1])
