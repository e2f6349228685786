"""A food that is not in the ingredient data is called like raw meat, fish or egg.

The allergens and hazards of an unknown food are not known. No rule checks that "heather-fed chicken breast" is cooked.

Write it by a name in the ingredient data (the rest after the comma), or give it in `goods.toml` with its hazard.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "hazard-unknown"
LEVEL: Severity = "warning"
ABOUT = ("view safety.doubts",)
BAD = """\
title: Seared breast
serves: 2

# Breast

% allow unknown-ingredient: the farm's own
Fry [2 heather-fed chicken breasts] [in 20 g butter] [in a frying pan] [until golden, 10 min].
"""
GOOD = """\
title: Seared breast
serves: 2

# Breast

Fry [2 chicken breasts, heather-fed] [in 20 g butter] [in a frying pan] [until golden and 74 °C inside, 10 min].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Each use of an unknown food whose last words are a known, raw one."""
    for doubt in view.safety.doubts:
        known = f"write `{doubt.like}` and the rest after a comma, or " if doubt.like else ""
        hint = f"{known}give it in `goods.toml` with its hazard"
        from tamis.safety.wording import doubt_words

        yield Diagnostic(RULE, LEVEL, doubt.span, doubt_words(doubt), hint)
