"""Food that spoils stands too long between cold and hot.

Between 5 and 57 °C (the home rule: 40 and 140 °F) bacteria can double in 20 minutes. Risky food may be there for 2
hours in all (USDA FSIS; US Food Code 3-501.14: from 57 to 21 °C within 2 hours, to 5 °C within 6).

Put it in the fridge (`[marinate overnight] [in the fridge]`), shorten the wait, cool it over ice, or keep it hot.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.safety.records import Wait

RULE = "warm-too-long"
LEVEL: Severity = "warning"
ABOUT = ("view safety.waits",)
BAD = """\
title: Spiced lamb
serves: 4

# Lamb

Rub [600 g lamb shoulder, diced] with [1 tbsp olive oil] and [1 tsp salt].
Cover and [marinate overnight].
Stew with [300 ml water] [in a pot] [for 90 min] [until tender].
"""
GOOD = """\
title: Spiced lamb
serves: 4

# Lamb

Rub [600 g lamb shoulder, diced] with [1 tbsp olive oil] and [1 tsp salt].
Cover and [marinate overnight] [in the fridge].
Stew with [300 ml water] [in a pot] [for 90 min] [until tender].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each risky wait."""
    window = rules().windows[view.safety.authority]
    for wait in view.safety.waits:
        from tamis.quantity.times import duration

        message = f"here {wait.food} may {_where(wait)} for more than {duration(window.out)}"
        hint = "chill it, shorten the wait, or keep it hot; local food codes prevail"
        if wait.kept_warm and wait.celsius is None:
            message += ", and no temperature is given"
            from tamis.quantity.display import limit_c

            said = view.source.slice(wait.span)[1:-1]
            warm = example(view.recipe.language, "at", clause=said, setting=limit_c(window.hold))
            hint = f"say how warm: {warm}; {hint}"
        elif _has_left_the_oven(view, wait):
            hint = f"if it stays {example(view.recipe.language, 'in_oven')}, say so; {hint}"
        yield Diagnostic(RULE, LEVEL, wait.span, message, hint)


def _has_left_the_oven(view: View, wait: Wait) -> bool:
    """Whether it is out of the oven only because the line does not say that it is still in there."""
    here = view.recipe.places.lines[wait.action]
    return here.came_from == "oven" and here.rank == "verb" and not here.station


def _where(wait: Wait) -> str:
    if wait.celsius is not None:
        return "stand at a temperature too warm for storage and too cool for hot holding"
    return "be kept warm" if wait.kept_warm else "stand at room temperature"
