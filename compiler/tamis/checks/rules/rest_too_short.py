"""Meat that is safe only after a rest is served before it.

The limit for whole cuts is 63 °C (145 °F) and then at least 3 minutes (USDA FSIS): the heat goes on working while
the meat rests, and without it the temperature alone is not enough.

Say the rest: `[rest for 3–5 min]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "rest-too-short"
LEVEL: Severity = "warning"
ABOUT = ("view safety.short_rest",)
BAD = """\
title: Pork chops
serves: 2

# Chops

Fry [2 pork chops] [in 1 tbsp sunflower oil] [in a frying pan] [for 8–10 min] [until 63 °C (145 °F) in the middle].
"""
GOOD = """\
title: Pork chops
serves: 2

# Chops

Fry [2 pork chops] [in 1 tbsp sunflower oil] [in a frying pan] [for 8–10 min] [until 63 °C (145 °F) in the middle].
[Rest for 3–5 min].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each cut whose rest is too short, at the words that cleared it."""
    for item in view.safety.short_rest:
        if item.cleared is None:
            continue
        action = view.recipe.actions[item.cleared.action]
        place = next((r.clause.span for r in action.reads if r.clause.text == item.cleared.words), action.span)
        source = rules().sources[view.kitchen.settings.safety.authority]
        message = f"this needs a rest of at least 3 min before it is eaten ({source})"
        yield Diagnostic(RULE, LEVEL, place, message, f"say it: {example(view.recipe.language, 'rest')}")
