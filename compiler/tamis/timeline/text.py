"""The timeline on a terminal: one row a line of the recipe, legible at 80 columns.

A cook looks for three things: when, for how long, and whether hands are needed. So these come first, in
columns; the rest of the row says what, and beside what. The mark is a shape, not a colour,
since a terminal may have none.
"""

from __future__ import annotations

from tamis.quantity.times import duration
from tamis.quantity.wrapping import wrap
from tamis.timeline.clock import after, clock, day, from_zero
from tamis.timeline.lengths import rough_length
from tamis.timeline.records import Timeline
from tamis.timeline.rows import Entry, Hands
from tamis.timeline.timeline import counted_back
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from datetime import datetime

    from tamis.timeline.needs import Need

MARKS: dict[Hands, str] = {"all": "●", "some": "◐", "none": "○"}
LEGEND = "● hands-on   ◐ hands-on, then unattended   ○ unattended"
ESTIMATED = "≈ estimated by tamis"
CRITICAL = "* a delay here delays the dish"


def timeline_text(timeline: Timeline, ready: datetime | None = None, width: int = 80) -> str:
    """The timeline from zero, or counted back from `ready`; lines end in LF."""
    if ready is not None:
        timeline = counted_back(timeline, ready)
    lines = [*_head(timeline, width), ""]
    whens = [_when(timeline, entry) for entry in timeline.entries]
    columns = (
        max(map(len, whens), default=0),
        max((len(entry.length) for entry in timeline.entries), default=0),
    )
    today, component = "", -1
    for entry, when in zip(timeline.entries, whens, strict=True):
        if timeline.zero is not None and day(after(timeline.zero, entry.start)) != today:
            today = day(after(timeline.zero, entry.start))
            lines.append(today)
        named = len(timeline.components) > 1 and entry.component != component
        component = entry.component
        lines += _row(timeline, entry, when, columns, named, width)
    lines += ["", *_foot(timeline, width)]
    return "\n".join(lines) + "\n"


def _head(timeline: Timeline, width: int) -> list[str]:
    title = timeline.recipe.title or timeline.recipe.stem
    said = f"{timeline.sentence}; hands-on {_rough(timeline.hands_on)}"
    lines = []
    if timeline.ready is not None:
        said = f"ready {day(timeline.ready)} {clock(timeline.ready)}, estimates at their longest{_sooner(timeline)}"
        lines = [line for need in timeline.needs for line in wrap(_needed(timeline, need), width)]
    return [title, *wrap(said, width), *lines]


def _sooner(timeline: Timeline) -> str:
    """Where the night leaves no better way, all is done before it was wished for."""
    assert timeline.zero is not None and timeline.ready is not None, "told by the clock only"
    done = after(timeline.zero, max((entry.end for entry in timeline.entries), default=0))
    if (timeline.ready - done).total_seconds() < _SOON:
        return ""
    return f"; finished by {day(done)} {clock(done)}, as nothing is planned outside the waking hours of kitchen.toml"


def _needed(timeline: Timeline, need: Need) -> str:
    """`have ready by Sun 20 Dec 18:39: 1 l of the stock; begin its own recipe (10–12 h) by Sun 20 Dec 06:39`."""
    assert timeline.zero is not None, "told by the clock only"
    by = after(timeline.zero, need.start)
    said = f"have ready by {day(by)} {clock(by)}: {need.text}"
    if need.least is None or need.most is None or need.begin is None:
        return said
    begin = after(timeline.zero, need.begin)
    length, _ = rough_length(need.least, need.most)
    return f"{said}; begin its own recipe ({length}) by {day(begin)} {clock(begin)}"


def _rough(seconds: int) -> str:
    return duration(-(-seconds // 60) * 60)


def _when(timeline: Timeline, entry: Entry) -> str:
    """The start; where estimates run side by side, that of the least plan may be the later."""
    return _moment(timeline, entry.start, entry.most_start)


def _moment(timeline: Timeline, start: int, most_start: int) -> str:
    if timeline.zero is not None:
        return clock(after(timeline.zero, start))
    return least_to_most(start, most_start)


def least_to_most(start: int, most_start: int) -> str:
    """A moment from zero: in the least and in the most plan, once where they are one."""
    least, most = map(from_zero, sorted((start, most_start)))
    return least if least == most else f"{least}–{most}"


_SHORT = 24
_SOON = 1800


def _row(timeline: Timeline, entry: Entry, when: str, columns: tuple[int, int], named: bool, width: int) -> list[str]:
    mark = MARKS[entry.hands] + ("*" if entry.critical else " ")
    head = f"{when:>{columns[0]}}  {mark} {entry.length:<{columns[1]}}  "
    what = f"{timeline.components[entry.component]}: {entry.title}" if named else entry.title
    room = max(20, width - len(head))
    called = wrap(_called(timeline, entry), room - 2) if entry.calls else []
    said = [*wrap(what, room), *(f"  {line}" for line in called)]
    begun = [at for at in entry.beside if _waits_by(timeline.entries[at], entry.start)]
    if begun:
        beside = _beside(timeline.entries[begun[0]].title)
        room -= len(said[-1])
        said = [*said[:-1], f"{said[-1]}  {beside}"] if len(beside) + 2 <= room else [*said, f"  {beside}"]
    return [head + said[0], *(" " * len(head) + line for line in said[1:])]


def _called(timeline: Timeline, entry: Entry) -> str:
    """When a wait that is tended now and then calls the cook, and for what, where that is more than one thing."""
    moments: dict[str, list[str]] = {}
    for call in entry.calls:
        for what in call.calls_for.splitlines() or [""]:
            moments.setdefault(what.partition(" ")[0].lower(), []).append(
                _moment(timeline, call.start, call.most_start)
            )
    if len(moments) < 2:
        return f"called at {', '.join(*moments.values())}"
    return "called for " + "; ".join(f"{what} at {', '.join(times)}" for what, times in moments.items())


def _waits_by(entry: Entry, moment: int) -> bool:
    """Whether a wait of a row has begun: an oven may be heated for it before."""
    return any(not segment.hands and segment.start <= moment for segment in entry.segments)


def _beside(title: str) -> str:
    """What a row runs beside: the first of them, short; the times of the rows tell the rest."""
    name = _lower(title.partition(" (")[0])
    return f"(beside {name if len(name) <= _SHORT else name[: _SHORT - 1].rstrip(' ,…') + '…'})"


def _lower(title: str) -> str:
    return title[:1].lower() + title[1:]


def _foot(timeline: Timeline, width: int) -> list[str]:
    """What the marks mean, and what cannot be as the recipe wants it."""
    said = [ESTIMATED] if any(entry.estimated for entry in timeline.entries) else []
    said += [CRITICAL] if any(entry.critical for entry in timeline.entries) else []
    lines = [LEGEND, "   ".join(said)] if said else [LEGEND]
    titles = {entry.action: entry.title for entry in reversed(timeline.entries) if entry.part == "work"}
    lines += [
        f"! {titles[action]}: cannot be done as soon as the recipe asks"
        for action in timeline.stretched
        if action in titles
    ]
    lines += [
        f"! {titles[gap.action]}: then stands {_rough(gap.seconds)} until “{titles[gap.next_action]}”; "
        "serve at another time, or chill it in a line of its own"
        for gap in timeline.standing
        if gap.action in titles and gap.next_action in titles
    ]
    return [line for said in lines for line in (wrap(said, width) if said.startswith("!") else [said])]
