"""Everything that a measure is in other measures.

A cook who asks what ⅔ cup of bread flour is wants grams first, then the spoons of another country, then what the
figure rests on: published densities differ by a tenth and more, and an answer that hides this is a false one. So every
weight names its sources, and where they differ the range stands beside the usual figure.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.convert.asked import Asked
from tamis.convert.words import piece_words
from tamis.kitchen.goods import Density, Piece
from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure, base
from tamis.quantity.units import Cup, Units, shipped
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.adding import is_mass

DRAWERS: dict[Cup, str] = {
    "us": "US cups and spoons", "metric": "metric cups and spoons", "imperial": "imperial cups and spoons",
}  # fmt: skip
GIVEN = "the weight given"
# Nobody counts a hundred onions, or the fortieth part of one.
FEWEST, MOST = Fraction(1, 8), 100


class Figure(NamedTuple):
    """An amount by the usual figure, and by the least and the greatest that the sources give."""

    usual: Amount
    least: Fraction
    most: Fraction

    @property
    def differs(self) -> bool:
        """Whether the sources disagree."""
        return (self.least, self.most) != (self.usual.lo, self.usual.hi)

    def times(self, factor: Fraction) -> Figure:
        """The figure in a unit of which so many make one of the present."""
        return Figure(self.usual.times(factor), self.least * factor, self.most * factor)


class Worths(NamedTuple):
    """What was asked in grams and in millilitres, as far as it can be told.

    `grams_from` and `ml_from` name the sources that each rests on (none: it was said); `by_analogy`: a like food lends
    one of them.
    """

    grams: Figure | None = None
    ml: Figure | None = None
    grams_from: tuple[str, ...] = ()
    ml_from: tuple[str, ...] = ()
    by_analogy: bool = False


def worths(asked: Asked, kitchen: Kitchen) -> Worths:
    """The measures asked for, added up, in grams and millilitres."""
    first, *more = [_worth(measure, asked.item, kitchen) for measure in asked.measures]
    for other in more:
        first = Worths(
            _sum(first.grams, other.grams),
            _sum(first.ml, other.ml),
            tuple(dict.fromkeys((*first.grams_from, *other.grams_from))),
            tuple(dict.fromkeys((*first.ml_from, *other.ml_from))),
            first.by_analogy or other.by_analogy,
        )
    return first


def _sum(one: Figure | None, other: Figure | None) -> Figure | None:
    if one is None or other is None:
        return None
    return Figure(one.usual.plus(other.usual), one.least + other.least, one.most + other.most)


def _worth(measure: Measure, item: Ingredient | None, kitchen: Kitchen) -> Worths:
    unit, amount = kitchen.units.get(measure.unit), base(measure, kitchen.units)
    density = density_of(item, kitchen)
    if unit is not None and amount is not None and unit.kind == "mass":
        return _weighing(exactly(amount), density)
    if unit is not None and amount is not None and unit.kind == "volume":
        ml = exactly(amount)
        if density is None:
            return Worths(None, ml)
        return Worths(_multiplied(ml, density), ml, (density.source,), (), density.analogy)
    return Worths() if unit is not None or item is None else _counted(measure, item, kitchen)


def _weighing(grams: Figure, density: Density | None, *grams_from: str, by_analogy: bool = False) -> Worths:
    """A weight, and what it fills."""
    if density is None:
        return Worths(grams, None, grams_from, (), by_analogy)
    return Worths(grams, _divided(grams, density), grams_from, (density.source,), by_analogy or density.analogy)


def exactly(amount: Amount) -> Figure:
    """A figure that somebody gave, and about which no sources can differ."""
    return Figure(amount, amount.lo, amount.hi)


def _counted(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worths:
    """Pieces, by the cook's own weight of one, by the other measure beside them, or by the goods'."""
    if item.part:
        return _parted(measure, item, kitchen)
    density, count = density_of(item, kitchen), measure.amount
    each = base(item.each, kitchen.units) if item.each else None
    beside = next((base(also, kitchen.units) for also in item.also if is_mass(also, kitchen.units)), None)
    if each is not None:
        return _weighing(exactly(Amount(count.lo * each.lo, count.hi * each.hi)), density, GIVEN)
    if beside is not None:
        return _weighing(exactly(beside), density, GIVEN)
    piece = piece_of(measure.unit, item, kitchen)
    if piece is None:
        return Worths()
    grams = Figure(count.times(piece.usual), count.lo * piece.lo, count.hi * piece.hi)
    return _weighing(grams, density, piece.source, by_analogy=piece.analogy)


def _parted(measure: Measure, item: Ingredient, kitchen: Kitchen) -> Worths:
    """What is taken off a food: `juice of 2 lemons`."""
    ending = item.part.rpartition(" ")[2]
    parts = item.goods.parts if item.goods else ()
    part = next((part for part in parts if part.id.endswith(f"-{ending}")), None)
    goods = kitchen.larder.get(part.id) if part else None
    if part is None or goods is None:
        return Worths()
    grams = Figure(measure.amount.times(part.lo), measure.amount.lo * part.lo, measure.amount.hi * part.hi)
    return _weighing(grams, kitchen.larder.density(goods), part.source)


def density_of(item: Ingredient | None, kitchen: Kitchen) -> Density | None:
    """The density that holds for a food in its states; None for what is only taken off it."""
    known = item is not None and item.goods is not None and not item.part
    return kitchen.larder.density(item.goods, item.states) if known and item and item.goods else None


def piece_of(word: str, item: Ingredient, kitchen: Kitchen) -> Piece | None:
    """What one piece weighs: a clove, a medium one, one of no said size."""
    return kitchen.larder.piece(item.goods, word, item.states) if item.goods else None


def _multiplied(ml: Figure, density: Density) -> Figure:
    return Figure(ml.usual.times(density.usual), ml.least * density.lo, ml.most * density.hi)


def _divided(grams: Figure, density: Density) -> Figure:
    return Figure(grams.usual.times(1 / density.usual), grams.least / density.hi, grams.most / density.lo)


def drawer(cup: Cup, language: str) -> Units:
    """The units of a country's cups and spoons, a key of DRAWERS."""
    return shipped(language, cup)


