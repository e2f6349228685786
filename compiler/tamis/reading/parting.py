"""A line as one action or several: two waits in a line are two pieces of work, and each takes its own time."""

from __future__ import annotations

from itertools import takewhile

from tamis.diagnostics import Diagnostic, Label
from tamis.reading.clauses import Cue, Pause, Reference, Repeat, Setting, Target, Tending, Time, Tool, VerbUse
from tamis.reading.plain import plain_of
from tamis.reading.prose import next_work, prose_words
from tamis.reading.reading import ActionRead
from tamis.source import Span
from tamis.syntax.document import Clause, Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.prose import ProseWords
    from tamis.reading.reading import Event
    from tamis.syntax.document import Part

TIMED = (Time, Cue, Pause)
"""The records that may give a time."""
_ENDS = (Cue, Target)


def parted(action: ActionRead, kitchen: Kitchen, findings: list[Diagnostic]) -> list[ActionRead]:
    """Two times in a line parted by `then` or by a verb of work are two actions; two without are one finding."""
    if Repeat in map(type, action.events):
        from tamis.reading.repeated import end_of_repeated, start_of_repeated

        again = start_of_repeated(action) or end_of_repeated(action)
        if again is not None:
            head, tail = _cut(action, again)
            return [head, *parted(tail, kitchen, findings)]
    other = _other_station(action, kitchen)
    if other is not None:
        head, tail = _cut(action, other.clause.span.start)
        return [head, *parted(tail._replace(events=(action.events[0], *tail.events)), kitchen, findings)]
    timed = times_in(action.events)
    if len(timed) < 2:
        if not timed:
            at = _end_of_heating(action, None, kitchen)
            return [action] if at is None else list(_cut(action, at))
        at = _end_of_first_wait(action, timed[0]) or _end_of_heating(action, timed[0], kitchen)
        if at is not None:
            head, tail = _tended(*_cut(action, at))
            return [head, *parted(tail, kitchen, findings)]
        words = prose_words(kitchen.language)
        at = _start_of_next_wait(action, timed[0], words) or _start_of_hand_work(action, timed[0], words)
        return [action] if at is None else list(_cut(action, at))
    first, second = timed[0], timed[1]
    assert not isinstance(first, VerbUse) and not isinstance(second, VerbUse)
    at = _then(action.parts, kitchen, first.clause.span.end, second.clause.span.start)
    if at is None and isinstance(second, Pause):  # food is kept warm when it is done
        at = second.clause.span.start
    if at is None:
        at = _start_of_second(action, first, second, prose_words(kitchen.language))
    if at is None:
        hint = "two actions are two lines; or part them by *then*; of two ways to do it, bracket one"
        message = "a second time in one line: the first is already its length"
        label = Label(first.clause.span, "the first time")
        findings.append(Diagnostic("two-times", "error", second.clause.span, message, hint, (label,)))
        kept = tuple(event for event in action.events if event is first or not gives_time(event))
        return [action._replace(events=kept)]
    head, tail = _cut(action, at)
    return [*parted(head, kitchen, findings), *parted(tail, kitchen, findings)]


def _start_of_second(action: ActionRead, first: Event, second: Event, words: ProseWords) -> int | None:
    """Where the work of the second time begins: `[simmer for 10 min], stir in [the cream] and cook [for 2 min]`. None
    where no verb tells, where it is another way to do the first, or where the second is told from an end, which may
    be within the first: `[5 min before the end]`."""
    if isinstance(second, Time) and second.before:
        return None
    events = action.events
    between = events[events.index(first) + 1 : events.index(second)]
    start = next((event.span.start for event in between if isinstance(event, VerbUse)), None)
    return None if start is None or _is_other_way(action, _offset(first), start, words) else start


def _is_other_way(action: ActionRead, start: int, end: int, words: ProseWords) -> bool:
    """Whether the words between two offsets part two ways: `[boil for 20 min], or, if you can, [steam for 30 min]`.
    Between two foods (*in oil or butter*) the word stands within."""
    said = [part for part in action.parts if isinstance(part, Text) and start <= part.span.start < end]
    pieces = [f" {piece.strip()} " for part in said for piece in part.text[: end - part.span.start].split(",")]
    ways = tuple(f"{word} " for word in words.alternative)
    return any(piece.startswith(ways) or piece.endswith(ways) for piece in pieces)


def _then(parts: Sequence[Part], kitchen: Kitchen, start: int, end: int) -> int | None:
    """Where `then` stands in the plain words between two offsets, or where a sentence begins."""
    for part in parts:
        if isinstance(part, Text) and start <= part.span.start < end:
            found = next_work(plain_of(part.text, kitchen))
            if found is not None:
                return part.span.start + found
    return None


def _end_of_first_wait(action: ActionRead, timed: Event) -> int | None:
    """Where a wait for a target ends in a line that has a time for another verb: `bring [to the boil] and [simmer for
    20 min]` are two waits, and coming to the boil takes its time. What is kept warm was done before, whatever told."""
    waiting: VerbUse | None = None
    reached: int | None = None
    done = again = False
    for event in action.events:
        if event is timed:
            return event.clause.span.start if done and isinstance(event, Pause) else reached if again else None
        done = done or event.__class__ in _ENDS
        if isinstance(event, VerbUse):
            if reached is not None:
                again = True
                continue
            waiting = event if event.verb.estimate and (event.verb.waits or event.verb.sets) else None
        elif isinstance(event, Target) and event.kind != "size" and waiting is not None:
            reached = event.clause.span.end
    return None


