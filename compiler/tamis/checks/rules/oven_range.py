"""An oven hotter than most ovens, or too cool for what is cooked in it.

A slip of one digit or of the scale burns the dish, or leaves it raw for hours: 350 °F is a moderate oven, 350 °C is
none.

Check the number and its scale: `[to 200 °C]`, `[at 350 °F]`. Where such an oven is meant, allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.limits import SOURCE, limits
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Reference, Setting, Target, Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Read
    from tamis.source import Span

RULE = "oven-range"
LEVEL: Severity = "warning"
ABOUT = ("oven",)
BAD = """\
title: Baked squash
serves: 4

# Squash

Heat [the oven] [to 2000 °C].
Lay [1 squash, halved] [in a roasting tin].
[Roast for 40 min] [until soft].
"""
GOOD = """\
title: Baked squash
serves: 4

# Squash

Heat [the oven] [to 200 °C].
Lay [1 squash, halved] [in a roasting tin].
[Roast for 40 min] [until soft].
"""

_OVEN: Station = "oven"


def check(view: View) -> Iterator[Diagnostic]:
    """Degrees of an oven outside its limits; what is proved or kept warm in it may be cooler than what is cooked."""
    known = limits()
    for action in view.recipe.actions:
        if action.heats != _OVEN and action.work.station != _OVEN:
            continue
        if any([use.verb.fries for use in action.verbs]):
            continue  # the degrees of its fat: heat-range
        cooks = action.heats != _OVEN and any([use.verb.cooks for use in action.verbs])
        least = known.cooking if cooks else known.coolest
        for celsius, span in _degrees(view, action):
            if celsius.lo > known.hottest or celsius.hi < least:
                far = "hotter than most ovens" if celsius.lo > known.hottest else "too cool for an oven"
                limit = f"{known.hottest} °C at most" if celsius.lo > known.hottest else f"at least {least} °C"
                message = f"{far}: {limit} ({SOURCE})"
                yield Diagnostic(RULE, LEVEL, span, message, "check the digits and the scale, °C or °F")


def _degrees(view: View, action: Action) -> Iterator[tuple[Amount, Span]]:
    """The settings of a line, and what it heats the oven to; another target in the oven is the food's."""
    before: Read | None = None
    for read in action.reads:
        setting = read.setting if isinstance(read, Time) else read if isinstance(read, Setting) else None
        if setting is not None and setting.celsius:
            yield setting.celsius, read.clause.span
        elif isinstance(read, Target) and read.celsius and (action.heats == _OVEN or _is_oven(before, view)):
            yield read.celsius, read.clause.span
        before = read


def _is_oven(read: Read | None, view: View) -> bool:
    """Whether it is the oven that is named: *lower the oven*."""
    if not isinstance(read, Reference):
        return False
    found = view.kitchen.cupboard.find(read.name.lower().split(" "))
    return found is not None and found.item.station == found.item.id == _OVEN
