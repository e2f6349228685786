"""A tag promises what a food in the dish breaks.

A guest who is vegan or allergic trusts the tag and does not read the table.

Take the tag out, or the food.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "tag-contradicted"
LEVEL: Severity = "error"
ABOUT = ("view safety.contradictions",)
BAD = """\
title: Honey oats
serves: 2
tags: breakfast, vegan

# Oats

Stir [100 g rolled oats] with [1 tbsp honey] and [200 ml water] [in a bowl].
"""
GOOD = """\
title: Honey oats
serves: 2
tags: breakfast, vegetarian

# Oats

Stir [100 g rolled oats] with [1 tbsp honey] and [200 ml water] [in a bowl].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each food that breaks a tag; a warning where the food may be left out."""
    for found in view.safety.contradictions:
        level: Severity = "warning" if found.optional else LEVEL
        extra = ", even if it may be left out" if found.optional else ""
        why = f" ({found.why})" if found.why != found.food else ""
        message = f"“{found.tag}” is contradicted by {found.food}{why}{extra}"
        labels = (Label(view.recipe.header.span("tags"), "the tag stands here"),)
        yield Diagnostic(RULE, level, found.span, message, f"take “{found.tag}” out of the tags, or the food", labels)
