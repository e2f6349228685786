"""Volumes as cups and spoons.

100 ml is 0.4227 of a US cup. Nobody has such a cup: they have ¼, ⅓, ½, ⅔, ¾ and 1, and spoons. So a volume
is shown as one of the measures that lie in the drawer, or as two of them ("⅓ cup plus 1½ tbsp"), if that
comes within 2.5 % (5 % under a teaspoon). Where nothing does, the nearest one is called scant or generous,
and the millilitres stand beside it.

All such measures are made once, in order, for the cup and spoons that the house chose: a ladder. Showing a
volume is then finding the rung.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from fractions import Fraction
from functools import lru_cache
from math import ceil, floor, lcm

from tamis.quantity.measure_words import measure_words, unit_words
from tamis.quantity.numerals import number
from tamis.quantity.units import Units
from tamis.quantity.weights import millilitres
from tamis.record import NamedTuple

NEAR, NEAR_SMALL = Fraction(25, 1000), Fraction(5, 100)
NEAR_END = Fraction(1, 10)
# From here a step of the single measures is within the tolerance of any volume, so the ladder can end.
TOP_CUPS = 6
FEW_QUARTS = 2
"""From here on nobody counts cups of a liquid."""

# The measures in the drawer, in twenty-fourths so that thirds and eighths are whole.
WHOLE = 24
CUP_PARTS = [0, 6, 8, 12, 16, 18]
TBSP_PARTS = [0, 12]
TSP_PARTS = [0, 3, 6, 8, 9, 12, 15, 16, 18, 21]
# What may be added to another measure, and how much handling that is: whole spoons are readily added, 1¾ cups plus
# 2 tbsp is easier than 1⅔ cups plus 3 tbsp, and 1 tbsp plus 2¾ tsp is a scant 2 tbsp (common practice).
MORE_TBSP = {24: 3, 48: 3, 72: 4, 36: 5}
MORE_TSP = {24: 4, 48: 4}
MORE_TSP_TO_TBSP = {24: 3, 48: 3, 12: 4, 6: 4, 18: 5, 30: 5, 36: 5, 42: 5, 54: 5, 60: 5}
TWO = 3
"""The least rank of two measures."""


class Spoons(NamedTuple):
    """A volume as cups and spoons; `near`: it is within the tolerance, so that it can stand alone; `two`: it takes two
    of them."""

    text: str
    near: bool
    two: bool = False


class _Rung(NamedTuple):
    """One measure, or two of them: their volume in the ladder's own small parts, how much handling they are, and how
    many twenty-fourths of which units. Of all the rungs few are ever said, so they are put into words only then."""

    at: int
    rank: int  # 0 to 2: one measure, plain, less plain, odd; from 3 on: two of them
    first: tuple[int, str]
    second: tuple[int, str] | None = None

    def text(self, language: str) -> str:
        """Its name."""
        said = _many(Fraction(self.first[0], WHOLE), self.first[1], language)
        if self.second is None:
            return said
        more = _many(Fraction(self.second[0], WHOLE), self.second[1], language)
        return measure_words(language).plus.format(first=said, second=more)


class _Ladder(NamedTuple):
    """All measures in order of volume; `parts` make a millilitre, so that every rung is a whole number, as is a `cup`
    and a `tsp`. `single` are the rungs of one measure."""

    rungs: list[_Rung]
    single: list[_Rung]
    places: list[int]
    parts: int
    cup: int
    tsp: int


def kitchen_volume(ml: Fraction, units: Units) -> str:
    """A volume in ml as cups and spoons: "1 cup plus 2 tbsp", "⅔ cup", "2¼ tsp", "scant ⅛ tsp (0.5 ml)"."""
    shown = spoons(ml, units)
    return shown.text if shown.near else f"{shown.text} ({millilitres(ml)})"


def spoons(ml: Fraction, units: Units) -> Spoons:
    """A volume in ml as cups and spoons, and whether that is near enough to stand alone."""
    if not ml:
        return Spoons("0", True)
    ladder = _ladder(units)
    # In parts the volume is top / bottom; worked in whole numbers, since each step of a `Fraction` is dear.
    top, bottom = ml.numerator * ladder.parts, ml.denominator
    if top >= TOP_CUPS * ladder.cup * bottom:
        return Spoons(_many(_nearest_cups(Fraction(top, bottom * ladder.cup)), "cup", units.language), True)
    slack, one = (NEAR_SMALL if top < ladder.tsp * bottom else NEAR).as_integer_ratio()
    first = bisect_left(ladder.places, -(-top * (one - slack) // (bottom * one)))
    past = bisect_right(ladder.places, top * (one + slack) // (bottom * one))
    if first < past:
        best = _best(ladder.rungs[first:past], top, bottom)
        return Spoons(best.text(units.language), True, best.rank >= TWO)
    return Spoons(_about(ladder, top, bottom, units.language), False)


def single_spoon(ml: Fraction, units: Units) -> str | None:
    """A volume in ml as one measure of the drawer, for an end of a range, which nobody takes to the millilitre; None
    where none is near."""
    ladder = _ladder(units)
    wanted = ml * ladder.parts
    nearest = min(ladder.single, key=lambda rung: (abs(rung.at - wanted), rung.rank))
    return nearest.text(units.language) if abs(nearest.at - wanted) <= NEAR_END * wanted else None


def _best(rungs: list[_Rung], top: int, bottom: int) -> _Rung:
    """The rung that is exact, else the least handling, else the nearest."""
    exact = [rung for rung in rungs if rung.at * bottom == top]
    if exact:
        return exact[0]
    least = min([rung.rank for rung in rungs])
    return min([rung for rung in rungs if rung.rank == least], key=lambda rung: abs(rung.at * bottom - top))


def _about(ladder: _Ladder, top: int, bottom: int, language: str) -> str:
    words = measure_words(language)
    above = bisect_left(ladder.single, -(-top // bottom), key=lambda rung: rung.at)
    beside = ladder.single[max(0, above - 1) : above + 1]
    nearest = min(beside, key=lambda rung: abs(rung.at * bottom - top))
    if top * 4 < nearest.at * bottom * 3:
        return words.less.format(measure=nearest.text(language))
    return (words.scant if top < nearest.at * bottom else words.generous).format(measure=nearest.text(language))


def _sizes(units: Units) -> tuple[Fraction, Fraction, Fraction]:
    cup, tbsp, tsp = units.get("cup"), units.get("tbsp"), units.get("tsp")
    assert cup and tbsp and tsp, "Units.load defines all three"
    return cup.factor, tbsp.factor, tsp.factor


@lru_cache(16)
def _ladder(units: Units) -> _Ladder:
    """The ladder for a house's cup and spoons; of two names for one volume the one with less handling."""
    cup, tbsp, tsp = _sizes(units)
    parts = WHOLE * lcm(cup.denominator, tbsp.denominator, tsp.denominator)
    simplest: dict[int, _Rung] = {}
    # A size in parts is a whole number, and so is a twenty-fourth of it.
    for rung in _rungs(*(int(size * parts / WHOLE) for size in (cup, tbsp, tsp))):
        there = simplest.get(rung.at)
        if (
            there is None
            or rung.rank < there.rank
            or (rung.rank == there.rank and rung.text(units.language) < there.text(units.language))
        ):
            simplest[rung.at] = rung
    places = sorted(simplest)
    rungs = [simplest[at] for at in places]
    single = [rung for rung in rungs if rung.rank < TWO]
    return _Ladder(rungs, single, places, parts, int(cup * parts), int(tsp * parts))


