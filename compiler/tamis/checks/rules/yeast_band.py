"""A bread with much more or much less yeast than the expected range.

With ten times the yeast a dough is over before the oven is hot and tastes of it; with a tenth it is still flat in the
evening. Fresh yeast weighs about three times as much as instant dry for the same work, so a changed kind is often
the cause.

Check amount and kind. All kinds count as instant dry here (fresh 0.33, active dry 0.75 of their weight; published
factors disagree, so the range is wide). Set your own range in `kitchen.toml`: `[dough]`, `yeast = [0.1, 2]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.dough import band_text, bread, outside, place_of, unweighed
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "yeast-band"
LEVEL: Severity = "information"
ABOUT = ("view ferments",)
BAD = """\
title: Tin loaf
makes: 1 loaf

# Dough

Mix [500 g bread flour], [320 g water], [10 g fine salt] and [50 g instant yeast] [in a large bowl].
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


def check(view: View) -> Iterator[Diagnostic]:
    """Yeasted breads whose yeast lies outside the house's band; beside a starter little yeast is no fault."""
    formula = bread(view)
    band = view.kitchen.settings.dough.yeast
    if (
        formula is None
        or not formula.yeast.hi
        or not outside(formula.instant_yeast, band, formula.flour)
        or unweighed(view, "yeast")
    ):
        return
    if formula.starter.hi and formula.instant_yeast.hi < band[0]:
        return
    from tamis.formula.wording import percent

    said = f"{percent(formula.yeast)} % of the flour"
    if formula.yeast != formula.instant_yeast:
        said += f", as instant dry about {percent(formula.instant_yeast)} %"
    message = f"the yeast is {said}; expected {band_text(band)}"
    yield Diagnostic(RULE, LEVEL, place_of(view, formula, "yeast"), message, "check its amount and its kind")
