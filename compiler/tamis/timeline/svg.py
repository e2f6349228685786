"""The timeline as a picture for a page: rows by component, a bar for each stretch of work or waiting.

It must be read on a phone, on paper without colour, and by ear. So widths are in per cent and text in
pixels (nothing shrinks on a narrow screen), every label stands right above its bar between two rules, cut only
where the screen is narrow, work and waiting differ in fill and in edge, and the picture tells in words what it
shows. Colours are CSS variables with a fallback; there is no script.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.quantity.times import duration
from tamis.timeline.clock import after, clock, day, from_zero
from tamis.timeline.records import Timeline
from tamis.timeline.rows import Entry, Segment
from tamis.timeline.scale import Scale

HEAD, ROW, NAME, BAR, LEGEND = 26, 40, 30, 10, 82
NARROW = 47
"""Letters of a label and its length that a narrow screen has room for."""

STYLE = """\
.tl text{font-size:12px;font-family:var(--timeline-font,inherit);fill:var(--timeline-ink,currentColor)}
.tl .tl-name{font-weight:bold}
.tl .tl-tick,.tl .tl-length{fill:var(--timeline-quiet,currentColor)}
.tl .tl-length{font-weight:bold}
.tl .tl-short{display:none}
@media screen and (max-width:34rem){.tl .tl-short{display:inline}.tl .tl-long{display:none}}
.tl .tl-rule{stroke:var(--timeline-grid,#bbb);stroke-width:1}
.tl .tl-grid{stroke:var(--timeline-grid,#bbb);stroke-width:.5}
.tl .tl-hands{fill:var(--timeline-hands,#222);stroke:var(--timeline-hands,#222)}
.tl .tl-wait{fill:var(--timeline-wait,#fff);stroke:var(--timeline-ink,#222)}
.tl .tl-more{stroke:var(--timeline-ink,#222)}
.tl .tl-hatch{stroke:var(--timeline-ink,#222);stroke-width:1}
.tl .tl-slack{fill:none;stroke:var(--timeline-ink,#222);stroke-dasharray:3 3}
.tl .tl-critical{fill:var(--timeline-critical,#222)}"""


def timeline_svg(timeline: Timeline, key: str = "tl") -> str:
    """An inline `<svg>`; empty for a recipe without work. `key` begins the ids in it, so that a page can
    hold several."""
    if not timeline.entries:
        return ""
    scale = Scale(_moments(timeline))
    told = [_escaped(f"{_from(timeline, entry)} {entry.title}, {entry.length}") for entry in timeline.entries]
    groups = _by_component(timeline, told)
    named = len(groups) > 1
    foot = HEAD + sum(NAME * named + ROW * len(entries) for _, entries in groups) + 8
    parts = [*_opening(timeline, told, key, foot + LEGEND), *_axis(timeline, scale, foot)]
    y = HEAD
    for name, entries in groups:
        if named:
            y += NAME
            parts.append(f'<text class="tl-name" x="0" y="{y - 7}">{_escaped(name)}</text>')
        for entry, words in entries:
            parts += _row(scale, entry, words, y, key)
            y += ROW
    return "\n".join([*parts, *_legend(foot, key), "</svg>"])


Told = tuple[Entry, str]
"""A row and what it says, in words."""


def _by_component(timeline: Timeline, told: list[str]) -> list[tuple[str, list[Told]]]:
    """The rows of each component by their start, the component that begins first on top."""
    groups: dict[int, list[Told]] = {}
    rows = zip(timeline.entries, told, strict=True)
    for entry, words in sorted(rows, key=lambda row: (row[0].most_start, row[0].most_end)):
        groups.setdefault(entry.component, []).append((entry, words))
    return [(timeline.components[index], entries) for index, entries in groups.items()]


def _moments(timeline: Timeline) -> Iterator[int]:
    for entry in timeline.entries:
        for segment in entry.segments:
            yield from (segment.most_start, _sure(segment), segment.most_end)


def _sure(segment: Segment) -> int:
    """The least end of a stretch: from there an estimate may be over."""
    return segment.most_start + segment.end - segment.start


def _opening(timeline: Timeline, told: list[str], key: str, height: int) -> list[str]:
    title = _escaped(f"Timeline of {timeline.recipe.title}")
    said = [_escaped(timeline.sentence), f"hands-on {duration(-(-timeline.hands_on // 60) * 60)}"]
    return [
        f'<svg class="tl" role="img" overflow="visible" '
        f'aria-labelledby="{key}-title {key}-desc" width="100%" height="{height}" '
        f'style="height:{height}px" xmlns="http://www.w3.org/2000/svg">',
        f'<title id="{key}-title">{title}</title>',
        f'<desc id="{key}-desc">{"; ".join([*said, *told])}. Long stretches are drawn shorter.</desc>',
        f"<style>{STYLE}</style>",
        f'<defs><pattern id="{key}-hatch" width="5" height="5" patternUnits="userSpaceOnUse" '
        f'patternTransform="rotate(45)"><path class="tl-hatch" d="M0 0V5"/></pattern></defs>',
    ]


def _axis(timeline: Timeline, scale: Scale, foot: int) -> list[str]:
    parts = []
    for moment in scale.ticks():
        at = scale(moment)
        anchor = "start" if at < 4 else "middle"
        label = _tick(timeline, moment)
        parts.append(
            f'<line class="tl-grid" x1="{at}%" x2="{at}%" y1="{HEAD - 8}" y2="{foot}"/>'
            f'<text class="tl-tick" x="{at}%" y="{HEAD - 12}" text-anchor="{anchor}">{label}</text>'
        )
    return parts


def _tick(timeline: Timeline, moment: int) -> str:
    if timeline.zero is None:
        return from_zero(moment)
    return clock(after(timeline.zero, moment))


def _from(timeline: Timeline, entry: Entry) -> str:
    if timeline.zero is None:
        return from_zero(entry.start)
    moment = after(timeline.zero, entry.start)
    return f"{day(moment)} {clock(moment)}"


def _row(scale: Scale, entry: Entry, words: str, y: int, key: str) -> list[str]:
    return [
        "<g>",
        f"<title>{words}</title>",
        f'<line class="tl-rule" x1="0" x2="100%" y1="{y}" y2="{y}"/>',
        *_label(entry, y + 16),
        *[bar for segment in entry.segments for bar in _bars(scale, segment, y + 21, key)],
        "</g>",
    ]


def _label(entry: Entry, y: int) -> list[str]:
    """What and how long, in whole; a second time cut, for a narrow screen, where that has no room for it."""
    star = '<tspan class="tl-critical">*</tspan>' if entry.critical else ""
    length = f'<tspan class="tl-length" dx="8">{_escaped(entry.length)}</tspan>'
    room = NARROW - len(entry.length)
    if len(entry.title) <= room:
        return [f'<text x="0" y="{y}">{_escaped(entry.title)}{star}{length}</text>']
    cut = entry.title[: room - 1].rstrip(" ,;") + "…"
    return [
        f'<text class="{name}" x="0" y="{y}">{_escaped(label)}{star}{length}</text>'
        for name, label in (("tl-long", entry.title), ("tl-short", cut))
    ]


def _bars(scale: Scale, segment: Segment, y: int, key: str) -> list[str]:
    """The stretch that is sure, what an estimate may add, and how long a window may be drawn out."""
    sure, bars = _sure(segment), []
    if segment.until is not None:
        until = segment.most_start + segment.until - segment.start
        bars += _bar(scale, "tl-slack", segment.most_end, min(until, scale.end), y)
    bars += _bar(scale, "tl-hands" if segment.hands else "tl-wait", segment.most_start, sure, y)
    bars += _bar(scale, "tl-more", sure, segment.most_end, y, f' fill="url(#{key}-hatch)"')
    return bars


def _bar(scale: Scale, name: str, start: int, end: int, y: int, more: str = "") -> list[str]:
    """A bar, or none where it would have no width."""
    if end <= start:
        return []
    left, right = scale(start), scale(end)
    width = round(right - left, 2)
    return [f'<rect class="{name}" x="{left}%" y="{y}" width="{width}%" height="{BAR}"{more}/>'] if width else []


def _legend(y: int, key: str) -> list[str]:
    entries = [
        ("0", y + 10, "tl-hands", "", "hands-on"),
        ("50%", y + 10, "tl-wait", "", "unattended"),
        ("0", y + 28, "tl-more", f' fill="url(#{key}-hatch)"', "may take this long"),
        ("50%", y + 28, "tl-slack", "", "can wait this long"),
    ]
    boxes = [
        f'<svg x="{x}" y="{at}" width="50%" height="16" overflow="visible"><rect class="{name}" x="1" y="1" width="24" '
        f'height="{BAR}"{more}/><text x="32" y="11">{words}</text></svg>'
        for x, at, name, more, words in entries
    ]
    notes = ("* a delay here delays the dish", "estimates at their longest; long stretches drawn shorter")
    return boxes + [
        f'<text class="tl-tick" x="0" y="{y + 57 + 17 * line}">{note}</text>' for line, note in enumerate(notes)
    ]


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")
