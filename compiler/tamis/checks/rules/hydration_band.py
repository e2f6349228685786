"""A bread dough much drier or much wetter than the expected range.

Too little water and the dough tears; too much and it runs. Mostly a figure was mistyped, or an ingredient lost its
bracket.

Check water and flour. The water in milk, eggs, butter and honey counts, as far as it is known. If you
bake wetter or drier, set your own range in `kitchen.toml`: `[dough]`, `hydration = [50, 100]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.dough import band_text, bread, outside, place_of
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.formula.formula import FormulaRow

RULE = "hydration-band"
LEVEL: Severity = "information"
ABOUT = ("view ferments",)
BAD = """\
title: Tin loaf
makes: 1 loaf

# Dough

Mix [500 g bread flour], [3.2 kg water], [10 g fine salt] and [5 g instant yeast] [in a large bowl].
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

_DRY = ("flour", "salt", "yeast", "fat", "sugar", "flavour")
_LITTLE = 10
"""Percent of the flour under which an unknown ingredient is taken for dry (common practice: seeds, spices, cheese)."""


def check(view: View) -> Iterator[Diagnostic]:
    """Breads all of whose parts have a weight, and whose water lies outside the house's band."""
    formula = bread(view)
    band = view.kitchen.settings.dough.hydration
    if formula is None or not outside(formula.all_water, band, formula.flour):
        return
    if formula.unweighed or (formula.all_water.hi < band[0] and any(_may_be_wet(row) for row in formula.rows)):
        return
    from tamis.formula.wording import percent

    said = f"{percent(formula.all_water)} % of the flour"
    message = f"the water in this dough is {said}; expected {band_text(band)}"
    yield Diagnostic(RULE, LEVEL, place_of(view, formula, "water"), message, "check the weights of water and flour")


def _may_be_wet(row: FormulaRow) -> bool:
    """Mashed potato, cottage cheese or beer bring water that no figure tells; a little of it makes no dough wet."""
    if row.part or row.total is None or row.total.percent.hi < _LITTLE:
        return False
    return row.goods is None or (row.goods.water is None and row.goods.role not in _DRY)
