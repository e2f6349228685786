"""The timeline as lines of words, for paper.

A drawing cannot be broken between two sheets: a long one leaves half a page empty before it. Lines can, and two
columns of them fit under the method; so the sheet on the board gets these, and the screen the drawing.
"""

from __future__ import annotations

from tamis.publish.sentence import kept_together
from tamis.record import NamedTuple
from tamis.timeline.clock import from_zero
from tamis.timeline.text import ESTIMATED, LEGEND, MARKS
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
        lines.append(RunningLine(_when(entry), f"{MARKS[entry.hands]} {what}, {kept_together(entry.length)}"))
    estimated = any(entry.estimated for entry in timeline.entries)
    legend = f"{LEGEND}   {ESTIMATED}" if estimated else LEGEND
    return Running(lines, legend.replace("   ", " · "))


def _when(entry: Entry) -> str:
    """The start in the least and in the most plan, once where they are one."""
    if entry.start == entry.most_start:
        return from_zero(entry.start)
    least, most = map(from_zero, sorted((entry.start, entry.most_start)))
    return least if least == most else f"{least}–{most}"
