"""A recipe that says neither what it makes nor how many it serves.

Without one of them nobody knows whether to double it, and it can be neither scaled nor costed nor put on
a menu.

Add `makes: 2 loaves`, `serves: 4`, or both, to the header.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "missing-yield"
LEVEL: Severity = "warning"
ABOUT = ("no recipe.header.serves",)
BAD = """\
title: Salted water

# Water

Stir [1 l water] with [10 g fine salt] [in a jug].
"""
GOOD = """\
title: Salted water
makes: 1 l

# Water

Stir [1 l water] with [10 g fine salt] [in a jug].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Headers without either key; a value that cannot be read, or no header at all, is told when it is read."""
    keys = {field.key: field.key_span for field in view.document.fields}
    if keys and view.recipe.components and not keys.keys() & {"makes", "serves"}:
        message = "this recipe says neither what it makes nor how many it serves"
        span = keys.get("title", next(iter(keys.values())))
        made = example(view.recipe.language, "made").strip("`")
        yield Diagnostic(RULE, LEVEL, span, message, f"add `serves: 4` or `makes: {made}` to the header")
