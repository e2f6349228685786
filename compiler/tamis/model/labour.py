"""The events of one line, sorted by kind: who asks whether a line has any of a kind looks through no others."""

from __future__ import annotations

from operator import attrgetter

from tamis.reading.clauses import (
    Cue,
    Division,
    Ingredient,
    Naming,
    Pause,
    Reference,
    Repeat,
    Setting,
    SettingKind,
    Target,
    Tending,
    Time,
    Tool,
    VerbUse,
)
from tamis.reading.plain import kept_plain, plain_of
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Fact, Verb
    from tamis.reading.clauses import Read
    from tamis.reading.plain import Plain
    from tamis.reading.reading import ActionRead, Event
    from tamis.syntax.document import Clause

_NOTHING: frozenset[Fact] = frozenset()
_TIMED = frozenset((Time, Cue, Pause))
_CLAUSE = attrgetter("clause")


class Labour:
    """The events of one line sorted by kind, each kind in their order, and what follows from them alone.

    `does` are the names of the facts of its verbs, `degrees` its settings, with the clauses that say them; `set` are
    the kinds of those that are no time's, `time` is what gives the line its length, `time_verb` the verb that this
    belongs to. `warms` is the verb of a pause that keeps its food warm. `off` tells whether the food is off the heat
    while the line waits, or only after that. `closes`: it names what it makes, or puts it by.
    """

    __slots__ = (
        "_brackets", "_texts", "action", "closes", "cues", "degrees", "divisions", "does", "events", "foods", "kinds",
        "off", "pauses", "reads", "references", "repeats", "set", "settings", "targets", "tending", "time",
        "time_verb", "times", "tools", "verbs", "warms",
    )  # fmt: skip

    def __init__(self, action: ActionRead) -> None:
        self.action = action
        self.events = action.events
        self.time: Time | Cue | Pause | None = None
        self.verbs: list[VerbUse] = []
        self.reads: list[Read] = []
        kinds: dict[type, list[Any]] = {}
        worked = 0  # so many verbs stand before what gives the time
        for event in action.events:
            if isinstance(event, VerbUse):
                self.verbs.append(event)
                continue
            self.reads.append(event)
            kind = type(event)
            if kind in kinds:
                kinds[kind].append(event)
            else:
                kinds[kind] = [event]
            if kind in _TIMED and self.time is None and _gives_time(event):
                self.time, worked = event, len(self.verbs)  # type: ignore[assignment]  # as it gives one
        self.kinds = kinds
        said = kinds.get
        self.foods: Sequence[Ingredient] = said(Ingredient, ())
        self.references: Sequence[Reference] = said(Reference, ())
        self.tools: Sequence[Tool] = said(Tool, ())
        self.divisions: Sequence[Division] = said(Division, ())
        self.targets: Sequence[Target] = said(Target, ())
        self.times: Sequence[Time] = said(Time, ())
        self.cues: Sequence[Cue] = said(Cue, ())
        self.tending: Sequence[Tending] = said(Tending, ())
        self.pauses: Sequence[Pause] = said(Pause, ())
        self.repeats: Sequence[Repeat] = said(Repeat, ())
        self.closes = Naming in kinds and any([naming.kind != "leaving" for naming in kinds[Naming]])
        self.does: frozenset[Fact] = _NOTHING.union(*[use.verb.does for use in self.verbs])
        self.settings: Sequence[Setting] = said(Setting, ())
        self.degrees = self._degrees() if self.settings or self.times or self.pauses else ()
        self.warms: Verb | None = None
        if self.pauses:
            self.settings = (*self.settings, *[pause.setting for pause in self.pauses if pause.setting])
            self.warms = next((pause.verb for pause in self.pauses if pause.verb), None)
        self.set: set[SettingKind] = {setting.kind for setting in self.settings}
        self.off: Literal["", "waiting", "after"] = _off(action.events) if "off" in self.set else ""
        self.time_verb = self._time_verb(worked) if self.verbs else None
        self._texts: list[tuple[Text, Plain]] | None = None
        self._brackets: list[Clause] = []

    def _degrees(self) -> list[tuple[Read, Setting]]:
        alone: list[tuple[Read, Setting]] = [(setting, setting) for setting in self.settings]
        others: list[Time | Pause] = [*self.times, *self.pauses]
        held = [(read, read.setting) for read in others if read.setting is not None]
        return sorted([*alone, *held], key=lambda one: self.events.index(one[0])) if held else alone

    def _time_verb(self, worked: int) -> VerbUse | None:
        """The verb that the time belongs to: its own, else the nearest before it, a waiting one if there is one."""
        warms, time = self.warms, self.time
        if time is None:
            uses = self.verbs if warms is None else [use for use in self.verbs if use.verb is not warms]
        else:
            uses = self.verbs[:worked]
            warm = warms is not None and bool(uses) and uses[-1].verb is warms
            if uses and (warm or (isinstance(time, Time) and time.verb)):
                return uses[-1]
        waiting = [use for use in uses if use.verb.waits] if "waits" in self.does else ()
        if waiting:
            return waiting[-1]
        ends = time is not None or self.cues or any([target.kind != "size" for target in self.targets])
        return uses[-1] if uses and ends else None

    def behind(self, event: Event) -> Sequence[Event]:
        """What stands behind one of them."""
        at = next((at for at, other in enumerate(self.events) if other is event), len(self.events))
        return self.events[at + 1 :]

    def clauses_of(self, use: VerbUse) -> list[Read]:
        """The clauses behind a verb, up to the next one."""
        reads: list[Read] = []
        for event in self.behind(use):
            if isinstance(event, VerbUse):
                break
            reads.append(event)
        return reads

    def texts(self, kitchen: Kitchen) -> list[tuple[Text, Plain]]:
        """The plain words of the line, each stretch with its place."""
        if self._texts is None:
            known, self._texts = kept_plain(kitchen).get, []
            for part in self.action.parts:
                if isinstance(part, Text):
                    plain = known(part.text)
                    self._texts.append((part, plain_of(part.text, kitchen) if plain is None else plain))
                else:
                    self._brackets.append(part)
        return self._texts

    def unread(self, kitchen: Kitchen) -> list[Clause]:
        """The brackets that gave no event."""
        self.texts(kitchen)
        if self._brackets == [*map(_CLAUSE, self.reads)]:
            return []
        read = {event.clause.span.start for event in self.reads}
        return [clause for clause in self._brackets if clause.span.start not in read]


def _off(events: Sequence[Event]) -> Literal["waiting", "after"]:
    """From where `[off the heat]` stands it holds: of a wait before it only if no other verb stands between."""
    verbs = 0
    waited: int | None = None
    for event in events:
        verbs += isinstance(event, VerbUse)
        if isinstance(event, Setting) and event.kind == "off":
            return "waiting" if waited is None or waited == verbs else "after"
        if waited is None and isinstance(event, Time | Cue | Target):
            waited = verbs
    return "waiting"


def _gives_time(event: Event) -> bool:
    if isinstance(event, Pause):
        return event.waits
    return isinstance(event, Time) or (isinstance(event, Cue) and event.duration is not None)
