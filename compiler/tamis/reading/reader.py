"""From a document to a `Reading`: every clause gets its role and record, every line its verbs.

A clause that cannot be read is one finding and is left out; the rest of the line counts all the same.
"""

from __future__ import annotations

from itertools import takewhile

from tamis.diagnostics import Diagnostic, Label
from tamis.kitchen.house import Kitchen
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import (
    Cue,
    Division,
    Ingredient,
    Pause,
    Reference,
    Repeat,
    Target,
    Tending,
    Time,
    Tool,
    VerbUse,
)
from tamis.reading.header import read_header
from tamis.reading.plain import kept_plain, plain_of
from tamis.reading.prose import (
    carried_on,
    fills_each,
    goes_into_each,
    next_work,
    placed_station,
    preposition_before,
    prose_words,
    purpose_before,
    waited,
    work_and_place,
)
from tamis.reading.reading import (
    ActionRead,
    ComponentRead,
    Event,
    Reading,
    StepRead,
    WaitingRead,
)
from tamis.reading.repeated import end_of_repeated, start_of_repeated
from tamis.reading.tables import tables
from tamis.source import Span
from tamis.syntax.document import Action, Ahead, Clause, ComponentNode, Document, Remark, Step, Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clauses import Read
    from tamis.reading.plain import Plain, kept_plain
    from tamis.reading.prose import Command, ProseWords, Station
    from tamis.syntax.document import Part

_TIMED = (Time, Cue, Pause)
_RIGHT_BEHIND = len(" into the ")


def read(document: Document, kitchen: Kitchen) -> tuple[Reading, list[Diagnostic]]:
    """The document read, and what cannot be understood in it."""
    findings: list[Diagnostic] = []
    header = read_header(document, kitchen, findings)
    reader = _Reader(kitchen, findings)
    if document.components:
        components = tuple(reader.component(node) for node in document.components)
        return Reading(document, header, document.headnote, components), findings
    headnote, only = reader.without_headings(document, header.title)
    return Reading(document, header, headnote, (only,) if only else ()), findings


