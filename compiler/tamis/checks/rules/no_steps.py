"""A recipe with a title and no steps.

There is nothing to cook, to list or to plan; a page of it would be a promise.

Write the method: a heading, then a line for each action. Until then, keep notes to yourself behind a `%`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "no-steps"
LEVEL: Severity = "warning"
ABOUT = ("no recipe.components",)
BAD = """\
title: Oats
serves: 2

Cold oats for a warm morning.
"""
GOOD = """\
title: Oats
serves: 2

Cold oats for a warm morning.

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Recipes that have a title, and no component but perhaps headings with nothing below, which are told already."""
    if view.recipe.title and not view.recipe.components:
        message = f"“{view.recipe.title}” has no steps: no line with a bracket that is understood, and no heading"
        hint = "write `# ` and a name, and below it what is done"
        yield Diagnostic(RULE, LEVEL, view.recipe.header.span("title"), message, hint)
