"""What a line costs: hands-on time first, then the wait that its time, cue or target gives.

The text's own figure always comes first. Where a cue or a target alone ends a wait, its length is the kitchen's
estimate from the verb's data and the mass; a line without any time is handling.
"""

from __future__ import annotations

from fractions import Fraction
from types import MappingProxyType

from tamis.diagnostics import Diagnostic
from tamis.model.mass import NONE, ONE, Mass
from tamis.model.recipe import Work
from tamis.quantity.duration import Duration
from tamis.quantity.measure import grams
from tamis.reading.clauses import Cue, Pause, Repeat, Setting, SettingKind, Target, Tending, Time, VerbUse
from tamis.typed import TYPE_CHECKING, Any, Literal
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Container, Mapping, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.reading.reading import ActionRead, Event

Given = Literal["text", "verb", "default"]
KILO = Fraction(1000)
# Who is called again after so many seconds has no time for anything else, or goes away meanwhile; common practice.
_BUSY, _LEAVES = 60, 600
# Who stirs *often* in a wait of so many seconds does nothing else meanwhile; common practice.
_SHORT = 600
# Seconds at least for what is done to each batch, and those of work that is as long for a batch as for all; common
# practice.
_A_BATCH, _LONG = 10, 180


class Labour:
    """The events of one action sorted by kind; `set` are the kinds of its settings, `time` is what gives it its
    length, `time_verb` the verb that this belongs to. `warms` is the verb of a pause that keeps its food warm. `off`
    tells whether the food is off the heat while the line waits, or only after that."""

    __slots__ = (
        "cues",
        "off",
        "repeats",
        "set",
        "settings",
        "targets",
        "tending",
        "time",
        "time_verb",
        "verbs",
        "warms",
    )

    def __init__(self, action: ActionRead) -> None:
        kinds: dict[type, list[Any]] = {}
        for event in action.events:
            kinds.setdefault(type(event), []).append(event)
        self.verbs: list[VerbUse] = kinds.get(VerbUse, [])
        pauses: list[Pause] = kinds.get(Pause, [])
        self.settings: list[Setting] = [
            *kinds.get(Setting, []),
            *(pause.setting for pause in pauses if pause.setting),
        ]
        self.targets: list[Target] = kinds.get(Target, [])
        self.cues: list[Cue] = kinds.get(Cue, [])
        self.tending: list[Tending] = kinds.get(Tending, [])
        self.repeats: list[Repeat] = kinds.get(Repeat, [])
        self.warms = next((pause.verb for pause in pauses if pause.verb), None)
        self.set: set[SettingKind] = {setting.kind for setting in self.settings}
        self.off: Literal["", "waiting", "after"] = _off(action.events) if "off" in self.set else ""
        self.time: Time | Cue | Pause | None = None
        self.time_verb: VerbUse | None = None
        timed = Time in kinds or any([cue.duration for cue in self.cues]) or any([pause.waits for pause in pauses])
        self._find_time(action.events if timed else ())

    def _find_time(self, events: Sequence[Event]) -> None:
        """The event that gives the line its length, and the verb that it belongs to: its own, else the nearest
        before it, a waiting one if there is one."""
        before: list[VerbUse] = []
        warm = False
        for event in events:
            if isinstance(event, VerbUse):
                before.append(event)
                warm = event.verb is self.warms
            elif _gives_time(event):
                self.time = event  # type: ignore[assignment]  # as it gives one
                break
        candidates = before if self.time else [use for use in self.verbs if use.verb is not self.warms]
        waiting = [use for use in candidates if use.verb.waits]
        if before and self.time and (warm or (isinstance(self.time, Time) and self.time.verb)):
            self.time_verb = before[-1]
        elif waiting:
            self.time_verb = waiting[-1]
        elif candidates and (self.time or self._ended()):
            self.time_verb = candidates[-1]

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


def work_of(
    labour: Labour,
    mass: Mass,
    pieces: int,
    kitchen: Kitchen,
    station: Station,
    cold_water: Fraction = NONE,
    heaviest: Mass | None = None,
    by_piece: Mapping[int, int] = MappingProxyType({}),
    warmed: Fraction | None = None,
    before: Mapping[int, Mass] = MappingProxyType({}),
    batches: Fraction = ONE,
    whole: Container[int] = (),
    fine: Mapping[int, Fraction] = MappingProxyType({}),
) -> Work:
    """The work of an action on a batch of this mass, in so many pieces, at the station where it lies; `cold_water` is
    what the line puts in beside it for boiling and the like, in grams; `heaviest` the piece that a time by weight goes
    by; `by_piece` the seconds for the pieces of the food that is worked, by the place of the verb; `warmed` the
    grams that it brings to a heat, where that is not all; `before` the mass of what was in hand already, by the places
    of the verbs that work on nothing else; `batches` in how many it is done; `whole` the places of the verbs that work
    on none of its pieces; `fine` how much longer they take as finely as they cut."""
    heats = mass.lo if warmed is None else warmed
    wait, given = _wait(labour, heats, heaviest or mass, cold_water, kitchen)
    verb = labour.time_verb.verb if labour.time_verb else None
    others = [use for use in labour.verbs if not (wait and use is labour.time_verb) and use.verb is not labour.warms]
    masses = {use.span.start: before.get(use.span.start, mass) for use in others}
    handling = (
        _handling(others, labour, masses, pieces, by_piece, kitchen, batches, whole, fine) if others or not wait else 0
    )
    machine = "speed" in labour.set
    hands = verb is None or verb.attention == "hands"
    if verb is not None and verb.water_per_kg and cold_water and given == "verb":
        hands = False  # a pan of water or fat comes to its heat by itself
    if machine or station in ("oven", "bath", "fridge", "freezer"):
        hands = False
    gaps = [tending.every.lo for tending in labour.tending if tending.every]
    if any(gap >= _LEAVES for gap in gaps):
        hands = False
    if isinstance(labour.time, Time) and labour.time.hands is not None:
        hands = labour.time.hands
    if any([tending.constant for tending in labour.tending]) or any(gap <= _BUSY for gap in gaps):
        hands = True
    if wait and wait.lo <= _SHORT and any([tending.often for tending in labour.tending]):
        hands = True
    return Work(
        handling=handling,
        wait=wait,
        window=bool(wait and wait.window),
        hands=hands,
        machine=machine,
        station=station,
        given=given,
        cue=labour.cues[-1].text if labour.cues else "",
        verb=verb.base if verb else "",
    )


