"""Dried kidney beans are boiled without a soak.

Soaking for at least 5 hours and throwing the water away takes much of the poison out before the boil takes the rest
(US FDA, from memory).

Soak them: `cover with [1 l water] and [soak overnight]`, drain, and boil in fresh water.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "beans-not-soaked"
LEVEL: Severity = "warning"
ABOUT = ("kidney-beans",)
BAD = """\
title: Red beans
serves: 4

# Beans

Put [250 g dried kidney beans] [in a pot] with [1 l water] and [boil for 15 min] [over high heat].
[Simmer for 60–90 min] [until tender].
"""
GOOD = """\
title: Red beans
serves: 4

# Beans

Cover [250 g dried kidney beans] with [1 l water] [in a bowl] and [soak overnight].
Drain, tip [into a pot], add [1 l water, for boiling] and [boil for 15 min] [over high heat].
[Simmer for 60–90 min] [until tender].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Kidney beans that were cleared by a boil alone."""
    for item in view.safety.items:
        if item.hazard != "kidney-beans" or item.cleared is None or item.soaked >= rules().soak or item.use < 0:
            continue
        preparation = view.recipe.uses[item.use].ingredient.preparation
        if not any(word in preparation for word in check_words(view.recipe.language).foods.soaking):
            hint = f"soak them, {example(view.recipe.language, 'soak')}, drain, and boil them in fresh water"
            yield Diagnostic(RULE, LEVEL, item.span, f"{item.food} are boiled without a soak of 5 h or more", hint)
