"""A food that the goods don't know is called like raw meat, fish or egg.

Of an unknown food nothing is taken: no allergen, and no hazard. "Corn-fed chicken breast" is then cooked by nobody's
rule.

Write it by a name that the goods know (the rest after the comma), or give it in `goods.toml` with its hazard.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.safety.hazards import FLESH
from tamis.safety.wording import hazard_name
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "hazard-unknown"
LEVEL: Severity = "warning"
BAD = """\
title: Seared breast
serves: 2

# Breast

% allow unknown-ingredient: the farm's own
Fry [2 corn-fed chicken breasts] [in 20 g butter] [in a frying pan] [until golden, 10 min].
"""
GOOD = """\
title: Seared breast
serves: 2

# Breast

Fry [2 chicken breasts, corn-fed] [in 20 g butter] [in a frying pan] [until golden and 74 °C inside, 10 min].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each use of an unknown food whose last words are a known, raw one."""
    harmless = frozenset(check_words(view.recipe.language).foods.harmless)
    for use in view.recipe.uses:
        food = use.ingredient
        if food.goods is not None:
            continue
        words = food.name.lower().replace("-", " ").split()
        if not harmless.isdisjoint(words):
            continue
        found = next((f for at in range(1, len(words)) if (f := view.kitchen.larder.find(words[at:]))), None)
        if found and found.goods.hazard in {*FLESH, "egg", "kidney-beans", "raw-milk"}:
            message = f"if “{food.name}” is {hazard_name(found.goods.hazard)}, nothing here checks that it gets cooked"
            hint = f"write `{found.goods.name}` and the rest after a comma, or give it in `goods.toml` with its hazard"
            yield Diagnostic(RULE, LEVEL, food.name_span, message, hint)
