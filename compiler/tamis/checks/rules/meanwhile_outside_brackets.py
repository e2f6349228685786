"""*Meanwhile* in plain words.

The work is then planned after the line above instead of beside it, and the batch above is not left waiting.

Put it in a bracket: `[Meanwhile], heat [the oven] [to 200 °C]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import word_set
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "meanwhile-outside-brackets"
LEVEL: Severity = "information"
ABOUT = ("said meanwhile",)
BAD = """\
title: Baked squash
serves: 4

# Squash

Toss [1 squash, diced] with [10 g fine salt] [in a bowl] and [leave for 30 min].
Meanwhile, heat [the oven] [to 200 °C].
Spread [on a baking tray] and [roast for 40 min] [until soft].
"""
GOOD = """\
title: Baked squash
serves: 4

# Squash

Toss [1 squash, diced] with [10 g fine salt] [in a bowl] and [leave for 30 min].
[Meanwhile], heat [the oven] [to 200 °C].
Spread [on a baking tray] and [roast for 40 min] [until soft].
"""

_MEANWHILE = frozenset(("MEANWHILE",))


def check(view: View) -> Iterator[Diagnostic]:
    """Lines that begin with the words; within a line they are often told of the same pot."""
    for words in view.saying(word_set(view.recipe.language, "meanwhile")):
        size = words.plain.is_a(0, _MEANWHILE) if words.start == words.action.span.start else 0
        if size:
            said = words.plain.slice(0, size)
            message = f"“{said}” in plain words: this line is planned after the one above, not beside it"
            yield Diagnostic(RULE, LEVEL, words.span(0, size), message, f"write `[{said}]`")
