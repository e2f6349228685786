"""A tin is greased, and no bracket names the fat.

The shopping list and the table lack it, and so do the allergens: butter on a tin is milk on the cake.

Name it: `grease [2 round tins] with [butter, for the tins]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Ingredient, Tool
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "grease-not-named"
LEVEL: Severity = "information"
BAD = """\
title: Baked oats
serves: 4

# Oats

Butter [a baking dish].
Tip in [200 g rolled oats] with [500 ml whole milk] and [bake for 30 min at 180 °C] [until set].
"""
GOOD = """\
title: Baked oats
serves: 4

# Oats

Grease [a baking dish] with [butter, for the dish].
Tip in [200 g rolled oats] with [500 ml whole milk] and [bake for 30 min at 180 °C] [until set].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Lines that grease a piece of equipment and name no food at all."""
    for action in view.recipe.actions:
        uses = [use for use in action.verbs if use.verb.greases]
        if not uses or any(isinstance(read, Ingredient) for read in action.reads):
            continue
        tool = next((read for read in action.reads if isinstance(read, Tool) and not read.preposition), None)
        if tool is not None:
            message = f"“{uses[0].text}”: no bracket names what the {tool.name} is greased with"
            hint = example(view.recipe.language, "grease", tool=tool.clause.text)
            yield Diagnostic(RULE, LEVEL, uses[0].span, message, hint)
