"""Work that the cook may choose instead of what stands before it: *serve, or let them go cold*, *chop it, or mince it
once*. What is planned is what was said first.

Loaded only for a line in which *or* stands.
"""

from __future__ import annotations

from tamis.reading.clauses import Cue, Division, Ingredient, Naming, Reference, Target, Time, Tool, VerbUse
from tamis.reading.plain import plain_of
from tamis.reading.plain_amounts import amounts
from tamis.reading.prose import prose_words
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.reading.plain import Plain
    from tamis.reading.prose import ProseWords
    from tamis.reading.reading import Event
    from tamis.syntax.document import Part

_OR = frozenset(("OR",))
_FOOD = (Ingredient, Reference, Tool, Naming)


def without_alternatives(parts: Sequence[Part], events: list[Event], kitchen: Kitchen) -> list[Event]:
    """The events without the work behind *or*: all of it behind one that serves; a wait of which no end is told; and
    work by hand that names no food of its own."""
    ways = [
        at for at, event in enumerate(events) if at and isinstance(event, VerbUse) and _is_other(event, parts, kitchen)
    ]
    served = next(
        (at for at, event in enumerate(events) if isinstance(event, VerbUse) and event.verb.serves), len(events)
    )
    ends = next((at for at in ways if at > served and not _may_be_none(events[at:])), len(events))
    told = max((at for at, event in enumerate(events) if isinstance(event, Time | Cue | Target)), default=-1)
    dropped = {at for at in ways if _is_dropped(events, at, told, parts, kitchen)}
    return [event for at, event in enumerate(events) if at not in dropped and (at < ends or isinstance(event, _FOOD))]


def _may_be_none(events: Sequence[Event]) -> bool:
    """Whether what is done instead is a wait as short as the cook likes: `keep [for up to 30 min]` tells a limit."""
    time = next((event for event in events if isinstance(event, Time)), None)
    alone = not any(isinstance(event, VerbUse) for event in events[1:])
    return alone and time is not None and not time.duration.lo


def _is_dropped(events: list[Event], at: int, told: int, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    use = events[at]
    assert isinstance(use, VerbUse)
    if use.verb.waits:
        return at > told and not _is_timed(use, parts, kitchen)
    before = next((event for event in reversed(events[:at]) if isinstance(event, VerbUse)), None)
    ends = next((there for there in range(at + 1, len(events)) if isinstance(events[there], VerbUse)), len(events))
    own = any(map(_is_own, events[at + 1 : ends]))
    return before is not None and not before.verb.waits and not own


def _is_own(event: Event) -> bool:
    """Whether an event gives a verb something of its own to work on, or its time; a place is that of all."""
    if isinstance(event, Tool):
        return not event.clause.text.lower().startswith(f"{event.preposition or '-'} ")
    return isinstance(event, Ingredient | Reference | Division | Time)


def _is_other(use: VerbUse, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    """Whether *or* stands right before a verb, or before the bracket that it opens; adverbs may stand between."""
    at = next((at for at, part in enumerate(parts) if part.span.start <= use.span.start < part.span.end), None)
    if at is None:
        return False
    part, here = parts[at], use.span.start
    if isinstance(part, Clause):
        if not at or use.span.start != part.inner:
            return False
        part, here = parts[at - 1], part.span.start
    if isinstance(part, Clause):
        return False
    plain, asked = plain_of(part.text, kitchen), prose_words(kitchen.language)
    place = plain.after(here - part.span.start) - 1
    while (
        place > 0
        and not plain.is_a(place, _OR)
        and (plain.said[place] in asked.through or _is_adverb(plain, place, asked))
    ):
        place -= 1
    return place >= 0 and bool(plain.is_a(place, _OR))


def _is_timed(use: VerbUse, parts: Sequence[Part], kitchen: Kitchen) -> bool:
    """Whether a time stands behind a verb in the same plain words, or its bracket tells one."""
    part = next(part for part in parts if part.span.start <= use.span.start < part.span.end)
    if isinstance(part, Clause):
        return True
    plain = plain_of(part.text, kitchen)
    behind = plain.after(use.span.start - part.span.start)
    return any(amount.kind == "time" and amount.first >= behind for amount in plain.ask(amounts))


def _is_adverb(plain: Plain, at: int, asked: ProseWords) -> bool:
    return plain.said[at].endswith(asked.adverbs)
