"""A time longer than such work takes anywhere.

One digit too many, or hours for minutes, and the plan of the day is wrong from there on.

Check the number and its unit: `[bake for 20 min]`. Where it is meant, allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.limits import SOURCE, limits
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

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

_HOUR = 3600


def check(view: View) -> Iterator[Diagnostic]:
    """Times from the text that are longer than the limit of their verb."""
    known = limits().hours
    for action in view.recipe.actions:
        work = action.work
        limit = known.get(work.verb)
        if limit is None or work.wait is None or work.given != "text" or work.wait.lo <= limit * _HOUR:
            continue
        verb = view.kitchen.verbs.of_base(work.verb)
        name = verb.name if verb else work.verb
        span = next((read.clause.span for read in action.reads if read.role in ("time", "cue")), action.span)
        message = f"“{name}” for longer than {limit} h: no recipe takes that long ({SOURCE})"
        yield Diagnostic(RULE, LEVEL, span, message, "check the digits and the unit, min or h")
