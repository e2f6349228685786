"""What the rules for doughs share: which recipes they look at, what lies outside a band, and where it is written.

A cake or a flour-bound sauce has percentages too, and none of the bakers' bands holds for it.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.formula.formula import Formula
    from tamis.model.recipe import Use
    from tamis.quantity.amount import Amount

Band = tuple[Fraction, Fraction]


def bread(view: View) -> Formula | None:
    """The formula of a yeasted or leavened dough whose parts all have a weight; None for all else."""
    formula = view.formula
    return formula if formula is not None and formula.bread and formula.sure else None


def outside(value: Amount, band: Band, flour: Amount | None = None) -> bool:
    """Whether the whole of a percentage lies outside the band, as both are printed: a range that touches it does not.
    `flour`, of which it is a percentage, may be a range, whose middle was counted."""
    lo, hi = value
    if flour is not None and flour.lo:
        middle = (flour.lo + flour.hi) / 2
        lo, hi = lo * middle / flour.hi, hi * middle / flour.lo
    return _as_printed(hi, band[0]) < band[0] or _as_printed(lo, band[1]) > band[1]


def _as_printed(value: Fraction, end: Fraction) -> Fraction:
    """A figure with as many decimals as the end of the band has, and one at least."""
    from tamis.quantity.numerals import rounded

    places = next((places for places in range(1, 4) if 10**places % end.denominator == 0), 4)
    return rounded(value, Fraction(1, 10**places))


def unweighed(view: View, role: str) -> bool:
    """Whether some food of this role goes in without a weight, so that its percentage is not known."""
    return any(not use.mass.hi for use in _uses(view, role))


def place_of(view: View, formula: Formula, role: str) -> Span:
    """Where the most of a role's food is written; without any the heading of the dough, or the title."""
    uses = _uses(view, role)
    if uses:
        return max(uses, key=lambda use: use.mass.hi).ingredient.clause.span
    return view.recipe.components[formula.component].heading or view.recipe.header.span("title")


def _uses(view: View, role: str) -> list[Use]:
    uses = (use for use in view.recipe.uses if use.in_batch and use.ingredient.goods)
    return [use for use in uses if use.ingredient.goods and use.ingredient.goods.role == role]


def band_text(band: Band) -> str:
    """A band in words: "1.5–2.5 %"."""
    from tamis.quantity.numerals import decimal

    return f"{decimal(band[0])}–{decimal(band[1])} %"
