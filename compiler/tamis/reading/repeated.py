"""Which part of a line is done again where a repetition stands in its midst, and what of a paragraph that is."""

from __future__ import annotations

from fractions import Fraction

from tamis.reading.clauses import Reference, Repeat, VerbUse
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.reading import ActionRead, StepRead


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


def repeats_of_step(action: ActionRead) -> list[Repeat]:
    """`[Repeat twice]`, which does all of its paragraph again."""
    return [event for event in action.events if isinstance(event, Repeat) and event.kind == "step-times"]


def times_of_shares(step: StepRead) -> Fraction:
    """How many times the shares of a paragraph are taken: a third of the slices three times, where it is repeated
    twice. Once where it takes the rest as well: nothing is left to do it again with."""
    more = repeats_of_step(step.actions[-1]) if step.actions else ()
    if not more:
        return Fraction(1)
    return Fraction(1) if any(map(takes_rest, step.actions)) else 1 + more[0].number


def takes_rest(action: ActionRead) -> bool:
    """Whether a line takes what is left of something."""
    shares = [event.share for event in action.events if isinstance(event, Reference)]
    return any(share is not None and share.kind == "rest" for share in shares)