def _rungs(cup: int, tbsp: int, tsp: int) -> Iterator[_Rung]:
    """Teaspoons up to a tablespoon, tablespoons up to half a cup, cups; and two of them. Sizes of 1/24."""
    for n in _steps(TSP_PARTS, WHOLE * tbsp / tsp):
        # Quarters, then thirds; ⅝ tsp is in no drawer.
        yield _Rung(n * tsp, 0 if n % 6 == 0 else 1 if n % 8 == 0 else 2, (n, "tsp"))
    for n in _steps(TBSP_PARTS, WHOLE * cup / 2 / tbsp):
        if n >= WHOLE:
            many = n * tbsp >= WHOLE * cup / 4
            one = _Rung(n * tbsp, (n % WHOLE != 0) + many, (n, "tbsp"))
            yield one
            if n % WHOLE == 0 and not many:
                yield from _plus(one, tsp, "tsp", MORE_TSP_TO_TBSP, WHOLE * tbsp)
    for n in _steps(CUP_PARTS, WHOLE * (TOP_CUPS + 1)):
        one = _Rung(n * cup, 0, (n, "cup"))
        yield one
        thirds = n % 6 != 0
        yield from _plus(one, tbsp, "tbsp", MORE_TBSP, WHOLE * cup / 4, thirds)
        yield from _plus(one, tsp, "tsp", MORE_TSP, WHOLE * tbsp, thirds)


def _plus(one: _Rung, size: int, name: str, more: dict[int, int], below: float, odd: int = 0) -> Iterator[_Rung]:
    for n, rank in more.items():
        if n * size < below:
            yield _Rung(one.at + n * size, rank + odd, one.first, (n, name))


def _steps(parts: list[int], end: float) -> Iterator[int]:
    """All counts above nought and below the end that are whole, or whole and a part."""
    for whole in range(0, ceil(end), WHOLE):
        for part in parts:
            if 0 < whole + part < end:
                yield whole + part


@lru_cache(1024)
def _many(n: Fraction, unit: str, language: str) -> str:
    return f"{number(n)} {unit_words(unit, n > 1, language)}"


def quarts(ml: Fraction, units: Units) -> str:
    """A liquid from a quart up: "1 quart", "2½ quarts", "4¼ cups", "3 quarts plus ⅔ cup".

    Half quarts where one is near; else cups as long as few are to be counted, and then quarter quarts or quarts and
    cups.
    """
    cup, quart = _sizes(units)[0], units.get("quart")
    assert quart is not None, "units.txt defines it"
    wanted = ml / quart.factor
    for parts in (2, 4) if wanted >= FEW_QUARTS else (2,):
        nearest = Fraction(round(wanted * parts), parts)
        if abs(nearest - wanted) <= NEAR * wanted:
            return _many(nearest, "quart", units.language)
    if wanted < FEW_QUARTS:
        return kitchen_volume(ml, units)
    base = Fraction(floor(wanted * 2), 2)
    rest = _many(_nearest_cups((ml - base * quart.factor) / cup), "cup", units.language)
    return measure_words(units.language).plus.format(first=_many(base, "quart", units.language), second=rest)


def _nearest_cups(cups: Fraction) -> Fraction:
    whole = floor(cups)
    return min((whole + Fraction(part, WHOLE) for part in [*CUP_PARTS, WHOLE]), key=lambda n: abs(n - cups))