def _other_station(action: ActionRead, kitchen: Kitchen) -> Tool | Reference | None:
    """The second station that a line heats: `heat [the grill] [to high] and [the oven] [to 200 °C]`."""
    use = action.events[0] if action.events else None
    if len(action.events) < 4 or not isinstance(use, VerbUse) or not _is_station(use, action.events[1], kitchen):
        return None
    behind = takewhile(lambda one: isinstance(one, Setting | Target | Tool | Reference), action.events[2:])
    stations = [one for one in behind if isinstance(one, Tool | Reference) and _is_station(use, one, kitchen)]
    return stations[0] if stations else None


def _end_of_heating(action: ActionRead, timed: Event | None, kitchen: Kitchen) -> int | None:
    """Where the heating of an oven ends in a line that has other work, and maybe a time for it: `set [the oven] [to 190
    °C] and [roast for 1 h]`. What is only turned down is hot already, and its food is in it."""
    if len(action.events) < 4:
        return None
    use, named, *more = action.events
    if (
        not isinstance(use, VerbUse)
        or (use.verb.sets and not use.verb.estimate)
        or not _is_station(use, named, kitchen)
    ):
        return None
    those = list(takewhile(lambda one: isinstance(one, Setting | Target), more))
    if not any(map(_is_hot, those)) and not use.verb.sets:
        return None
    behind = more[len(those) :]
    if not behind or not isinstance(behind[0], VerbUse) or (timed is not None and timed not in behind):
        return None
    last = those[-1] if those else named
    assert not isinstance(last, VerbUse)
    return last.clause.span.end


def _is_station(use: VerbUse, named: Event, kitchen: Kitchen) -> bool:
    """Whether an oven or a grill is what the line begins with; *on* of *switch on [the oven]* is the verb's."""
    if isinstance(named, Reference) and use.text.endswith(named.preposition):
        found = kitchen.cupboard.find(named.name.split())
        return found is not None and found.item.kind == "station"
    return isinstance(named, Tool) and not named.preposition and named.equipment.kind == "station"


def _is_hot(event: Event) -> bool:
    return isinstance(event, Setting | Target) and event.celsius is not None


def _start_of_next_wait(action: ActionRead, timed: Event, words: ProseWords) -> int | None:
    """Where another wait begins after the one that is timed: `[simmer for 10 min] and leave to cool`."""
    events = iter(action.events)
    for event in events:
        if event is timed:
            break
    waits = (event for event in events if isinstance(event, VerbUse) and event.verb.waits)
    return next((use.span.start for use in waits if not _is_alternative(action, use, words)), None)


def _start_of_hand_work(action: ActionRead, timed: Event, words: ProseWords) -> int | None:
    """Where work by hand begins when the wait is over: `[cool for 10 min], peel and slice`. What the wait ends by, and
    how it is tended, may stand behind that and stays with it."""
    events = iter(action.events)
    for event in events:
        if event is timed:
            break
    behind = list(events)
    use = next((event for event in behind if isinstance(event, VerbUse)), None)
    if use is None or use.verb.keeps or _is_alternative(action, use, words) or _in_batches(action):
        return None
    return None if any(map(_is_of_wait, behind[behind.index(use) :])) else use.span.start


def _in_batches(action: ActionRead) -> bool:
    """Whether a line is done batch by batch: `[in 3 batches], fry [for 4 min]. Lift out.` lifts each out in turn."""
    repeats = [event for event in action.events if isinstance(event, Repeat)]
    return any([repeat.kind in ("batches", "loads", "batch-size") for repeat in repeats])


def _is_of_wait(event: Event) -> bool:
    return isinstance(event, Cue | Tending | Setting) or (isinstance(event, Target) and event.kind != "size")


def _is_alternative(action: ActionRead, use: VerbUse, words: ProseWords) -> bool:
    """`[chill for up to 2 days], or freeze`: no work of this line."""
    part = next((part for part in action.parts if part.span.start <= use.span.start < part.span.end), None)
    return isinstance(part, Text) and part.text[: use.span.start - part.span.start].rstrip().endswith(words.alternative)


def _tended(head: ActionRead, tail: ActionRead) -> tuple[ActionRead, ActionRead]:
    """`bring [to a simmer], [whisking all the time], and [cook for 5 min]`: the whisking is for both."""
    tending = list(takewhile(lambda event: isinstance(event, Tending), tail.events))
    return head._replace(events=(*head.events, *tending)), tail


def gives_time(event: Event) -> bool:
    """Whether an event says how long its line takes."""
    if not isinstance(event, TIMED):
        return False
    if isinstance(event, Pause):
        return event.waits
    return event.duration is not None


def times_in(events: Sequence[Event]) -> list[Event]:
    """The events that say how long their line takes; most are of kinds that never do."""
    return [event for event in events if event.__class__ in TIMED and gives_time(event)]


def _offset(event: Event) -> int:
    return event.span.start if isinstance(event, VerbUse) else event.clause.span.start


def _cut(action: ActionRead, at: int) -> tuple[ActionRead, ActionRead]:
    """The action cut in two at an offset: a clause that holds it goes to the second part as a whole."""
    clauses = (part.span for part in action.parts if isinstance(part, Clause))
    at = next((span.start for span in clauses if span.start < at < span.end), at)
    head: list[Part] = []
    tail: list[Part] = []
    for part in action.parts:
        if part.span.end <= at:
            head.append(part)
        elif part.span.start >= at:
            tail.append(part)
        else:
            assert isinstance(part, Text)
            within = at - part.span.start
            head.append(Text(part.text[:within], Span(part.span.start, at)))
            tail.append(Text(part.text[within:], Span(at, part.span.end)))
    before = tuple(event for event in action.events if _offset(event) < at)
    after = tuple(event for event in action.events if _offset(event) >= at)
    span = action.span
    return (
        ActionRead(tuple(head), before, Span(span.start, at), action.continues),
        ActionRead(tuple(tail), after, Span(at, span.end), True),
    )
