"""A tag makes a claim that is not known to hold for one of the foods.

The ingredient data can confirm it for the foods in them; an unknown food may hide milk or wheat, and of a sausage or a
stock it depends on the make.

Give the food in `goods.toml` with its allergens, or check its label and allow it with a reason.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.registry import Files
    from tamis.checks.view import View

RULE = "tag-unproved"
LEVEL: Severity = "information"
ABOUT = ("view safety.unproved",)
BAD: Files = {
    "oat-spread.tamis": """\
title: Oat spread
makes: 200 g

# Spread

% allow unknown-ingredient: a speciality of the house
Whisk [200 g oat crumble paste] [in a bowl] [for 2 min].
""",
    "toast.tamis": """\
title: Oats on toast
serves: 2
tags: vegan
uses: oat-spread

# Toast

Spread [4 slices bread] with [the oat spread].
""",
}
GOOD: Files = {
    **BAD,
    "toast.tamis": """\
title: Oats on toast
serves: 2
tags: breakfast
uses: oat-spread

# Toast

Spread [4 slices bread] with [the oat spread].
""",
}


def check(view: View) -> Iterator[Diagnostic]:
    """One finding a promise, naming the foods that nobody knows."""
    told = view.safety.dish.missing  # by the errors of what could not be read
    for claim in view.safety.unproved:
        foods = [food for food in claim.foods if food not in told]
        if foods:
            message = f"“{claim.tag}” cannot be confirmed: not known for {', '.join(foods)}"
            hint = "check the label, and add the food to `goods.toml` with its allergens"
            yield Diagnostic(RULE, LEVEL, view.recipe.header.span("tags"), message, hint)
