"""Equipment of which a length or a thickness is cut off: it is one piece of a size."""

from __future__ import annotations

from tamis.reading.clause import leaves
from tamis.reading.measured import Measured
from tamis.reading.soundness import check_name
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def cut_off(reading: Reading, measured: Measured, cut: Node, named: Sequence[Node]) -> tuple[Measured, list[Node]]:
    """`a double thickness of muslin`, `2 m of string`: one piece, of what size it is cut or folded. The size, and what
    then stands there."""
    words = [leaf for leaf in leaves([cut]) if leaf[0] != "OF"]
    check_name(reading, [cut])
    start = words[0][2] if measured.article or measured.start < 0 else measured.start
    size = reading.text[start : words[-1][3]].strip()
    rest = list(named)
    if cut[0] != "plies":
        inside = [leaf for leaf in leaves(rest[:1]) if leaf is not cut]
        rest[:1] = [("tool", inside)] if inside else []
        rest = rest[1:] if rest[0][0] == "OF" else rest
    return Measured(measured.start, measured.end, size=size), rest
