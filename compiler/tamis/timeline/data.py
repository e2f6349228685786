"""The timeline as plain data, for other programs. Its form is written down in
`grammar/schema/timeline.schema.json`.

Seconds are whole numbers. From zero every time is given twice, for the least and for the most plan; counted
back there is one plan, and its moments are given as local dates and times besides.
"""

from __future__ import annotations

from tamis.timeline.clock import after
from tamis.timeline.records import Timeline
from tamis.timeline.rows import Entry, Segment
from tamis.timeline.timeline import counted_back
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from datetime import datetime

    from tamis.timeline.needs import Need

Data = dict[str, Any]


def timeline_data(timeline: Timeline, ready: datetime | None = None) -> Data:
    """Everything that the timeline knows, as dictionaries, lists, texts and numbers."""
    if ready is not None:
        timeline = counted_back(timeline, ready)
    data: Data = {
        "title": timeline.recipe.title,
        "least": timeline.least,
        "most": timeline.most,
        "hands_on": {"least": timeline.hands_on, "most": timeline.hands_on_most},
        "unattended": timeline.unattended,
        "keeps": timeline.keeps,
        "sentence": timeline.sentence,
        "components": list(timeline.components),
        "entries": [_entry(timeline, entry) for entry in timeline.entries],
        "late": list(timeline.stretched),
        "needs": [_need(timeline, need) for need in timeline.needs],
    }
    if timeline.ready is not None and timeline.zero is not None:
        data["ready"] = timeline.ready.isoformat(timespec="minutes")
        data["start"] = after(timeline.zero, 0).isoformat(timespec="minutes")
        data["standing"] = [
            {"action": gap.action, "until": gap.next_action, "seconds": gap.seconds} for gap in timeline.standing
        ]
    return data


def _need(timeline: Timeline, need: Need) -> Data:
    data: Data = {
        "recipe": need.recipe,
        "text": need.text,
        "by": {"least": need.start, "most": need.most_start},
        "takes": None if need.least is None else {"least": need.least, "most": need.most},
    }
    if timeline.zero is None:
        return data
    begin = None if need.begin is None else after(timeline.zero, need.begin).isoformat(timespec="minutes")
    return data | {
        "clock": {"by": after(timeline.zero, need.start).isoformat(timespec="minutes"), "begin": begin},
    }


def _entry(timeline: Timeline, entry: Entry) -> Data:
    data: Data = {
        "action": entry.action,
        "part": entry.part,
        "title": entry.title,
        "component": entry.component,
        "length": entry.length,
        "least": {"start": entry.start, "end": entry.end},
        "most": {"start": entry.most_start, "end": entry.most_end},
        "hands": entry.hands,
        "estimated": entry.estimated,
        "critical": entry.critical,
        "beside": list(entry.beside),
        "span": {"start": entry.span.start, "end": entry.span.end},
        "segments": [_segment(segment) for segment in entry.segments],
    }
    if timeline.zero is None:
        data["bounds"] = {"earliest": entry.earliest, "latest": entry.latest}
    else:
        data["clock"] = {
            "start": after(timeline.zero, entry.start).isoformat(timespec="minutes"),
            "end": after(timeline.zero, entry.end).isoformat(timespec="minutes"),
        }
    optional = {"station": entry.station, "cue": entry.cue, "machine": entry.machine}
    return data | {key: value for key, value in optional.items() if value}


def _segment(segment: Segment) -> Data:
    data: Data = {
        "hands": segment.hands,
        "kind": segment.kind,
        "least": {"start": segment.start, "end": segment.end},
        "most": {"start": segment.most_start, "end": segment.most_end},
    }
    return data if segment.until is None else data | {"until": segment.until}
