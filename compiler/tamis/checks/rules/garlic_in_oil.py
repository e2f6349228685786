"""Garlic or herbs in oil are to be kept outside the fridge.

Under oil there is no air, and the spores that garlic and herbs carry can grow into a poison that nobody smells.

Keep it in the fridge and use it within 4 days: `keeps: 4 days, in the fridge` (extension services' advice, from
memory).
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import keeps_cold
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "garlic-in-oil"
LEVEL: Severity = "warning"
ABOUT = ("garlic-oil", "view safety.oil_waits")
BAD = """\
title: Garlic oil
makes: 250 ml
keeps: 2 months, in a bottle

# Oil

Warm [250 ml olive oil] with [6 cloves garlic, crushed] [in a pan] [over low heat] [until it smells sweet, 9 min].
"""
GOOD = """\
title: Garlic oil
makes: 250 ml
keeps: 4 days, in the fridge

# Oil

Warm [250 ml olive oil] with [6 cloves garlic, crushed] [in a pan] [over low heat] [until it smells sweet, 9 min].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """A dish that is mostly oil with garlic in it, kept but not in the fridge; a batch of that kind that waits so."""
    header = view.recipe.header
    calls = any(caution.key == "garlic-oil" for caution in view.safety.cautions)
    cold = keeps_cold(header.keeps, view.recipe.language)
    spans = [header.span("keeps")] if calls and header.keeps and not cold else []
    for span in (*spans, *(wait.span for wait in view.safety.oil_waits)):
        hint = "keep it in the fridge and use it within 4 days; local food codes prevail"
        yield Diagnostic(RULE, LEVEL, span, "garlic or herbs in oil are kept outside the fridge", hint)