class _Reader:
    """Reads components one after another; holds the kitchen and the findings."""

    __slots__ = ("_each", "_kept", "_nothing", "findings", "kitchen", "words")

    def __init__(self, kitchen: Kitchen, findings: list[Diagnostic]) -> None:
        self.kitchen = kitchen
        self.findings = findings
        self._each = tables(kitchen.language).each
        self._nothing = plain_of("", kitchen)
        self._kept = kept_plain(kitchen)
        self.words = prose_words(kitchen.language)

    def component(self, node: ComponentNode) -> ComponentRead:
        """A heading with its steps; a remark belongs to the step before it, or to the component."""
        steps: list[StepRead] = []
        remarks: list[Remark] = []
        ahead: list[WaitingRead] = []
        for block in node.blocks:
            if isinstance(block, Step):
                steps.append(self.step(block))
            elif isinstance(block, Ahead):
                ahead.append(WaitingRead(self._action(block.action), block.span))
            elif steps:
                steps[-1] = steps[-1]._replace(remarks=(*steps[-1].remarks, block))
            else:
                remarks.append(block)
        return ComponentRead(node.name, node.heading, tuple(steps), tuple(remarks), tuple(ahead))

    def without_headings(self, document: Document, title: str) -> tuple[str, ComponentRead | None]:
        """The headnote and the only component: it begins with the first paragraph that holds a clause of known role."""
        blocks = document.opening.blocks
        steps = [block for block in blocks if isinstance(block, Step)]
        first = next(filter(self._holds_clauses, steps), None) or next(filter(_has_brackets, steps), None)
        for at, block in enumerate(blocks):
            if isinstance(block, Step) and block is first:
                headnote = document.source.text[blocks[0].span.start : block.span.start].strip()
                return headnote, self.component(ComponentNode(title, None, blocks[at:]))
        if not blocks:
            return "", None
        return document.source.text[blocks[0].span.start : blocks[-1].span.end], None

    def _holds_clauses(self, step: Step) -> bool:
        """Whether a paragraph holds a clause that can be read; one of plain words is a headnote."""
        clauses = [clause for action in step.actions for clause in action.clauses() if not clause.broken]
        return any(read_clause(clause, self.kitchen, []) for clause in clauses)

    def step(self, step: Step) -> StepRead:
        """A paragraph: its lines, those with a `then` between two times as two actions."""
        actions: list[ActionRead] = []
        for action in step.actions:
            actions.extend(self._split(self._action(action)))
        return StepRead(tuple(actions), (), step.span)

    def _action(self, action: Action) -> ActionRead:
        events: list[Event] = []
        timed = False
        parts = action.parts
        kept, nothing = self._kept, self._nothing
        plain = [
            kept.get(part.text) or plain_of(part.text, self.kitchen) if isinstance(part, Text) else nothing
            for part in parts
        ]
        plain.append(nothing)
        for at, part in enumerate(parts):
            if isinstance(part, Text):
                said = plain[at].ask(work_and_place)
                if said:
                    events += self._plain(*said, part.span.start, at + 1 < len(parts), timed)
            else:
                read = self._clause(part, events, plain[at - 1] if at else nothing, plain[at + 1])
                timed = timed or any(map(_gives_time, read))
                events += read
        if not timed and any([isinstance(event, VerbUse) and event.verb.waits for event in events]):
            from tamis.reading.idle import without_idle

            events = without_idle(parts, events, self.kitchen)
        return ActionRead(parts, tuple(events), action.span)

    def _plain(
        self, work: tuple[Command, ...], place: Station | None, start: int, clause_follows: bool, timed: bool
    ) -> list[Event]:
        """The verbs of plain words, the station that one of them heats, and the fridge that the food goes into; after a
        time only right behind it: *cool for 3 h, then keep in the fridge* cools nothing there."""
        events: list[Event] = []
        for command in work:
            if clause_follows or not command.asks:
                events.append(command.use(start))
                if command.station:
                    events.append(placed_station(command.station, start, self.kitchen.language))
        if place and (not timed or place.start <= _RIGHT_BEHIND):
            events.append(placed_station(place, start, self.kitchen.language, self.words.within))
        return events

    def _clause(self, clause: Clause, earlier: Sequence[Event], before: Plain, after: Plain) -> list[Event]:
        if clause.broken:
            return []
        records = read_clause(clause, self.kitchen, self.findings, before.text)
        if len(records) == 1 and not isinstance(records[0], VerbUse):
            return self._in_its_place(records[0], clause, earlier, before, after)
        return [event for record in records for event in (*self._worked(record), record)]

    def _in_its_place(
        self, record: Read, clause: Clause, earlier: Sequence[Event], before: Plain, after: Plain
    ) -> list[Event]:
        """A record with what the words round its bracket say of it."""
        if isinstance(record, Ingredient):
            purpose = "" if record.purpose else self._purpose(record, earlier, before)
            return [record._replace(purpose=purpose) if purpose else record]
        if isinstance(record, _TIMED):
            return self._timed(record, clause, earlier, before)
        if isinstance(record, Division) and not self._each.isdisjoint(before.said):
            return [record._replace(of_each=True)]
        if isinstance(record, Reference):
            record = _for_each(record, before, after)
            preposition = "" if record.preposition else before.ask(preposition_before)
            return [record._replace(preposition=preposition) if preposition else record]
        if isinstance(record, Tool) and not record.preposition:
            return [record._replace(preposition=before.ask(preposition_before))]
        return [record]

    def _timed(
        self, record: Time | Cue | Pause, clause: Clause, earlier: Sequence[Event], before: Plain
    ) -> list[Event]:
        """A time with the verb of its clause, or with what the words before its bracket wait for."""
        if record.verb:
            return [*self._worked(record), record]
        command = None if isinstance(record, Pause) else before.ask(waited)
        if isinstance(record, Time) and not any([isinstance(event, VerbUse) for event in earlier]):
            command = command or before.ask(carried_on)
        if command is None:
            return [record]
        wait = command.use(clause.span.start - len(before.text))
        last = earlier[-1] if earlier else None
        said = isinstance(last, VerbUse) and last.span.end >= wait.span.start  # *leave to rise*
        return [record] if said else [wait, record]

    def _worked(self, record: Event) -> list[Event]:
        """The verb that a time begins with, as a verb of the line."""
        if not isinstance(record, _TIMED) or record.verb is None:
            return []
        at = record.clause.inner
        return [VerbUse(record.verb, record.verb_text, Span(at, at + len(record.verb_text)))]

    def _purpose(self, record: Ingredient, earlier: Sequence[Event], before: Plain) -> str:
        """The purpose that the verb gives: a participle right before the bracket, or the verb of the line for
        unmeasured goods. Dusting or greasing takes even a measured food out of the batch."""
        purpose = before.ask(purpose_before)
        if not purpose and record.role == "unmeasured":
            uses = [event.verb for event in earlier if isinstance(event, VerbUse)]
            purpose = next((verb.purpose for verb in reversed(uses) if verb.purpose), "")
        if record.role == "ingredient" and not purpose.startswith(self.words.purpose):
            return ""
        return purpose

    def _split(self, action: ActionRead) -> list[ActionRead]:
        """Two times in a line parted by `then` are two actions; two without are one finding."""
        timed: list[Event] = []
        again = None
        for event in action.events:
            if isinstance(event, Repeat):
                again = again or start_of_repeated(action) or end_of_repeated(action)
            elif _gives_time(event):
                timed.append(event)
        if again is not None:
            head, tail = _cut(action, again)
            return [head, *self._split(tail)]
        if len(timed) < 2:
            if not timed:
                return [action]
            at = _end_of_first_wait(action, timed[0])
            if at is not None:
                head, tail = _tended(*_cut(action, at))
                return [head, *self._split(tail)]
            at = _start_of_next_wait(action, timed[0], self.words)
            return [action] if at is None else list(_cut(action, at))
        first, second = timed[0], timed[1]
        assert not isinstance(first, VerbUse) and not isinstance(second, VerbUse)
        at = self._then(action.parts, first.clause.span.end, second.clause.span.start)
        if at is None and isinstance(second, Pause):  # food is kept warm when it is done
            at = second.clause.span.start
        if at is None:
            hint = "two actions are two lines; or part them by *then*; of two ways to do it, bracket one"
            message = "a second time in one line: the first is already its length"
            label = Label(first.clause.span, "the first time")
            self.findings.append(Diagnostic("two-times", "error", second.clause.span, message, hint, (label,)))
            kept = tuple(event for event in action.events if event is first or not _gives_time(event))
            return [action._replace(events=kept)]
        head, tail = _cut(action, at)
        return [head, *self._split(tail)]

    def _then(self, parts: Sequence[Part], start: int, end: int) -> int | None:
        """Where `then` stands in the plain words between two offsets, or where a sentence begins."""
        for part in parts:
            if isinstance(part, Text) and start <= part.span.start < end:
                found = next_work(plain_of(part.text, self.kitchen))
                if found is not None:
                    return part.span.start + found
        return None


