"""Clauses about who stands by, what follows, and how the cook goes about it: tending, pauses and manners."""

from __future__ import annotations

from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.reading.clause import WORDS_ONLY, child, first_leaf
from tamis.reading.clauses import Manner, Pause, Read, Setting, Tending, Time
from tamis.reading.durations import duration, seconds_in, stretch
from tamis.reading.food_parts import is_manner
from tamis.reading.heat import heat_of
from tamis.reading.measured import MEASURES, NAMES, check_held, read_measure, with_unit
from tamis.reading.opening_verb import verb_of
from tamis.reading.quantities import amount, as_one
from tamis.reading.soundness import LENGTHS, check_text
from tamis.reading.temperatures import scales
from tamis.reading.timing import cue_of
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_tending(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`stirring all the time`, `basting every 15 min`, `turning half-way`, `stirring for 10 min`, `stirring until
    thick`, `turning every other day for 2 weeks`. How long it goes on is a time of its own."""
    words = reading.words
    if children[0][0] == "WITHOUT":
        return _without(reading, children)
    said_often = [leaf[1].lower() for leaf in children if leaf[0] == "OFTEN"]
    often = said_often[0] if said_often else ""
    once = often in words.once and often != ""
    length, after = _every(reading, children), _after(reading, children)
    sometimes = not words.sometimes.isdisjoint(said_often) or length is not None  # all the time at first, then often
    if said_often and said_often[-1] in words.constant:  # … but: often, and towards the end all the time
        sometimes = length is not None or not words.sometimes.isdisjoint(set(said_often).difference(words.frequent))
    first = first_leaf(children[0])
    verb = reading.kitchen.verbs.participle(first[1].lower())
    seldom = verb is not None and (verb.occasional or verb.attention == "unattended")  # basting; standing it in ice
    sometimes = sometimes or (seldom and often not in words.constant)
    constant = length is None and after is None and not once and not sometimes
    during = child(children, "duration")
    said = children[: children.index(during) - 1] if during else children
    busy = often in words.frequent
    tending = Tending(reading.clause, reading.said(said), constant, length, once and length is None, after, busy)
    until = child(children, "UNTIL")
    if until:
        return (tending, cue_of(reading, children[children.index(until) :]))
    if during:
        return (tending, Time(reading.clause, duration(reading, during), text=reading.text))
    timed = [node for text in children if text[0] == "text" for node in text[1] if node[0] in LENGTHS]
    if timed:
        whole = stretch(reading, ("stretch", [timed[0]]))
        return (tending, Time(reading.clause, whole, text=reading.text))
    return (tending,)


def _without(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`without stirring`, `without letting it colour until soft`: which asks nobody to stand by."""
    check_text(reading, children[1][1])
    until = child(children, "UNTIL")
    at = children.index(until) if until else len(children)
    left = Tending(reading.clause, reading.said(children[:at]))
    return (left, cue_of(reading, children[at:])) if until else (left,)


def _every(reading: Reading, children: Sequence[Node]) -> Duration | None:
    """From one time to the next: `every 15 min`, `every day`; every other day is every two days."""
    gap, unit = child(children, "stretch"), child(children, "TIME")
    if gap:
        return stretch(reading, gap)
    if unit is None:
        return None
    length = seconds_in(reading, unit) * (2 if child(children, "EVERYOTHER") else 1)
    return Duration(length, length)


def _after(reading: Reading, children: Sequence[Node]) -> Duration | None:
    """How long after its beginning a wait calls the cook: `covering with foil after 1 h`."""
    lapse = child(children, "lapse")
    return stretch(reading, ("stretch", lapse[1])) if lapse else None


def _kept_at(reading: Reading, children: Sequence[Node]) -> Setting | None:
    """How warm food is kept, or over which heat."""
    heat = child(children, "scales")
    if heat:
        where = reading.span([heat])
        return Setting(reading.clause, "temperature", *scales(reading, heat), text=reading.text, degrees_span=where)
    low = child(children, "heat")
    return heat_of(reading, low) if low else None


def _just_before(reading: Reading, children: Sequence[Node]) -> Pause:
    """`just before frying`: the work that is named follows at once."""
    work = child(children, "text")
    assert work is not None
    check_text(reading, work[1])
    first, verbs = first_leaf(work)[1].lower(), reading.kitchen.verbs
    if (verbs.present(first) or verbs.get(first)) is None:
        message = f"“{reading.said([work])}” is not work that can follow this line at once"
        just, look = (example(reading.kitchen.language, key) for key in ("just_before", "until_any"))
        hint = f"name the work, {just}; what to look for is {look}; else take the brackets away"
        raise reading.fail("clause-role", reading.span([work]), message, hint)
    return Pause(reading.clause, "at-once")


def _tell_untimed(reading: Reading, children: Sequence[Node]) -> None:
    """`bake at once`: that it follows at once is taken, no wait is."""
    verb, text = verb_of(reading, children[0], children)
    if verb is not None and verb.waits:
        message = f"“{text}” is only printed: it gives no time, so no wait is planned for it"
        wait = example(reading.kitchen.language, "wait", verb=text, time="30 min")
        hint = f"if no other bracket gives its time, write {wait}"
        reading.find(WORDS_ONLY, "warning", reading.span(children[:1]), message, hint)


def read_pause(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`at once`, `within 10 min`, `keep warm at 60 °C`, `30 min before serving`."""
    length, hour = child(children, "duration"), child(children, "TIME")
    said = duration(reading, length) if length else stretch(reading, ("stretch", [hour])) if hour else None
    kinds = {node[0] for node in children}
    if "SERVING" in kinds:
        return (Pause(reading.clause, "before-serving", said),)
    if "JUSTBEFORE" in kinds:
        return (_just_before(reading, children),)
    if "WITHIN" in kinds:
        return (Pause(reading.clause, "within", said),)
    if "KEEPWARM" not in kinds:
        if "PAUSE" in kinds and children[0][0] == "verb":
            _tell_untimed(reading, children)
        return (Pause(reading.clause, "at-once", said),)
    kept = children[0]
    words = kept[1].lower()
    found = reading.kitchen.verbs.match(words.split(), 0)
    verb = found[0] if found else reading.kitchen.verbs.participle(words)
    pause = Pause(reading.clause, "keep-warm", said, _kept_at(reading, children), verb, kept[1])
    until = child(children, "UNTIL")
    return (cue_of(reading, children[children.index(until) :]), pause) if until else (pause,)


def read_manner(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...] | None:
    """`one by one`, `cut side up`, `2 or 3 at a time`, `on both sides`; None for `with both eggs`, which is none."""
    if children[-1][0] in ("strange", "food"):
        return (Manner(reading.clause),) if is_manner(reading, children) else None
    if children[0][0] == "NUMWORD":
        first, last = (amount(reading, ("count", [leaf])) for leaf in (children[0], children[-1]))
        return (Manner(reading.clause, Measure(first, "")),) if first == last else None
    nodes = [node for node in children if node[0] in MEASURES or node[0] in NAMES]
    if not nodes or nodes[0][0] not in MEASURES:
        return (Manner(reading.clause),)
    read, _ = with_unit(reading, read_measure(reading, nodes), [*nodes[1:], children[-1]])
    check_held(reading, read)
    return (Manner(reading.clause, as_one(reading, read.measures) if read.measures else None),)
