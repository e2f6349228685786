"""Jars are to stand on a shelf, by a recipe that is not tested for it.

Food in a closed jar is safe on a shelf only if its acid and its processing were tested; low-acid food (vegetables,
meat, fish, beans) can carry a deadly poison without a sign.

Keep it in the fridge (`keeps: 2 months, in the fridge`), or follow a tested preserving recipe.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words, keeps_cold
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "jar-untested"
LEVEL: Severity = "warning"
BAD = """\
title: Pickled carrots
makes: 2 jars
tags: preserve
keeps: 6 months, in a cool cupboard

# Carrots

Boil [500 g carrots, sliced] [in 500 ml water] [in a pan] [for 5 min].
Ladle [into 2 jars] and screw the lids on.
"""
GOOD = """\
title: Pickled carrots
makes: 2 jars
tags: preserve
keeps: 1 month, in the fridge

# Carrots

Boil [500 g carrots, sliced] [in 500 ml water] [in a pan] [for 5 min].
Ladle [into 2 jars] and screw the lids on.
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Closed jars that keep long, and not in the fridge."""
    keeps = view.recipe.header.keeps.lower()
    calls = view.safety is not None and any(caution.key == "jars" for caution in view.safety.cautions)
    language = view.recipe.language
    if not calls or not keeps or keeps_cold(keeps, language) or _short(language).search(keeps):
        return
    hint = "keep them in the fridge, or follow tested preserving guidance (USDA Complete Guide to Home Canning)"
    message = "these jars are to stand outside the fridge, and the recipe is not tested for that"
    yield Diagnostic(RULE, LEVEL, view.recipe.header.span("keeps"), message, hint)


@cache
def _short(language: str) -> re.Pattern[str]:
    """A few days or hours, for which no jar need be tested."""
    words = check_words(language).keeping
    return pattern(rf"\b(?:\d+(?:[–-]\d+)?|{one_of(words.counts)}) {one_of(words.units)}\b")
