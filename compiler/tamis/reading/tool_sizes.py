"""How many pieces of equipment there are, and of what size: what is cut off is one."""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clause import leaves
from tamis.reading.measured import Measured
from tamis.reading.quantities import place
from tamis.reading.soundness import check_name
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import FoundEquipment
    from tamis.quantity.amount import Amount
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
    return Measured(start, words[-1][3], size=size), rest


def number_and_size(reading: Reading, measured: Measured, found: FoundEquipment) -> tuple[Fraction, str]:
    """`3 × 20 cm round tins` are three; a `20 × 30 cm tin` has a size; `4 pint jars` hold a pint each."""
    product = measured.product
    if product and not measured.pieces and found.several and len(product) == 2 and product[0].single:
        number = product[0].lo
        if number.denominator == 1 and number <= _MOST_TINS:
            return number, _after_times(measured.size)
    if product and measured.pieces and measured.each:
        return measured.pieces.hi, measured.size
    if measured.pieces:
        size = measured.size
        if not size and measured.each:
            size = reading.text[measured.start : measured.end].strip()
            size = size[len(size.split(" ")[0]) :].strip("() ") if " " in size else size
        return measured.pieces.hi, size
    if measured.measures and not measured.size:
        if found.several and _holds_one(reading, measured):
            counted_as(reading, measured.measures[0].amount)
            return measured.measures[0].amount.hi, measured.measures[0].unit
        return Fraction(1), reading.text[measured.start : measured.end]
    return Fraction(1), measured.size


def _holds_one(reading: Reading, measured: Measured) -> bool:
    """Whether the unit is how one is called: `4 pint jars`, but `500 g tins`, `2-pint basins`."""
    said = reading.text[measured.start : measured.end]
    return measured.measures[0].unit in reading.words.holds_one and "-" not in said


def within(reading: Reading, measured: Measured, size: str) -> Span:
    """Where a size stands in its measure: behind the number of pieces, if that is told."""
    at = reading.text.rfind(size, max(0, measured.start), measured.end) if size else -1
    return NOWHERE if at < 0 else place(reading, at, at + len(size))


_MOST_TINS = 12


def counted_as(reading: Reading, number: Amount) -> None:
    """What is counted and stands ready is one number: of a range the most."""
    if not number.single:
        message = f"“{reading.text.strip()}” is calculated as {number.hi}"
        reading.find("number-unclear", "information", reading.clause.span, message, "write the number that is meant")


def _after_times(size: str) -> str:
    return size.split("×" if "×" in size else "x", 1)[-1].strip()
