"""When each piece of work begins: tasks and links (solver-free), a plan for the cook, ways to show it."""

from tamis.timeline.timeline import Timeline, build_timeline, counted_back

__all__ = ["Timeline", "build_timeline", "counted_back"]
