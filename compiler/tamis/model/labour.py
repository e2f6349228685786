"""The events of one line, sorted by kind: who asks whether a line has any of a kind looks through no others."""

from __future__ import annotations

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
from tamis.syntax.document import Clause, Text
from tamis.typed import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Read
    from tamis.reading.plain import Plain
    from tamis.reading.reading import ActionRead, Event

_NOTHING: frozenset[str] = frozenset()


class Labour:
    """The events of one line sorted by kind, each kind in their order, and what follows from them alone.

    `does` are the names of the facts of its verbs, `degrees` its settings, with the clauses that say them; `set` are
    the kinds of those that are no time's, `time` is what gives the line its length, `time_verb` the verb that this
    belongs to. `warms` is the verb of a pause that keeps its food warm. `off` tells whether the food is off the heat
    while the line waits, or only after that. `closes`: it names what it makes, or puts it by.
    """

    __slots__ = (
        "_texts", "action", "closes", "cues", "degrees", "divisions", "does", "events", "foods", "kinds", "off",
        "pauses", "references", "repeats", "set", "settings", "targets", "tending", "time", "time_verb", "times",
        "tools", "verbs", "warms",
    )  # fmt: skip

    def __init__(self, action: ActionRead) -> None:
        self.action = action
        self.events = action.events
        kinds: dict[type, list[Any]] = {}
        for event in action.events:
            kind = type(event)
            if kind in kinds:
                kinds[kind].append(event)
            else:
                kinds[kind] = [event]
        self.kinds = kinds
        said = kinds.get
        self.verbs: list[VerbUse] = said(VerbUse, [])
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
        self.does: frozenset[str] = _NOTHING.union(*[use.verb.does for use in self.verbs])
        self.degrees = self._degrees() if Setting in kinds or Time in kinds or Pause in kinds else ()
        self.settings = [*said(Setting, ()), *[pause.setting for pause in self.pauses if pause.setting]]
        self.set: set[SettingKind] = {setting.kind for setting in self.settings}
        self.warms = next((pause.verb for pause in self.pauses if pause.verb), None) if self.pauses else None
        self.off: Literal["", "waiting", "after"] = _off(action.events) if "off" in self.set else ""
        self.time: Time | Cue | Pause | None = None
        self.time_verb: VerbUse | None = None
        self._find_time()
        self._texts: list[tuple[Text, Plain]] | None = None

    def _degrees(self) -> list[tuple[Read, Setting]]:
        kinds = (Setting, Time, Pause)
        told = [event for event in self.events if isinstance(event, kinds)]
        both = [(read, read if isinstance(read, Setting) else read.setting) for read in told]
        return [(read, setting) for read, setting in both if setting is not None]

    def _find_time(self) -> None:
        """The event that gives the line its length, and the verb that it belongs to: its own, else the nearest
        before it, a waiting one if there is one."""
        before: list[VerbUse] = []
        if self.times or any([cue.duration for cue in self.cues]) or any([pause.waits for pause in self.pauses]):
            for event in self.events:
                if isinstance(event, VerbUse):
                    before.append(event)
                elif _gives_time(event):
                    self.time = event  # type: ignore[assignment]  # as it gives one
                    break
        warms = self.warms
        candidates = before if self.time else [use for use in self.verbs if use.verb is not warms]
        waiting = [use for use in candidates if use.verb.waits] if "waits" in self.does else ()
        warm = warms is not None and bool(before) and before[-1].verb is warms
        if before and self.time and (warm or (isinstance(self.time, Time) and self.time.verb)):
            self.time_verb = before[-1]
        elif waiting:
            self.time_verb = waiting[-1]
        elif candidates and (self.time or self._ended()):
            self.time_verb = candidates[-1]

    def texts(self, kitchen: Kitchen) -> list[tuple[Text, Plain]]:
        """The plain words of the line, each stretch with its place."""
        if self._texts is None:
            known = kept_plain(kitchen).get
            texts = [part for part in self.action.parts if isinstance(part, Text)]
            self._texts = [(part, known(part.text) or plain_of(part.text, kitchen)) for part in texts]
        return self._texts

    def unread(self) -> list[Clause]:
        """The brackets that gave no event."""
        read = {event.clause.span.start for event in self.events if not isinstance(event, VerbUse)}
        return [part for part in self.action.parts if isinstance(part, Clause) and part.span.start not in read]

    def _ended(self) -> bool:
        return bool(self.cues) or any([target.kind != "size" for target in self.targets])


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
