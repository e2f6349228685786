"""Volumes as cups and spoons.

100 ml is 0.4227 of a US cup. Nobody has such a cup: they have ¼, ⅓, ½, ⅔, ¾ and 1, and spoons. So a volume
is shown as one of the measures that lie in the drawer, or as two of them ("⅓ cup plus 1½ tbsp"), if that
comes within 2.5 % (5 % under a teaspoon). Where nothing does, the nearest one is called scant or generous,
and the millilitres stand beside it.

All such measures are made once, in order, for the cup and spoons that the house chose: a ladder. Showing a
volume is then finding the rung.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from tamis.quantity.numerals import number
from tamis.quantity.units import Units
from tamis.quantity.weights import millilitres

NEAR, NEAR_SMALL = Fraction(25, 1000), Fraction(5, 100)
# From here a step of the single measures is within the tolerance of any volume, so the ladder can end.
TOP_CUPS = 6

CUP_PARTS = [Fraction(0), Fraction(1, 4), Fraction(1, 3), Fraction(1, 2), Fraction(2, 3), Fraction(3, 4)]
TSP_PARTS = sorted({Fraction(n, 8) for n in range(8)} | {Fraction(1, 3), Fraction(2, 3)})
MORE_TBSP = [Fraction(n, 2) for n in (2, 3, 4, 5, 6)]
MORE_TSP = [Fraction(1), Fraction(2)]
SPOON_AND_TSP = [Fraction(n, 4) for n in range(1, 12)]


class Spoons(NamedTuple):
    """A volume as cups and spoons; `near`: it is within the tolerance, so that it can stand alone."""

    text: str
    near: bool


class _Rung(NamedTuple):
    ml: Fraction
    rank: int  # how much a cook has to do: measures to take, then odd spoons
    text: str


def kitchen_volume(ml: Fraction, units: Units) -> str:
    """A volume in ml as cups and spoons: "1 cup plus 2 tbsp", "⅔ cup", "1⅜ tsp", "scant ⅛ tsp (0.5 ml)"."""
    shown = spoons(ml, units)
    return shown.text if shown.near else f"{shown.text} ({millilitres(ml)})"


def spoons(ml: Fraction, units: Units) -> Spoons:
    """A volume in ml as cups and spoons, and whether that is near enough to stand alone."""
    cup, tbsp, tsp = _sizes(units)
    if not ml:
        return Spoons("0", True)
    if ml >= TOP_CUPS * cup:
        return Spoons(_cups(_nearest_cups(ml / cup)), True)
    ladder = _ladder(cup, tbsp, tsp)
    tolerance = ml * (NEAR_SMALL if ml < tsp else NEAR)
    near = ladder[_first(ladder, ml - tolerance) : _first(ladder, ml + tolerance, past=True)]
    if near:
        return Spoons(min(near, key=lambda rung: (rung.ml != ml, rung.rank, abs(rung.ml - ml))).text, True)
    return Spoons(_about(ml, [rung for rung in ladder if rung.rank < 2]), False)


def _about(ml: Fraction, singles: list[_Rung]) -> str:
    nearest = min(singles, key=lambda rung: abs(rung.ml - ml))
    if ml < nearest.ml * Fraction(3, 4):
        return f"less than {nearest.text}"
    return f"scant {nearest.text}" if ml < nearest.ml else f"generous {nearest.text}"


def _first(ladder: list[_Rung], ml: Fraction, past: bool = False) -> int:
    """The first rung not below a volume; with `past`, the first above it."""
    # A rung compares by its millilitres first, and every rank is above -1 and below 99.
    return bisect_left(ladder, _Rung(ml, 99 if past else -1, ""))


def _sizes(units: Units) -> tuple[Fraction, Fraction, Fraction]:
    cup, tbsp, tsp = units.get("cup"), units.get("tbsp"), units.get("tsp")
    assert cup and tbsp and tsp, "Units.load defines all three"
    return cup.factor, tbsp.factor, tsp.factor


_ladders: dict[tuple[Fraction, Fraction, Fraction], list[_Rung]] = {}


def _ladder(cup: Fraction, tbsp: Fraction, tsp: Fraction) -> list[_Rung]:
    """All measures in order of volume, the simplest of equals only. Made once for a set of sizes."""
    if (cup, tbsp, tsp) not in _ladders:
        simplest: dict[Fraction, _Rung] = {}
        for rung in sorted(_rungs(cup, tbsp, tsp)):
            simplest.setdefault(rung.ml, rung)
        _ladders[cup, tbsp, tsp] = list(simplest.values())
    return _ladders[cup, tbsp, tsp]


def _rungs(cup: Fraction, tbsp: Fraction, tsp: Fraction) -> Iterator[_Rung]:
    """Teaspoons up to a tablespoon, tablespoons up to a quarter cup, cups; and two of them."""
    for n in _steps(tbsp / tsp, TSP_PARTS):
        yield _Rung(n * tsp, 0 if n.denominator in (1, 2, 4) else 1, f"{number(n)} tsp")
    for n in _steps(cup / 4 / tbsp, [Fraction(0), Fraction(1, 2)]):
        if n >= 1:
            yield _Rung(n * tbsp, 0 if n.denominator == 1 else 1, f"{number(n)} tbsp")
            if n.denominator == 1:
                yield from _plus(n * tbsp, f"{number(n)} tbsp", tsp, "tsp", SPOON_AND_TSP, tbsp)
    for n in _steps(Fraction(TOP_CUPS + 1), CUP_PARTS):
        yield _Rung(n * cup, 0, _cups(n))
        yield from _plus(n * cup, _cups(n), tbsp, "tbsp", MORE_TBSP, cup / 4)
        yield from _plus(n * cup, _cups(n), tsp, "tsp", MORE_TSP, tbsp)


def _plus(
    base: Fraction, text: str, unit: Fraction, name: str, more: list[Fraction], below: Fraction
) -> Iterator[_Rung]:
    for n in more:
        if n * unit < below:
            yield _Rung(base + n * unit, 2 if n.denominator == 1 else 3, f"{text} plus {number(n)} {name}")


def _steps(end: Fraction, parts: list[Fraction]) -> Iterator[Fraction]:
    """All numbers above nought and below the end that are whole, or whole and a part."""
    for whole in range(end.__ceil__()):
        for part in parts:
            if 0 < whole + part < end:
                yield whole + part


def _nearest_cups(cups: Fraction) -> Fraction:
    whole = cups.__floor__()
    return min((whole + part for part in [*CUP_PARTS, Fraction(1)]), key=lambda n: abs(n - cups))


def _cups(n: Fraction) -> str:
    return f"{number(n)} cup" if n <= 1 else f"{number(n)} cups"
