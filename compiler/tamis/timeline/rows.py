"""What a timeline is: its entries, its totals, and the plans behind it.

Terminal, page and data show the same timeline in three ways, so what they show is settled once, here, as
records.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.source import Span
from tamis.timeline.network import Kind
from tamis.typed import Literal

RowPart = Literal["prepare", "work", "heat"]
Hands = Literal["all", "some", "none"]


class Segment(NamedTuple):
    """A stretch of one entry in which the cook is or is not needed: seconds in the least and in the most
    plan.

    `until` is the latest end that a window allows, from the least start; None where there is none. `calls_for` is what
    a wait calls the cook for, one a line.
    """

    start: int
    end: int
    most_start: int
    most_end: int
    hands: bool
    kind: Kind
    until: int | None = None
    calls_for: str = ""


class Entry(NamedTuple):
    """One line of the timeline: an action, what is prepared for it, or a station that heats.

    Times are seconds from the timeline's zero, `start` and `end` in the least plan, `most_start` and
    `most_end` with every estimate at its longest; `earliest` and `latest` bound the start in the least
    plan. `estimated`: the kitchen's figure, not the text's. `beside` lists the entries whose wait this one
    starts in. `critical`: a delay here delays the dish. `tended`: the cook is called to it now and then.
    """

    action: int
    part: RowPart
    title: str
    length: str
    component: int
    start: int
    end: int
    most_start: int
    most_end: int
    earliest: int
    latest: int
    segments: tuple[Segment, ...]
    estimated: bool
    critical: bool
    machine: bool
    station: str
    cue: str
    span: Span
    beside: tuple[int, ...] = ()
    tended: bool = False

    @property
    def calls(self) -> tuple[Segment, ...]:
        """The moments at which a wait that is tended now and then calls the cook, and not those of the work on the
        next batch."""
        waits = [number for number, segment in enumerate(self.segments) if not segment.hands]
        if not self.tended or not waits:
            return ()
        return tuple([segment for segment in self.segments[waits[0] :] if segment.hands and segment.calls_for])

    @property
    def hands(self) -> Hands:
        """Whether the cook is needed all through, for a part, or not at all."""
        kinds = {segment.hands for segment in self.segments}
        return "some" if len(kinds) == 2 else "all" if True in kinds else "none"
