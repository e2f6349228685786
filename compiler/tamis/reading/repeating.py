"""Clauses about what is done again, and about what is done meanwhile."""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clause import child
from tamis.reading.clauses import Meanwhile, Read, Repeat
from tamis.reading.measured import ONE, read_measure
from tamis.reading.quantities import amount
from tamis.reading.things import measure_of
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_repeat(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`twice`, `3 times`, `Repeat twice`, `in 4 batches`, `in 2 loads of 10 kg`, `in three additions`."""
    kinds = {node[0] for node in children}
    holds = None
    counted = child(children, "counted") or child(children, "count")
    number = _times(reading, children, counted, kinds)
    if "REPEAT" in kinds:
        kind = "step-times"
    elif "ADDITION" in kinds:
        kind = "additions"
    elif "BATCH" in kinds:
        batch = child(children, "BATCH")
        assert batch is not None
        kind = "loads" if batch[1].lower() in reading.words.loads else "batches"
        of = children[children.index(batch) + 1 :]
        if counted and of and of[-1][0] == "count" and children.index(counted) > children.index(batch):
            kind = "batch-size"
        if of and of[-1][0] in ("weight", "count") and of[-1] is not counted:
            holds = measure_of(reading, of[-1])
    else:
        kind = "times"
    if number < 1 or number.denominator > 1:
        message = f"“{reading.text.strip()}”: a line is done a whole number of times, at least once"
        keys = ("twice", "three_times", "two_batches")
        twice, often, batches = (example(reading.kitchen.language, key) for key in keys)
        hint = f"write {twice}, {often} or {batches}"
        raise reading.fail("number-unclear", reading.clause.span, message, hint)
    return (Repeat(reading.clause, kind, number, holds, bare=kinds == {"REPEAT"}),)  # type: ignore[arg-type]


def _times(reading: Reading, children: Sequence[Node], counted: Node | None, kinds: set[str]) -> Fraction:
    from tamis.reading.tool_sizes import counted_as

    if counted is None:
        return Fraction(2) if "TWICE" in kinds else Fraction(1)
    times = read_measure(reading, [counted]).pieces or ONE if counted[0] == "counted" else amount(reading, counted)
    counted_as(reading, times)
    return times.hi


def read_meanwhile(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`meanwhile`, `while the bird rests`."""
    return (Meanwhile(reading.clause),)
