"""When each piece of work begins: tasks and links (solver-free), a plan for the cook, and the ways to show
it."""

from tamis.timeline.rows import Entry, Segment
from tamis.timeline.timeline import Timeline, build_timeline, counted_back

__all__ = ["Entry", "Segment", "Timeline", "build_timeline", "counted_back"]
