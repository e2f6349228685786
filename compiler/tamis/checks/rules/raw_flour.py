"""Flour is eaten without ever having been heated.

Flour is not treated to kill bacteria; raw dough and flour stirred into a cold sweet have made people ill (US CDC).

Bake, fry or boil it, or toast it first: `[bake for 5 min] [until 71 °C (160 °F)]`. What another recipe bakes says
`served: uncooked` in its header.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "raw-flour"
LEVEL: Severity = "warning"
ABOUT = ("view safety.open",)
BAD = """\
title: Cookie dough bites
makes: 20 bites

# Bites

Beat [100 g soft butter] with [100 g light brown sugar] and [150 g plain flour] [in a bowl].
Roll [into 20 balls] and [chill for at least 1 h].
"""
GOOD = """\
title: Cookie dough bites
makes: 20 bites

# Flour

Spread [150 g plain flour] [on a baking tray].
[Bake for 8–10 min at 180 °C] [until it smells of nuts].
[Leave for 30 min].

# Bites

Beat [100 g soft butter] with [100 g light brown sugar] and [the flour] [in a bowl].
Roll [into 20 balls] and [chill for at least 1 h].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each flour in the dish that met no heat."""
    safety = view.safety
    for item in safety.open if safety.served != "uncooked" else ():
        if item.hazard == "raw-flour":
            from tamis.safety.wording import path_of

            message = f"this flour is eaten raw: {path_of(item, view.recipe)}"
            yield Diagnostic(RULE, LEVEL, item.span, message, "bake, fry or boil it, or toast it first (US CDC)")
