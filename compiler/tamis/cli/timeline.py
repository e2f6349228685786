"""Print the timeline, what to do when: from 0:00, or counted back from the time at which the dish is to be ready.

Of a faulty file what could be understood is planned, marked as a part.
"""

from __future__ import annotations

from tamis.cli.common import PART, Stop, open_one, tell_faults, terminal_width
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse
    from datetime import datetime


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis timeline` takes."""
    parser.add_argument("file", metavar="FILE", help="a recipe file")
    when = 'when the dish is to be ready: "2026-12-21 19:00", or 19:00 for the next 19:00'
    parser.add_argument("--ready", metavar="TIME", help=when)
    parser.add_argument("--format", choices=("text", "json"), default="text", help="(default: text)")


def run(options: argparse.Namespace) -> int:
    """Print; 1 if the recipe is faulty."""
    ready = _ready(options.ready) if options.ready else None
    library, entry = open_one(options.file, "timeline")
    partial = tell_faults(library, entry)
    timeline = entry.compiled.timeline
    if options.format == "json":
        import json

        from tamis.timeline.data import timeline_data

        data = timeline_data(timeline, ready)
        print(json.dumps({"partial": partial, **data}, ensure_ascii=False, indent=1))
    else:
        from tamis.timeline.text import timeline_text

        print(timeline_text(timeline, ready, terminal_width()).rstrip())
        if partial:
            print(f"\n{PART}")
    return 1 if partial else 0


def _ready(text: str) -> datetime:
    """The moment meant; a time of day alone is the next one, by the clock of this machine."""
    from datetime import datetime, timedelta

    try:
        return datetime.strptime(text, "%Y-%m-%d %H:%M")
    except ValueError:
        pass
    try:
        time = datetime.strptime(text, "%H:%M").time()
    except ValueError:
        message = f"“{text}” is not a time: expected a date and a time, as 2026-12-21 19:00, or a time of day, as 19:00"
        raise Stop(message) from None
    now = datetime.now()
    today = datetime.combine(now.date(), time)
    return today if today > now else today + timedelta(days=1)
