"""Raw milk or raw sprouts reach the plate uncooked.

Both can carry bacteria that nobody sees or smells, and that are worst for young children, older adults, pregnant women
and anyone with a weakened immune system.

Heat the milk (`[until 72 °C]`) or take pasteurised milk; cook the sprouts. A dish that is meant so says
`served: raw` in its header.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "raw-milk-or-sprouts"
LEVEL: Severity = "warning"
ABOUT = ("view safety.open",)
BAD = """\
title: Sprout salad
serves: 2

# Salad

Toss [100 g beansprouts] with [1 tbsp soy sauce] [in a bowl].
"""
GOOD = """\
title: Sprout salad
serves: 2

# Salad

Boil [100 g beansprouts] [in a pan] [for 2 min].
Drain, and toss with [1 tbsp soy sauce].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each of them that is open in the dish."""
    safety = view.safety
    if safety.served:
        return
    for item in safety.open:
        if item.hazard in ("raw-milk", "sprouts"):
            from tamis.safety.wording import limit_words, name_of, path_of

            message = f"nothing cooks the {name_of(item)} before the dish is eaten: {path_of(item, view.recipe)}"
            needed = limit_words(item, safety.authority, view.recipe.language)
            hint = f"needed: {needed}; or write `served: raw` in the header"
            yield Diagnostic(RULE, LEVEL, item.span, message, hint)
