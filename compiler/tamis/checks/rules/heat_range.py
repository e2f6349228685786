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
    from fractions import Fraction

    from tamis.checks.view import View
    from tamis.kitchen.equipment import Station
    from tamis.model.recipe import Action
    from tamis.quantity.amount import Amount
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
    known = limits().heat
    for action in view.recipe.actions:
        for celsius, span, hottest in _degrees(action, known):
            if celsius.lo > hottest:
                yield _say(span, f"hotter than that can be: {hottest} °C at the most ({SOURCE})")
            elif (
                celsius.hi < known["frying"] and any(use.verb.fries for use in action.verbs) and hottest == known["pan"]
            ):
                yield _say(span, f"too cool to fry in: {known['frying']} °C at the least ({SOURCE})")


def _degrees(action: Action, known: dict[str, Fraction]) -> Iterator[tuple[Amount, Span, Fraction]]:
    """The degrees of a line that are no oven's, each with its place and the most that they can be."""
    fries = any(use.verb.fries for use in action.verbs)
    over_fire = not fries and (action.heats or action.work.station) in _ABOVE_FIRE
    for read in action.reads:
        setting = read.setting if isinstance(read, Time) else read if isinstance(read, Setting) else None
        if setting is not None and setting.celsius and not over_fire:
            yield setting.celsius, read.clause.span, known["pan"]
        elif isinstance(read, Target) and read.celsius and not over_fire:
            yield read.celsius, read.clause.span, known["pan"]
        elif isinstance(read, Cue) and read.celsius:
            bakes = action.work.station == _OVEN and not fries
            yield read.celsius, read.clause.span, known["food" if bakes else "cue"]


def _say(span: Span, message: str) -> Diagnostic:
    return Diagnostic(RULE, LEVEL, span, message, "check the digits and the scale, °C or °F")