def _wait(
    labour: Labour, heats: Fraction, heaviest: Mass, cold_water: Fraction, kitchen: Kitchen
) -> tuple[Duration | None, Given]:
    verb = labour.time_verb.verb if labour.time_verb else None
    if labour.time is not None:
        duration = labour.time.duration
        assert duration is not None
        if isinstance(labour.time, Time):
            duration = _rated(labour.time, heaviest, kitchen)
        keeps = verb is not None and verb.keeps
        window = duration.window or (keeps and duration.lo != duration.hi)
        return duration if window == duration.window else duration._replace(window=window), "text"
    if verb is None or not (labour.cues or labour.targets or _stays_cold(verb)):
        return None, "default"
    length = Fraction(verb.estimate)
    if verb.estimate_per_kg:
        length += verb.estimate_per_kg * heats / KILO
    if verb.water_per_kg and cold_water:
        length += verb.water_per_kg * cold_water / KILO
    if not length:
        return None, "default"
    return Duration(length, length), "verb"


def _rated(time: Time, mass: Mass, kitchen: Kitchen) -> Duration:
    """A time on each side counts twice; a time per weight goes by the piece that cooks, or once if that is unknown."""
    duration = time.duration
    if time.sides:
        duration = duration.times(2)
    per = grams(time.per, kitchen.units) if time.per else None
    if per and mass.known and mass.lo:
        hi = None if duration.hi is None else duration.hi * mass.hi / per.lo
        duration = duration._replace(lo=duration.lo * mass.lo / per.hi, hi=hi)
    return duration.plus(time.plus) if time.plus else duration


def _handling(
    uses: Sequence[VerbUse],
    labour: Labour,
    masses: Mapping[int, Mass],
    pieces: int,
    by_piece: Mapping[int, int],
    kitchen: Kitchen,
    batches: Fraction,
    whole: Container[int],
    fine: Mapping[int, Fraction],
) -> int:
    """Hands-on seconds of the verbs for one batch; the house's figure for a line where the trade has no opinion."""
    total: int | Fraction = 0
    for use in uses:
        verb, mass = use.verb, masses[use.span.start]
        takes = _shared(verb.takes, batches)
        number = 1 if use.span.start in whole else pieces
        takes += max(_for_pieces(verb, number, mass), Fraction(by_piece.get(use.span.start, 0)) / batches)
        if use.span.start not in by_piece and not verb.divides and verb.per_kg:
            takes += verb.per_kg * mass.lo / KILO / batches
        total += takes * fine.get(use.span.start, ONE)
    if not total:
        return int(_shared(kitchen.settings.kitchen.handling, batches)) if labour.time is None else 0
    return int(total)


def _shared(takes: int, batches: Fraction) -> Fraction:
    """A batch's share of work that is told for all; what takes long (kneading) does so however little there is."""
    whole = Fraction(takes)
    return whole if batches == ONE or takes >= _LONG else max(whole / batches, Fraction(min(takes, _A_BATCH)))


def _for_pieces(verb: Verb, pieces: int, mass: Mass) -> Fraction:
    """Seconds for the pieces that a batch lies in: small ones are worked faster, unless each is cut off."""
    takes = Fraction(verb.per_piece * max(1, pieces))
    if not verb.most_per_kg or verb.divides or not mass.known:
        return takes
    return min(takes, max(Fraction(verb.per_piece), verb.most_per_kg * mass.hi / KILO))


def _likely(verb: Verb) -> str:
    """A time as this work often takes, to be put right by the cook."""
    from tamis.quantity.times import duration

    return duration(Fraction(verb.estimate or 600))


def missing_times(action: ActionRead, labour: Labour, kitchen: Kitchen) -> list[Diagnostic]:
    """A waiting verb in a line without a time, a cue or a target: a stranger would not know when to stop."""
    if labour.time is not None or labour.cues or labour.targets:
        return []
    waiting = [use for use in labour.verbs if use.verb.waits]
    if not waiting:
        return []
    from tamis.reading.bracketed import bracketed

    use = waiting[-1]
    message = f"“{use.text}” needs a time, a cue or a target in its line"
    verb = use.verb.name if use.verb.stands else use.text.lower()
    wait = example(kitchen.language, "wait", verb=verb, time=_likely(use.verb))
    hint = f"how long, or until what? {wait}, or what to look for: {example(kitchen.language, 'until_any')}"
    if use.verb.lets:
        hint = f"{hint}; if nothing waits here, say so: {example(kitchen.language, 'lid')}"
    line = bracketed(action.parts, kitchen)
    if line:
        hint = f"only what stands in brackets is read: `{line}`"
    return [Diagnostic("verb-without-time", "warning" if _stays_cold(use.verb) else "error", use.span, message, hint)]


def _stays_cold(verb: Verb) -> bool:
    """*Cover and chill*: what stays in the fridge until it is wanted; nothing goes wrong with it, and the plan takes
    the verb's estimate."""
    return verb.cools and verb.keeps and verb.station == "fridge"
