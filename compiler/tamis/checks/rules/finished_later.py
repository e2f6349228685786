"""Raw meat, fish or poultry is cooked in part, put into the cold, and finished later.

The first heat warms it and kills too little: bacteria grow while it warms and cools, and some leave toxins that no
later heat takes away. Meat is cooked in part only where it goes on to the hot grill or into the oven at once (USDA
FSIS).

Cook it through at the first time and reheat it, or finish it without a pause.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "finished-later"
LEVEL: Severity = "warning"
ABOUT = ("view safety.halves",)
BAD = """\
title: Chicken for the grill
serves: 4

# Chicken

Heat [the oven] [to 200 °C].
Lay [8 chicken thighs] [in a roasting tin] and [roast for 15 min] [until the skin has colour].
[Chill overnight].
[Grill for 15 min] [until 74 °C (165 °F) at the bone].
"""
GOOD = """\
title: Chicken for the grill
serves: 4

# Chicken

Heat [the oven] [to 200 °C].
Lay [8 chicken thighs] [in a roasting tin] and [roast for 15 min] [until the skin has colour].
[Grill for 15 min] [until 74 °C (165 °F) at the bone].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each wait in the cold between the two."""
    hint = "cook it through before it is cooled, or finish it without a pause (USDA FSIS)"
    for half in view.safety.halves:
        message = f"{half.food}: cooked in part, put into the cold, and finished later"
        yield Diagnostic(RULE, LEVEL, half.span, message, hint)
