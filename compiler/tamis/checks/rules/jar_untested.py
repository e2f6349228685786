"""Jars are to stand on a shelf, by a recipe that is not tested for it.

Food in a closed jar is safe on a shelf only if its acid and its processing were tested; low-acid food (vegetables,
meat, fish, beans) can carry a deadly poison without a sign.

Keep it in the fridge (`keeps: 2 months, in the fridge`), or follow a tested preserving recipe.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words, keeps_cold
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.plain import phrases, plain_of
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.plain import Plain

RULE = "jar-untested"
LEVEL: Severity = "warning"
ABOUT = ("jars",)
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
    calls = {caution.key for caution in view.safety.cautions}
    language = view.recipe.language
    if (
        "jars" not in calls
        or "garlic-oil" in calls
        or not keeps
        or keeps_cold(keeps, language)
        or plain_of(keeps, view.kitchen).ask(_is_short)
    ):
        return
    hint = "keep them in the fridge, or follow tested preserving guidance (USDA Complete Guide to Home Canning)"
    message = "these jars are to stand outside the fridge, and the recipe is not tested for that"
    yield Diagnostic(RULE, LEVEL, view.recipe.header.span("keeps"), message, hint)


def _is_short(plain: Plain) -> bool:
    """Whether a few days or hours are told, for which no jar need be tested."""
    language = plain.kitchen.language
    words = check_words(language).keeping
    units, counts = frozenset(words.units), phrases(words.counts, language)
    counted = {at + size for at in range(len(plain)) if (size := plain.phrase(counts, at))}
    return any(word in units and (plain.is_count(at - 1) or at in counted) for at, word in enumerate(plain.said) if at)
