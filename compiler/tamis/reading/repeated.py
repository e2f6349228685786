"""Which part of a line is done again where a repetition stands in its midst."""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clauses import Repeat, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.reading import ActionRead


def times_of_food(action: ActionRead) -> Fraction:
    """How many times the food of a line goes in: at the head of a line a repetition is of all of it, behind a verb of
    its work alone: *sift [the flour] [3 times]*."""
    for event in action.events:
        if isinstance(event, VerbUse):
            break
        if isinstance(event, Repeat) and event.kind == "times":
            return event.number
    return Fraction(1)


def start_of_repeated(action: ActionRead) -> int | None:
    """Where the work begins that is done again in `mix [the flour] with [the water], and fold it [6 times]` and `press
    out the air and fold the end over [3 times]`: what goes before is done once."""
    verbs: list[VerbUse] = []
    for event in action.events:
        if isinstance(event, VerbUse):
            verbs.append(event)
        elif isinstance(event, Repeat) and event.kind == "times":
            return verbs[-1].span.start if len(verbs) > 1 else None
    return None


def end_of_repeated(action: ActionRead) -> int | None:
    """Where the work ends that is done again in `stretch it [6 times], cover and [rise for 40 min]`: behind a verb
    only its work is repeated; at the head of a line all of it is."""
    worked = False
    for at, event in enumerate(action.events):
        if isinstance(event, VerbUse):
            worked = True
        elif isinstance(event, Repeat) and event.kind == "times" and worked:
            more = any(isinstance(later, VerbUse) for later in action.events[at + 1 :])
            return event.clause.span.end if more else None
    return None
