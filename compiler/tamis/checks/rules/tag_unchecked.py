"""A tag makes a claim that nothing here can check.

A guest trusts the tag. Nobody has looked whether it holds: the ingredient data say nothing of salt or of how an animal
was slaughtered, and a claim that a recipe cannot prove is not proved by finding nothing.

Check it yourself, and allow it with a reason; or take the tag out.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "tag-unchecked"
LEVEL: Severity = "information"
ABOUT = ("view safety.unchecked",)
BAD = """\
title: Oat bowl
serves: 1
tags: breakfast, halal

# Oats

Stir [50 g rolled oats] with [100 ml water] [in a bowl] and [leave for 10 min] [until soft].
"""
GOOD = """\
title: Oat bowl
serves: 1
tags: breakfast, vegan

# Oats

Stir [50 g rolled oats] with [100 ml water] [in a bowl] and [leave for 10 min] [until soft].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each such tag."""
    for claim in view.safety.unchecked:
        message = f"“{claim.tag}” promises something that nothing here checks"
        hint = f"check it yourself, and say so: `% allow {RULE}: how it was checked`; or take it out of the tags"
        yield Diagnostic(RULE, LEVEL, view.recipe.header.span("tags"), message, hint)
