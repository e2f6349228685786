"""What a line costs: hands-on time first, then the wait that its time, cue or target gives.

The text's own figure always comes first. Where a cue or a target alone ends a wait, its length is the kitchen's
estimate from the verb's data and the mass; a line without any time is handling.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.diagnostics import Diagnostic
from tamis.model.mass import ONE, Mass
from tamis.model.recipe import Work
from tamis.model.words import model_words
from tamis.quantity.duration import Duration
from tamis.quantity.measure import grams
from tamis.reading.clauses import Time
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Container, Mapping, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.labour import Labour
    from tamis.reading.clauses import VerbUse
    from tamis.reading.reading import ActionRead

Given = Literal["text", "verb", "default"]
KILO = Fraction(1000)
# Who is called again after so many seconds has no time for anything else, or goes away meanwhile; common practice.
_BUSY, _LEAVES = 60, 600
# Who stirs *often* in a wait of so many seconds does nothing else meanwhile; common practice.
_SHORT = 600
# Seconds at least for what is done to each batch, and those of work that is as long for a batch as for all; common
# practice.
_A_BATCH, _LONG = 10, 180
# Seconds at least for what ends by a sign that is soon there; common practice.
_SOON = 60
# Seconds to which an estimate is told that stands beside the cook's own limit.
_ROUGHLY = 300


def work_of(
    labour: Labour,
    mass: Mass,
    pieces: int,
    kitchen: Kitchen,
    station: Station,
    cold_water: Fraction,
    heaviest: Mass | None,
    by_piece: Mapping[int, int],
    warmed: Fraction | None,
    before: Mapping[int, Mass],
    batches: Fraction,
    whole: Container[int],
    fine: Mapping[int, Fraction],
    vessels: int,
) -> Work:
    """The work of an action on a batch of this mass, in so many pieces, at the station where it lies; `cold_water` is
    what the line puts in beside it for boiling and the like, in grams; `heaviest` the piece that a time by weight goes
    by; `by_piece` the seconds for the pieces of the food that is worked, by the place of the verb; `warmed` the
    grams that it brings to a heat, where that is not all; `before` the mass of what was in hand already, by the places
    of the verbs that work on nothing else; `batches` in how many it is done; `whole` the places of the verbs that work
    on none of its pieces; `fine` how much longer they take as finely as they cut; `vessels` how many it works on, where
    they are several."""
    heats = mass.lo if warmed is None else warmed
    wait, given = _wait(labour, heats, heaviest or mass, cold_water, kitchen, station)
    verb = labour.time_verb.verb if labour.time_verb else None
    others = [use for use in labour.verbs if not (wait and use is labour.time_verb) and use.verb is not labour.warms]
    handling = _handling(others, mass, before, pieces, by_piece, batches, whole, fine) if others else 0
    if vessels > 1:  # where the pieces tell nothing more
        each = [use.verb.per_vessel for use in others if pieces <= 1 or not use.verb.per_piece]
        handling += (vessels - 1) * max(each, default=0)
    if not handling and labour.time is None and (others or not wait):
        handling = _shared(kitchen.settings.kitchen.handling, batches)
    machine = "speed" in labour.set
    hands = verb is None or verb.attention == "hands"
    if verb is not None and verb.water_per_kg and cold_water and given == "verb":
        hands = False  # a pan of water or fat comes to its heat by itself
    if machine or station in ("oven", "bath", "fridge", "freezer"):
        hands = False
    gaps = [tending.every.lo for tending in labour.tending if tending.every]
    if gaps and any([gap >= _LEAVES for gap in gaps]):
        hands = False
    if isinstance(labour.time, Time) and labour.time.hands is not None:
        hands = labour.time.hands
    if labour.tending:
        often = wait is not None and wait.lo <= _SHORT
        busy = [tending.constant or (often and tending.often) for tending in labour.tending]
        hands = hands or any(busy) or any([gap <= _BUSY for gap in gaps])
    if not hands and station == "ring" and wait is not None and wait.lo < _SHORT:
        hands = _takes_colour(labour, kitchen)
    return Work(
        handling=int(handling),
        wait=wait,
        window=bool(wait and wait.window),
        hands=hands,
        machine=machine,
        station=station,
        given=given,
        cue=labour.cues[-1].text if labour.cues else "",
        verb=verb.base if verb else "",
    )


def _takes_colour(labour: Labour, kitchen: Kitchen) -> bool:
    """Whether it ends by how brown the food is, be it a caramel: nobody goes away from that."""
    beginnings = model_words(kitchen.language).colours
    said = [word for cue in labour.cues for word in cue.text.lower().replace("-", " ").split()]
    return any([word.startswith(beginnings) for word in said])


def _wait(
    labour: Labour, heats: Fraction, heaviest: Mass, cold_water: Fraction, kitchen: Kitchen, station: Station
) -> tuple[Duration | None, Given]:
    verb = labour.time_verb.verb if labour.time_verb else None
    if labour.time is not None:
        duration = labour.time.duration
        assert duration is not None
        if isinstance(labour.time, Time):
            duration = _rated(labour.time, heaviest, kitchen)
        keeps = verb is not None and verb.keeps
        if duration.window and not duration.lo and duration.hi and verb is not None and _ends_by_a_sign(labour):
            likely = min(duration.hi, Fraction(round(_estimate(verb, heats, cold_water) / _ROUGHLY) * _ROUGHLY))
            duration = duration._replace(lo=likely, window=keeps)  # *for up to 2 h, until cold* is no choice
        window = duration.window or (keeps and duration.lo != duration.hi)
        return duration if window == duration.window else duration._replace(window=window), "text"
    if verb is None or not (_ends_by_a_sign(labour) or _stays_cold(verb) or (verb.cools and verb.waits)):
        return None, "default"
    length = _estimate(verb, heats, cold_water)
    if verb.takes and station != "ring" and not verb.heat and _is_soon(labour, kitchen):
        length = min(length, max(Fraction(_SOON), verb.takes + verb.per_kg * heats / KILO))
    return (Duration(length, length), "verb") if length else (None, "default")


def _is_soon(labour: Labour, kitchen: Kitchen) -> bool:
    """Whether a line ends by a sign that is soon there: an egg is smooth or frothy in a moment, and stiff only after
    minutes."""
    words = model_words(kitchen.language)
    said = {word for cue in labour.cues for word in cue.text.lower().replace(",", " ").split()}
    return not words.soon.isdisjoint(said) and words.late.isdisjoint(said)


def _ends_by_a_sign(labour: Labour) -> bool:
    return bool(labour.cues or labour.targets)


def _estimate(verb: Verb, heats: Fraction, cold_water: Fraction) -> Fraction:
    """Seconds that a verb usually takes for so many grams, and so much cold water beside them."""
    length = Fraction(verb.estimate)
    if verb.estimate_per_kg:
        length += verb.estimate_per_kg * heats / KILO
    if verb.water_per_kg and cold_water:
        length += verb.water_per_kg * cold_water / KILO
    return length


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
    mass: Mass,
    before: Mapping[int, Mass],
    pieces: int,
    by_piece: Mapping[int, int],
    batches: Fraction,
    whole: Container[int],
    fine: Mapping[int, Fraction],
) -> int | Fraction:
    """Hands-on seconds of the verbs for one batch; 0 where the trade has no opinion."""
    total: int | Fraction = 0
    for use in uses:
        verb, place = use.verb, use.span.start
        worked = before.get(place, mass)
        takes = _shared(verb.takes, batches)
        if verb.per_piece or place in by_piece:
            each = by_piece.get(place, 0)
            alone = _for_pieces(verb, 1 if place in whole else pieces, worked)
            takes += max(alone, each if batches is ONE else each / batches)
        if verb.per_kg and not verb.divides and place not in by_piece:
            by_weight = worked.lo * verb.per_kg / 1000
            takes += by_weight if batches is ONE else by_weight / batches
        if verb.least_per_kg and not by_piece.get(place):
            takes = max(takes, worked.lo * verb.least_per_kg / 1000 / batches)
        total += takes * fine[place] if place in fine else takes
    return total


def _shared(takes: int, batches: Fraction) -> int | Fraction:
    """A batch's share of work that is told for all; what takes long (kneading) does so however little there is."""
    if batches is ONE or batches == ONE or takes >= _LONG:
        return takes
    return max(takes / batches, Fraction(min(takes, _A_BATCH)))


def _for_pieces(verb: Verb, pieces: int, mass: Mass) -> int | Fraction:
    """Seconds for the pieces that a batch lies in: small ones are worked faster, unless each is cut off."""
    takes = verb.per_piece * max(1, pieces)
    if not verb.most_per_kg or verb.divides or not mass.known:
        return takes
    return min(Fraction(takes), max(Fraction(verb.per_piece), mass.hi * verb.most_per_kg / 1000))


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
    message = f"“{use.text}” needs a time, something to look for, or something to reach in its line"
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
    """*Cover and chill*, *let it cool*: what stays in the fridge until it is wanted, or stands until it is cold;
    nothing goes wrong with it, and the plan takes the verb's estimate."""
    return verb.cools and (verb.off or (verb.keeps and verb.station == "fridge"))
