"""From a document to a `Reading`: every clause gets its role and record, every line its verbs.

A clause that cannot be read is one finding and is left out; the rest of the line counts all the same.
"""

from __future__ import annotations

from itertools import takewhile

from tamis.diagnostics import Diagnostic
from tamis.kitchen.equipment import HOLDS, MADE_READY
from tamis.kitchen.house import Kitchen
from tamis.reading.clause import WORDS_ONLY, clause_words
from tamis.reading.clause_reader import read_clause
from tamis.reading.clauses import (
    Cue,
    Division,
    Ingredient,
    Pause,
    Reference,
    Time,
    Tool,
    VerbUse,
)
from tamis.reading.header import read_header
from tamis.reading.parting import TIMED, parted, times_in
from tamis.reading.pieces import as_pieces
from tamis.reading.plain import kept_plain, plain_of
from tamis.reading.prose import (
    carried_on,
    commands,
    done_before,
    fills_each,
    goes_into_each,
    placed_station,
    preposition_before,
    prose_words,
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
from tamis.reading.tables import tables
from tamis.source import Span
from tamis.syntax.document import Action, Ahead, Clause, ComponentNode, Document, Part, Remark, Step, Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station as Heater
    from tamis.reading.clauses import Read
    from tamis.reading.plain import Plain
    from tamis.reading.prose import Command, Station

_RIGHT_BEHIND = len(" into the ")
_OPENS = 8  # so far from the beginning of a line stands what is made ready
_THINGS = (Tool, Reference)
_ON_HEAT: tuple[Heater, ...] = ("ring", "bath")
_PAIR = 2  # a clause and the words before it
_FOR_EACH = 3  # fewer words than these are no more than *for each*


def read(document: Document, kitchen: Kitchen) -> tuple[Reading, list[Diagnostic]]:
    """The document read, and what cannot be understood in it."""
    findings: list[Diagnostic] = []
    header = read_header(document, kitchen, findings)
    reader = _Reader(kitchen, findings)
    if document.components:
        headnote = document.headnote
        components = tuple(reader.component(node) for node in document.components)
    else:
        headnote, only = reader.without_headings(document, header.title)
        components = (only,) if only else ()
    if any([finding.rule == WORDS_ONLY for finding in findings]):
        from tamis.reading.words_only import with_made

        with_made(findings, document, components, kitchen.language)
    return Reading(document, header, headnote, components), findings


class _Reader:
    """Reads components one after another; holds the kitchen and the findings."""

    __slots__ = ("_each", "_kept", "_nothing", "_shares", "findings", "kitchen", "of_equipment", "words")

    def __init__(self, kitchen: Kitchen, findings: list[Diagnostic]) -> None:
        self.kitchen = kitchen
        self.findings = findings
        self._each = tables(kitchen.language).each | prose_words(kitchen.language).each
        self._nothing = plain_of("", kitchen)
        self._kept = kept_plain(kitchen)
        self._shares = tables(kitchen.language).shares
        self.words = prose_words(kitchen.language)
        self.of_equipment = False

    def component(self, node: ComponentNode) -> ComponentRead:
        """A heading with its steps; a remark belongs to the step before it, or to the component."""
        steps: list[StepRead] = []
        remarks: list[Remark] = []
        ahead: list[WaitingRead] = []
        self.of_equipment = self.kitchen.cupboard.find(node.name.split()) is not None
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
            read = self._action(action)
            for event in read.events:
                if isinstance(event, Time) and event.verb_text:
                    self._in_plain_form(event)
            actions.extend(parted(read, self.kitchen, self.findings))
        return StepRead(tuple(actions), (), step.span)

    def _in_plain_form(self, time: Time) -> None:
        """Work that may be done (*it can be chilled for up to 2 days*) is told ahead; a method tells what to do."""
        said = time.verb_text
        if time.verb is None or said.partition(" ")[0].lower() in self.kitchen.verbs.first_words:
            return
        message = f"“{said}” tells what may be done, or was: a method tells what to do"
        plain = f"[{time.verb.name}{time.text.strip()[len(said) :]}]"
        self.findings.append(Diagnostic("clause-role", "error", time.clause.span, message, f"write `{plain}`"))

    def _action(self, action: Action) -> ActionRead:
        events: list[Event] = []
        timed = done = False
        parts, plain = self._cut(action.parts)
        nothing = self._nothing
        plain.append(nothing)
        for at, part in enumerate(parts):
            if isinstance(part, Text):
                words = plain[at]
                if events and events[-1].__class__ is Reference and words.said:
                    self._whole_verb(events, words.said[0])
                said = words.ask(work_and_place)
                if said:
                    events += self._plain(*said, part.span.start, at + 1 < len(parts), timed, done)
            else:
                read = self._clause(part, events, plain[at - 1] if at else nothing, plain[at + 1])
                self._verb_up_to(events, read, plain[at - 1].said[-1:])
                if times_in(read):
                    timed = done = True
                elif _says_where_it_waits(events, read):
                    done = True
                elif done:
                    done = not any([isinstance(event, Ingredient | Reference) for event in read])
                events += read
                if read and isinstance(read[-1], Ingredient) and read[-1].for_each is not None:
                    self._with_those_before(parts, at, events, plain)
        or_else = self.words.or_else
        if any([words is not nothing and not or_else.isdisjoint(words.said) for words in plain]):
            from tamis.reading.other_ways import without_alternatives

            events = without_alternatives(parts, events, self.kitchen)
        uses = [event.verb for event in events if event.__class__ is VerbUse]
        if any([verb.on_heat for verb in uses]):
            events = self._on_the_heat(events)
        if any([verb.waits and (verb.carries or not timed) for verb in uses]):
            from tamis.reading.idle import without_carried, without_idle

            waiting = without_carried if timed else without_idle
            events = waiting(parts, events, self.kitchen, self.findings)
        return ActionRead(parts, tuple(events), action.span)

    def _cut(self, parts: tuple[Part, ...]) -> tuple[tuple[Part, ...], list[Plain]]:
        """The parts of a line and their plain words; a share that stands right before its bracket is in its clause."""
        kept, nothing, shares = self._kept, self._nothing, self._shares
        plain = [
            kept.get(part[0]) or plain_of(part[0], self.kitchen) if part.__class__ is Text else nothing
            for part in parts
        ]
        if not any([bool(words.said) and words.said[-1] in shares for words in plain[:-1]]):
            return parts, plain
        from tamis.reading.shared_before import with_share

        joined: list[Part] = []
        for at, part in enumerate(parts):
            before = joined[-1] if joined else None
            if isinstance(part, Clause) and isinstance(before, Text) and before.text and not part.broken:
                joined[-1:] = with_share(before, plain[at - 1], part, self.kitchen) or (before, part)
            else:
                joined.append(part)
        return tuple(joined), [
            plain_of(part.text, self.kitchen) if isinstance(part, Text) else nothing for part in joined
        ]

    def _on_the_heat(self, events: list[Event]) -> list[Event]:
        """*Process in a canner*: the verb that it is there; with a blade it stays what it was."""
        tools = [event.equipment for event in events if isinstance(event, Tool)]
        if not any([tool.station in _ON_HEAT for tool in tools]) or any([tool.kind == "tool" for tool in tools]):
            return events
        return [self._as_heated(event) for event in events]

    def _as_heated(self, event: Event) -> Event:
        if not isinstance(event, VerbUse | Time | Cue) or event.verb is None or not event.verb.on_heat:
            return event
        verb = self.kitchen.verbs.of_base(event.verb.on_heat)
        return event if verb is None else event._replace(verb=verb)

    def _whole_verb(self, events: list[Event], particle: str) -> None:
        """*Lift [the legs] out*: the verb has its last word behind the clause."""
        if particle not in self.words.behind or len(events) < 2:
            return
        use = events[-2]
        if not isinstance(use, VerbUse):
            return
        verb = self.kitchen.verbs.get(f"{use.text.lower()} {particle}")
        if verb is not None:
            events[-2] = use._replace(verb=verb)

    def _verb_up_to(self, events: list[Event], read: Sequence[Event], last: Sequence[str]) -> None:
        """*Roll them in [sugar]*: a verb that adds food only by the word right before that."""
        if not (events and last and read and isinstance(read[0], Ingredient | Reference)):
            return
        at = next((at for at in (-1, -2) if len(events) >= -at and isinstance(events[at], VerbUse)), 0)
        use = events[at]
        if not at or not isinstance(use, VerbUse) or use.verb.adds or not last[0].isalpha():
            return
        verb = self.kitchen.verbs.get(f"{use.text.lower()} {last[0]}")
        if verb is not None and verb.adds:
            events[at] = use._replace(verb=verb)

    def _plain(
        self,
        work: tuple[Command, ...],
        place: Station | None,
        start: int,
        clause_follows: bool,
        timed: bool,
        done: bool,
    ) -> list[Event]:
        """The verbs of plain words, the station that one of them heats, and the fridge that the food goes into; after a
        time only right behind it: *cool for 3 h, then keep in the fridge* cools nothing there. `done` is set where a
        wait is over, or its place said, and no food was named since."""
        events: list[Event] = []
        for command in work:
            if command.stands(clause_follows, done):
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
        foods = [record for record in records if isinstance(record, Ingredient)]
        if foods and len(foods) == len(records):
            return [event for food in foods for event in self._in_its_place(food, clause, earlier, before, after)]
        return [event for record in records for event in (*self._worked(record), record)]

    def _in_its_place(
        self, record: Read, clause: Clause, earlier: Sequence[Event], before: Plain, after: Plain
    ) -> list[Event]:
        """A record with what the words round its bracket say of it."""
        if isinstance(record, Ingredient):
            purpose = "" if record.purpose else self._purpose(record, earlier, before, after)
            record = record._replace(purpose=purpose) if purpose else record
            return [self._of_each(record, earlier, before, after)]
        if isinstance(record, TIMED):
            return self._timed(record, clause, earlier, before)
        if isinstance(record, Tool) and self._cut_into(record, earlier):
            record = as_pieces(record)
        if isinstance(record, Division) and record.food and _fills(earlier):
            return [record.food]
        if isinstance(record, Division) and not self._each.isdisjoint(before.said):
            return [record._replace(of_each=True)]
        if isinstance(record, Reference):
            record = _for_each(record, before, after)
            preposition = "" if record.preposition else before.ask(preposition_before)
            return [record._replace(preposition=preposition) if preposition else record]
        if isinstance(record, Tool) and not record.preposition:
            return [record._replace(preposition=before.ask(preposition_before))]
        return [record]

    def _cut_into(self, tool: Tool, earlier: Sequence[Event]) -> bool:
        """*Cut them [into 14 rings]*: several of a thing that holds no food are pieces, where its verb makes some."""
        verbs = [event.verb for event in earlier if isinstance(event, VerbUse)]
        into = tool.number > 1 and tool.preposition in tables(self.kitchen.language).dividing and not tool.size
        holds = tool.equipment.kind in HOLDS
        return into and not holds and bool(verbs) and verbs[-1].divides

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
        if not isinstance(record, TIMED) or record.verb is None:
            return []
        at = record.clause.inner
        return [VerbUse(record.verb, record.verb_text, Span(at, at + len(record.verb_text)))]

    def _of_each(self, food: Ingredient, earlier: Sequence[Event], before: Plain, after: Plain) -> Ingredient:
        """A measure that each of several gets, with what these are: `[1 olive] on each`, `[50 g sauce for each]`."""
        noun, each = food.for_each, self.words.each
        last = earlier[-1] if earlier else None
        goes_on = isinstance(last, Ingredient) and last.for_each is not None
        told = goes_on or noun is not None or food.purpose
        if not food.measures or (not told and each.isdisjoint(before.said) and each.isdisjoint(after.said)):
            return food
        if noun is None and (said := food.purpose.split(" "))[-1] in self.words.each and len(said) < _FOR_EACH:
            food, noun = food._replace(purpose="", purpose_spans=()), ""
        if noun is None and not (before.said and before.said[-1] in self.words.of):  # a slice of [60 g butter] on each
            noun = goes_into_each(after)
        if noun is None:
            noun = fills_each(before)
        if noun is None and isinstance(last, Ingredient) and self._only_joins(before):
            noun = last.for_each  # top each with [50 g sauce] and [40 g cheese]
        return food if noun is None else food._replace(for_each=noun)

    def _only_joins(self, plain: Plain) -> bool:
        return bool(plain.said) and all(word in self.words.joined for word in plain.said)

    def _with_those_before(self, parts: Sequence[Part], at: int, events: list[Event], plain: Sequence[Plain]) -> None:
        """`[1 olive] and [2 basil leaves] on each`: what stands before an *and* goes on each, too."""
        last = events[-1]
        if not isinstance(last, Ingredient) or goes_into_each(plain[at + 1]) is None:
            return
        while at >= _PAIR and self._only_joins(plain[at - 1]):
            at -= _PAIR
            for n, event in enumerate(events):
                if isinstance(event, Ingredient) and event.clause is parts[at] and event.measures:
                    events[n] = event._replace(for_each=last.for_each)

    def _purpose(self, record: Ingredient, earlier: Sequence[Event], before: Plain, after: Plain) -> str:
        """The purpose that the verb gives: a participle right before the bracket, or the verb of the line for
        unmeasured goods. Dusting or greasing takes even a measured food out of the batch."""
        done = before.ask(done_before)
        purpose = done.purpose if done else ""
        if not purpose and record.role == "unmeasured":
            uses = [event.verb for event in earlier if isinstance(event, VerbUse)]
            begun = takewhile(lambda verb: not verb.heat, reversed(uses))  # dredge with [flour] and fry [in lard]
            purpose = next((verb.purpose for verb in begun if verb.purpose), "")
            if not purpose and uses and uses[-1].over and after.phrase(self.words.over, 0):
                purpose = uses[-1].over
            slab = done and _behind_tool(earlier, before)  # a marble slab brushed with oil
            if not purpose and (slab or (_is_fat(record) and _works_on_tool(earlier))):  # rub [a rack] with [butter]
                purpose = clause_words(self.kitchen.language).as_needed
        if record.role == "ingredient" and not purpose.startswith(self.words.purpose):
            if not _makes_ready(earlier, self.of_equipment):
                return ""
            given = (event.verb.purpose for event in reversed(earlier) if isinstance(event, VerbUse))
            return next(filter(None, given), clause_words(self.kitchen.language).as_needed)
        return purpose


def _fills(earlier: Sequence[Event]) -> bool:
    """*Spoon it [into 6 peppers]*, *stir it [into 3 yolks]*: a verb that puts something there makes no pieces of it."""
    verbs = [event.verb for event in earlier if isinstance(event, VerbUse)]
    if not verbs or verbs[-1].divides:
        return False
    return verbs[-1].adds and (verbs[-1].moves or not verbs[-1].doubtful)


def _makes_ready(earlier: Sequence[Event], of_equipment: bool) -> bool:
    """Whether a line makes a piece of equipment ready: what it takes for that stays at the tin, be it weighed or not.
    Dough or bread that lines a tin is food, unless all that the component does is to make a tin ready."""
    tool = _works_on_tool(earlier)
    if tool is None or tool.definite or tool.equipment.kind not in MADE_READY:
        return False
    verb = next((event.verb for event in earlier[:_OPENS] if isinstance(event, VerbUse)), None)
    if verb is None:
        return False
    if verb.greases or (of_equipment and verb.coats):
        return True
    return bool(verb.purpose) and (of_equipment or tool.equipment.kind == "surface")


def _works_on_tool(earlier: Sequence[Event]) -> Tool | None:
    """The piece of equipment that a line's work is done to."""
    first = next((event for event in earlier[:_OPENS] if event.__class__ in _THINGS), None)
    return first if isinstance(first, Tool) and not first.preposition else None


def _is_fat(food: Ingredient) -> bool:
    return food.goods is not None and food.goods.role == "fat"


def _behind_tool(earlier: Sequence[Event], before: Plain) -> bool:
    """Whether a piece of equipment is what was named last, in a bracket or in these plain words."""
    from tamis.reading.plain_tools import placed_tools

    work = max((command.start for command in before.ask(commands)), default=-1)
    tools = [placed.span.start for placed in before.ask(placed_tools)]
    return tools[-1] > work if tools else work < 0 and bool(earlier) and isinstance(earlier[-1], Tool)


def _has_brackets(step: Step) -> bool:
    """Whether a paragraph has clauses: where none can be read, each is told what is wrong with it."""
    return any(action.clauses() for action in step.actions)


def _for_each(reference: Reference, before: Plain, after: Plain) -> Reference:
    """`[1 tsp of the filling] in the middle of each`: so much for every piece, and in the end all of it."""
    share = reference.share
    if share is None or share.kind != "measure":
        return reference
    if goes_into_each(after) is None and fills_each(before) is None:
        return reference
    return reference._replace(share=None)


def _says_where_it_waits(earlier: Sequence[Event], read: Sequence[Event]) -> bool:
    """Whether a bracket is the place of a wait: `cool [under cold water], peel and slice`."""
    use = earlier[-1] if earlier else None
    waits = isinstance(use, VerbUse) and use.verb.waits
    return waits and all(isinstance(one, Ingredient | Tool) and bool(one.preposition) for one in read)