def _has_brackets(step: Step) -> bool:
    """Whether a paragraph has clauses: where none can be read, each is told what is wrong with it."""
    return any(action.clauses() for action in step.actions)


def _for_each(reference: Reference, before: Plain, after: Plain) -> Reference:
    """`[1 tsp of the filling] in the middle of each`: so much for every piece, and in the end all of it."""
    share = reference.share
    if share is None or share.kind != "measure":
        return reference
    if not (goes_into_each(after) or fills_each(before)):
        return reference
    return reference._replace(share=None)


def _end_of_first_wait(action: ActionRead, timed: Event) -> int | None:
    """Where a wait for a target ends in a line that has a time for another verb: `bring [to the boil] and [simmer for
    20 min]` are two waits, and coming to the boil takes its time. What is kept warm was done before, whatever told."""
    waiting: VerbUse | None = None
    reached: int | None = None
    done = again = False
    for event in action.events:
        if event is timed:
            return event.clause.span.start if done and isinstance(event, Pause) else reached if again else None
        done = done or isinstance(event, Cue | Target)
        if isinstance(event, VerbUse):
            if reached is not None:
                again = True
                continue
            waiting = event if event.verb.estimate and (event.verb.waits or event.verb.sets) else None
        elif isinstance(event, Target) and event.kind != "size" and waiting is not None:
            reached = event.clause.span.end
    return None


def _start_of_next_wait(action: ActionRead, timed: Event, words: ProseWords) -> int | None:
    """Where another wait begins after the one that is timed: `[simmer for 10 min] and leave to cool`."""
    events = iter(action.events)
    for event in events:
        if event is timed:
            break
    waits = (event for event in events if isinstance(event, VerbUse) and event.verb.waits)
    return next((use.span.start for use in waits if not _is_alternative(action, use, words)), None)


def _is_alternative(action: ActionRead, use: VerbUse, words: ProseWords) -> bool:
    """`[chill for up to 2 days], or freeze`: no work of this line."""
    part = next((part for part in action.parts if part.span.start <= use.span.start < part.span.end), None)
    return isinstance(part, Text) and part.text[: use.span.start - part.span.start].rstrip().endswith(words.alternative)


def _tended(head: ActionRead, tail: ActionRead) -> tuple[ActionRead, ActionRead]:
    """`bring [to a simmer], [whisking all the time], and [cook for 5 min]`: the whisking is for both."""
    tending = list(takewhile(lambda event: isinstance(event, Tending), tail.events))
    return head._replace(events=(*head.events, *tending)), tail


def _gives_time(event: Event) -> bool:
    if not isinstance(event, _TIMED):
        return False
    if isinstance(event, Pause):
        return event.waits
    return event.duration is not None


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
