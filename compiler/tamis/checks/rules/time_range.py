"""A time longer than such work takes anywhere, or shorter.

One digit too many, or hours for minutes, minutes for hours, and the timeline is wrong from there on.

Check the number and its unit: `[bake for 20 min]`. Where it is meant, allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tamis.checks.limits import SOURCE, limits
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.amount import exactly
from tamis.reading.clauses import Tending, Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.checks.limits import Limits
    from tamis.checks.view import View
    from tamis.model.places import Here
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Read

RULE = "time-range"
LEVEL: Severity = "warning"
BAD = """\
title: Baked squash
serves: 4

# Squash

Heat [the oven] [to 200 °C].
Lay [1 squash, halved] [in a roasting tin].
[Bake for 40 h] [until soft].
"""
GOOD = """\
title: Baked squash
serves: 4

# Squash

Heat [the oven] [to 200 °C].
Lay [1 squash, halved] [in a roasting tin].
[Bake for 40 min] [until soft].
"""

_HOUR, _MINUTE = 3600, 60


def check(view: View) -> Iterator[Diagnostic]:
    """Times from the text beyond the limits of their verb, or of the heat of their oven."""
    known = limits()
    for action in view.recipe.actions:
        work = action.work
        if work.wait is None or work.given != "text":
            continue
        message = _too_long(view, action, known) or _in_itself(action, known)
        if not message and work.wait.lo >= known.hob["asked"] * _HOUR:
            from tamis.checks.paces import out_of_proportion

            message = out_of_proportion(view, action)
        if message:
            verb = view.kitchen.verbs.of_base(work.verb)
            message = message.format(name=verb.name if verb else work.verb)
            span = next((read.clause.span for read in action.reads if read.role in ("time", "cue")), action.span)
            yield Diagnostic(RULE, LEVEL, span, message, "check the digits and the unit, min or h")


def _too_long(view: View, action: Action, known: Limits) -> str:
    """What speaks against so long a time, whatever is in the pot; "" if nothing does."""
    here, lasts = view.recipe.places.lines[action.number], action.work.wait.lo if action.work.wait else 0
    most, heat = _most().get(action.work.verb), _oven_hours(here, known)
    if most is not None and lasts > most:
        return f"longer than expected: “{{name}}” for more than {_number(most / _HOUR)} h ({SOURCE})"
    if heat is not None and lasts > heat * _HOUR:
        return f"longer than expected: more than {_number(heat)} h in so hot an oven ({SOURCE})"
    if lasts > known.constant * _HOUR and any(_is_constant(read) for read in action.reads):
        return f"longer than expected: stirred without stopping for more than {_number(known.constant)} h ({SOURCE})"
    if any([isinstance(read, Time) and read.sides and lasts > known.side * _HOUR * 2 for read in action.reads]):
        return f"longer than expected: more than {_number(known.side * 60)} min on each side ({SOURCE})"
    return ""


def _in_itself(action: Action, known: Limits) -> str:
    """What speaks against a time in its own line: too short for its verb, or less than the time between two stirs."""
    if _is_short(action, known):
        least = _number(known.minutes[action.work.verb])
        return f"shorter than expected: “{{name}}” for less than {least} min ({SOURCE})"
    every = _rarer_than_all(action)
    return f"“{every}” is longer than all the time in its line" if every is not None else ""


@cache
def _most() -> dict[str, Fraction]:
    """The seconds that work may take at the most."""
    return {verb: hours * _HOUR for verb, hours in limits().hours.items()}


def _oven_hours(here: Here, known: Limits) -> Fraction | None:
    """The most hours in an oven as hot as that of a line; None where it is not in one, or none is said."""
    if here.station != "oven" or here.celsius is None or here.rank == "guess":
        return None
    least = int(here.celsius.lo)
    return min([hours for degrees, hours in known.oven_hours.items() if least >= int(degrees)], default=None)


def _is_constant(read: Read) -> bool:
    """*Stirring all the time*."""
    return isinstance(read, Tending) and read.constant


def _rarer_than_all(action: Action) -> str | None:
    """The words for work that is to be done at intervals, of which none fits into the time of the line."""
    wait = action.work.wait
    for read in action.reads:
        if isinstance(read, Tending) and read.every and wait and read.every.lo > (wait.hi or wait.lo):
            return read.text
    return None


def _is_short(action: Action, known: Limits) -> bool:
    """Whether all of a line's time is less than its verb takes; what is added to another may be short."""
    least, wait = known.minutes.get(action.work.verb), action.work.wait
    times = [read for read in action.reads if isinstance(read, Time)] if least is not None else []
    if least is None or wait is None or not times or any([time.more or time.sides or time.per for time in times]):
        return False
    return 0 < (wait.hi or wait.lo) < least * _MINUTE


def _number(value: Fraction) -> str:
    from tamis.quantity.display import amount

    return amount(exactly(value))