class Count(NamedTuple):
    """So many pieces of a kind: `word` is as in the goods ("clove", "medium", "" for no said size)."""

    word: str
    figure: Figure
    piece: Piece


def counts(grams: Figure, item: Ingredient, asked: tuple[str, ...]) -> list[Count]:
    """How many pieces a weight is, for each kind of piece that the goods weigh and that was not asked about.

    Of two kinds that weigh the same the first is told, of the kind that was asked about none.
    """
    here = {piece.usual for word in asked if (piece := _named(item, word)) is not None}
    found: dict[Fraction, Count] = {}
    for piece in item.goods.pieces if item.goods and not item.part else ():
        figure = Figure(grams.usual.times(1 / piece.usual), grams.least / piece.hi, grams.most / piece.lo)
        told = piece.usual not in here and FEWEST <= figure.usual.lo <= MOST
        if told and piece.usual not in found:
            found[piece.usual] = Count(piece.word, figure, piece)
    return list(found.values())


def _named(item: Ingredient, word: str) -> Piece | None:
    return next((piece for piece in item.goods.pieces if piece.word == word), None) if item.goods else None


class InState(NamedTuple):
    """The other side of the measure for the food in other states: sifted, chopped, packed."""

    states: tuple[str, ...]
    figure: Figure
    source: str


def in_states(known: Worths, volume: bool, item: Ingredient, kitchen: Kitchen) -> list[InState]:
    """A volume's grams (else a weight's millilitres) in the food's other states, where they have figures.

    States of which a source says the same stand together; what is only the present figure again is left out.
    """
    here = density_of(item, kitchen)
    said: dict[tuple[Fraction, Fraction, Fraction, str], list[Density]] = {}
    for density in item.goods.densities if item.goods and not item.part else ():
        said.setdefault((density.usual, density.lo, density.hi, density.source), []).append(density)
    found = []
    for same in said.values():
        start = known.ml if volume else known.grams
        if start is not None and here not in same:
            turned = _multiplied(start, same[0]) if volume else _divided(start, same[0])
            found.append(InState(tuple(density.state for density in same), turned, same[0].source))
    return found


def in_unit(asked: Asked, known: Worths, wanted: str, kitchen: Kitchen) -> Figure | None:
    """What was asked in one unit (its id, or a count word of the food); None where facts are missing."""
    unit = kitchen.units.get(wanted)
    if unit is None:
        word = "" if wanted in piece_words(kitchen.language).piece else wanted
        piece = piece_of(word, asked.item, kitchen) if asked.item else None
        if piece is None or known.grams is None:
            return None
        grams = known.grams
        return Figure(grams.usual.times(1 / piece.usual), grams.least / piece.hi, grams.most / piece.lo)
    if unit.kind == "length":
        length = base(asked.measures[0], kitchen.units)
        here = kitchen.units.get(asked.measures[0].unit)
        fits = length is not None and here is not None and here.kind == "length"
        return Figure(length, length.lo, length.hi).times(1 / unit.factor) if fits and length else None
    figure = known.grams if unit.kind == "mass" else known.ml if unit.kind == "volume" else None
    return figure.times(1 / unit.factor) if figure else None
