"""*Meanwhile* in plain words.

The work is then planned after the line above instead of beside it, and the batch above is not left waiting.

Write it as a clause: `[Meanwhile], heat [the oven] [to 200 °C]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "meanwhile-outside-brackets"
LEVEL: Severity = "information"
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


@cache
def _opener(language: str) -> re.Pattern[str]:
    return pattern(rf"{one_of(check_words(language).meanwhile)}\b", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """Lines that begin with the words; within a line they are often told of the same pot."""
    opener = _opener(view.recipe.language)
    for action in view.recipe.actions:
        first = action.parts[0] if action.parts else None
        found = opener.match(first.text) if isinstance(first, Text) else None
        if first is not None and found:
            message = f"“{found[0]}” in plain words: this line is planned after the one above, not beside it"
            span = Span(first.span.start, first.span.start + found.end())
            yield Diagnostic(RULE, LEVEL, span, message, f"write `[{found[0]}]`")
