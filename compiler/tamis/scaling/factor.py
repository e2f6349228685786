"""A factor by which a recipe is scaled, or why there is none."""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple


class Wanted(NamedTuple):
    """The factor, or else what is wrong with the wish, in words for the cook."""

    factor: Fraction = Fraction(1)
    problem: str = ""
