"""Degrees that no pan, fat or food has: hotter than fat can be, or food in which there is water, or too cool to fry in.

Fat at 375 °C burns with a flame; 375 °F was meant. Food at 205 °C in the middle is charcoal.

Check the number and its scale: `[to 190 °C]`, `[at 375 °F]`, `[until 97 °C in the middle]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.limits import SOURCE, limits
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Cue, Setting, Target, Time
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action
    from tamis.quantity.amount import Amount
    from tamis.reading.clauses import Read
    from tamis.source import Span

RULE = "heat-range"
LEVEL: Severity = "warning"
BAD = """\
title: Chips
serves: 4

# Chips

Heat [1 l sunflower oil, for frying] [in a deep pan] [to 375 °C].
Add [1 kg potatoes, cut into sticks] and [fry for 6 min] [until golden].
"""
GOOD = """\
title: Chips
serves: 4

# Chips

Heat [1 l sunflower oil, for frying] [in a deep pan] [to 190 °C].
Add [1 kg potatoes, cut into sticks] and [fry for 6 min] [until golden].
"""

_ABOVE_FIRE: tuple[Station, ...] = ("oven", "grill")
_OVEN: Station = "oven"


def check(view: View) -> Iterator[Diagnostic]:
    """Settings and targets of a pan, and the degrees of what to look for."""
    for action, time in view.each(Time):
        yield from _of_pan(action, time.setting and time.setting.celsius, time)
    for action, setting in view.each(Setting):
        yield from _of_pan(action, setting.celsius, setting)
    for action, target in view.each(Target):
        yield from _of_pan(action, target.celsius, target)
    for action, cue in view.each(Cue):
        if cue.celsius:
            bakes = action.work.station == _OVEN and not _fries(action)
            yield from _judged(cue.celsius, cue.clause.span, "food" if bakes else "cue", action)


def _of_pan(action: Action, celsius: Amount | None, read: Read) -> Iterator[Diagnostic]:
    """What is said of degrees that are no oven's."""
    if celsius and ((action.heats or action.work.station) not in _ABOVE_FIRE or _fries(action)):
        yield from _judged(celsius, read.clause.span, "pan", action)


def _fries(action: Action) -> bool:
    return any([use.verb.fries for use in action.verbs])


def _judged(celsius: Amount, span: Span, kind: str, action: Action) -> Iterator[Diagnostic]:
    known = limits().heat
    if celsius.lo > known[kind]:
        yield _say(span, f"hotter than expected: {known[kind]} °C at most ({SOURCE})")
    elif celsius.hi < known["frying"] and known[kind] == known["pan"] and _fries(action):
        yield _say(span, f"too cool to fry in: at least {known['frying']} °C ({SOURCE})")


def _say(span: Span, message: str) -> Diagnostic:
    return Diagnostic(RULE, LEVEL, span, message, "check the digits and the scale, °C or °F")
