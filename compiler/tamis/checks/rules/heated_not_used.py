"""An oven, grill or bath that is heated and then never used.

It costs an hour of heat, takes the place of other dishes on the timeline, and most likely a line is missing.

Write the line that uses it (`[bake for 20 min]`), or take the heating out.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "heated-not-used"
LEVEL: Severity = "warning"
ABOUT = ("station",)
BAD = """\
title: Cold oats
serves: 2

# Oats

Heat [the oven] [to 160 °C].
Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""
GOOD = """\
title: Toasted oats
serves: 2

# Oats

Heat [the oven] [to 160 °C].
Spread [100 g rolled oats] [on a baking tray].
[Bake for 12–15 min] [until golden].
"""

_STATIONS = ("oven", "grill", "bath")


def check(view: View) -> Iterator[Diagnostic]:
    """Stations that a line heats and no food goes into afterwards."""
    lines = view.recipe.places.lines
    for station in _STATIONS:
        heating = [here.action for here in lines if here.heats == "station" and here.station == station]
        if not heating:
            continue
        if any(here.station == station and here.heats != "station" for here in lines[heating[-1] :]):
            continue
        message = f"the {station} is heated here, and nothing goes into it afterwards"
        span = view.recipe.actions[heating[-1]].span
        yield Diagnostic(RULE, LEVEL, span, message, "write what goes in, or take the heating out")
