"""A bread with much more or much less salt than bread has.

Without salt a dough is slack and the bread tastes of nothing; with double the salt it hardly rises and nobody eats
it. A slipped decimal point makes either.

Bring the salt to 1–2.5 % of all flour, including the flour in preferments; a sweet or rich dough may have half of the
least. If your bread is salted otherwise, set your own range in `kitchen.toml`: `[dough]`, `salt = [1, 2]`.
"""

# Common practice: about 2 % in lean bread, down to 1 % in tin loaves and small milk rolls, less in sweet doughs.

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.dough import band_text, bread, outside, place_of, unweighed
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "salt-band"
LEVEL: Severity = "warning"
ABOUT = ("view ferments",)
BAD = """\
title: Tin loaf
makes: 1 loaf

# Dough

Mix [500 g bread flour], [320 g water], [36 g fine salt] and [5 g instant yeast] [in a large bowl].
[Rise for 1 h] [until doubled].
[Bake for 35 min] [at 220 °C].
"""
GOOD = """\
title: Tin loaf
makes: 1 loaf

# Dough

Mix [500 g bread flour], [320 g water], [10 g fine salt] and [5 g instant yeast] [in a large bowl].
[Rise for 1 h] [until doubled].
[Bake for 35 min] [at 220 °C].
"""


_RICH = 15
"""Percent of the flour from which sugar and fat make a dough rich (common practice)."""


def check(view: View) -> Iterator[Diagnostic]:
    """Breads whose salt is known and lies outside the house's band."""
    formula = bread(view)
    least, most = view.kitchen.settings.dough.salt
    if formula is None:
        return
    band = (least / 2 if formula.rich.lo >= _RICH else least, most)
    if not outside(formula.salt, band, formula.flour) or unweighed(view, "salt"):
        return
    from tamis.formula.wording import percent
    from tamis.quantity.display import grams

    flour = formula.flour.lo
    said = f"the salt is {percent(formula.salt)} % of the flour" if formula.salt.hi else "no salt goes into this bread"
    usual = f"{grams(flour * band[0] / 100)} to {grams(flour * band[1] / 100)} for {grams(flour)} of flour"
    message = f"{said}; expected {band_text(band)}"
    yield Diagnostic(RULE, LEVEL, place_of(view, formula, "salt"), message, f"that would be {usual}")
