"""The timeline as lines of words, for paper.

A drawing cannot be broken between two sheets: a long one leaves half a page empty before it. Lines can, and two
columns of them fit under the method; so the sheet on the board gets these, and the screen the drawing.
"""

from __future__ import annotations

from tamis.publish.sentence import kept_together
from tamis.record import NamedTuple
from tamis.timeline.text import ESTIMATED, LEGEND, MARKS, least_to_most
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.timeline.records import Timeline
    from tamis.timeline.rows import Entry


class RunningLine(NamedTuple):
    """When from the start; then whether hands are needed (a mark), what, and for how long."""

    when: str
    words: str


class Running(NamedTuple):
    """All lines, in order of time, and what the marks mean."""

    lines: list[RunningLine]
    legend: str


def running_of(timeline: Timeline) -> Running:
    """The timeline's entries as lines; a component is named where the work goes over to it."""
    lines: list[RunningLine] = []
    component = -1
    for entry in timeline.entries:
        named = len(timeline.components) > 1 and entry.component != component
        component = entry.component
        what = f"{timeline.components[component]}: {entry.title}" if named else entry.title
        words = f"{MARKS[entry.hands]} {what}, {kept_together(entry.length)}{_called(entry)}"
        lines.append(RunningLine(least_to_most(entry.start, entry.most_start), words))
    estimated = any(entry.estimated for entry in timeline.entries)
    legend = f"{LEGEND}   {ESTIMATED}" if estimated else LEGEND
    return Running(lines, legend.replace("   ", " · "))


def _called(entry: Entry) -> str:
    """`, called at 0:47, 1:17`, of a wait that is tended now and then."""
    moments = [least_to_most(call.start, call.most_start) for call in entry.calls]
    return f", called at {', '.join(moments)}" if moments else ""
