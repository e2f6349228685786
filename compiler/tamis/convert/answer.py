"""The whole answer to what somebody wants converted, in rows: label, words, and whose figure it is."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction

from tamis.convert.asked import Asked
from tamis.convert.degrees import heat_lines, heat_of
from tamis.convert.measures import DRAWERS, Count, Figure, Worths, counts, drawer, in_states, worths
from tamis.convert.substitutes import Instead, instead_of
from tamis.convert.words import piece_words
from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.display import grams, kitchen_volume, millilitres, plural, pounds_ounces
from tamis.quantity.measure import base, kind
from tamis.quantity.numerals import decimal, number
from tamis.quantity.units import Cup, Units
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.wording import ends
from tamis.words import example

NO_STANDARD = "no standard says how much a {} is: it is shown as written and never converted"
MM_PER_INCH = Fraction(254, 10)
LIGHTEST = 7
"""Grams under which ounces say nothing: a quarter of one."""

Show = Callable[[Fraction], str]


class Row(NamedTuple):
    """One line of an answer."""

    label: str
    text: str
    source: str = ""


class Section(NamedTuple):
    """Rows that belong together; the first section of an answer has no title."""

    title: str
    rows: tuple[Row, ...]


class Answer(NamedTuple):
    """Everything that is known of what was asked; `problem` tells why it is nothing, or not all."""

    asked: str
    sections: tuple[Section, ...] = ()
    notes: tuple[str, ...] = ()
    worths: Worths = Worths()
    problem: str = ""
    hint: str = ""


def answer(asked: Asked, kitchen: Kitchen) -> Answer:
    """What was asked, in every other measure."""
    if asked.degrees:
        return _of_degrees(asked, kitchen)
    if asked.sides:
        return _of_sides(asked, kitchen)
    if not asked.measures:
        return Answer(asked.text, problem=asked.problem, hint=asked.hint)
    unit = kitchen.units.get(asked.measures[0].unit)
    if unit is not None and unit.kind == "nominal":
        return Answer(asked.text, notes=(NO_STANDARD.format(unit.id),))
    if unit is not None and unit.kind == "length":
        return _of_sides(asked._replace(sides=asked.measures), kitchen)
    return _of_food(asked, worths(asked, kitchen), kitchen)


def _of_degrees(asked: Asked, kitchen: Kitchen) -> Answer:
    assert asked.degrees is not None
    heat = heat_of(asked.degrees)
    if heat is None:
        wrong = "no oven has this gas mark" if asked.degrees.scale == "gas" else "this is not a temperature"
        return Answer(asked.text, problem=wrong, hint="gas marks are ¼, ½ and 1 to 10")
    lines = heat_lines(heat, asked.degrees, kitchen.language)
    return Answer(asked.text, (Section("", tuple(Row(*line) for line in lines)),))


def _of_sides(asked: Asked, kitchen: Kitchen) -> Answer:
    """Lengths, a side each: `9 inches`, `20 × 30 cm`."""
    lengths = [base(side, kitchen.units) or Amount(Fraction(0), Fraction(0)) for side in asked.sides]
    cm = " × ".join(ends(mm, lambda value: f"{decimal(_to(value / 10, 10))} cm", kitchen.language) for mm in lengths)
    eighths = " × ".join(
        ends(mm, lambda value: f"{number(_to(value / MM_PER_INCH, 8))} inch", kitchen.language) for mm in lengths
    )
    return Answer(asked.text, (Section("", (Row("metric", cm), Row("US", f"{eighths} (to the eighth)"))),))


def _to(value: Fraction, parts: int) -> Fraction:
    return Fraction(round(value * parts), parts)


def _of_food(asked: Asked, known: Worths, kitchen: Kitchen) -> Answer:
    unit = kitchen.units.get(asked.measures[0].unit)
    weighed = unit is not None and unit.kind == "mass"
    first = Section("", (*_weights(known, weighed, kitchen.language), *_volumes(known, weighed, kitchen.language)))
    item = asked.item if asked.item is not None and asked.item.goods is not None else None
    states = _states(asked, known, item, kitchen) if item else ()
    sections = [first, *(_other_sections(asked, known, item, states, kitchen) if item else ())]
    notes = list[str]()
    if known.by_analogy:
        notes.append("≈ based on a similar food: weigh it once to be sure")
    if item and not asked.problem and not states and (known.grams is None or known.ml is None):
        notes.append(_missing(item.name, known, kitchen.language))
    filled = tuple(section for section in sections if section.rows)
    return Answer(asked.text, filled, tuple(notes), known, asked.problem, asked.hint)


def _missing(name: str, known: Worths, language: str) -> str:
    if known.grams is None and known.ml is None:
        return f"no weight of a piece on record for {name}: write it, as in {example(language, 'can')}"
    return f"no density on record for {name}: its volume cannot be converted to weight, nor back"


def _weights(known: Worths, weighed: bool, language: str) -> list[Row]:
    if known.grams is None:
        return []
    mark = "≈ " if known.by_analogy and not weighed else ""
    rows = [Row("weight", mark + _figure(known.grams, grams, language), "; ".join(known.grams_from))]
    if known.grams.usual.lo >= LIGHTEST:
        rows.append(Row("ounces", mark + ends(known.grams.usual, pounds_ounces, language)))
    return rows


def _volumes(known: Worths, weighed: bool, language: str) -> list[Row]:
    if known.ml is None:
        return []
    mark = "≈ " if known.by_analogy and weighed else ""
    rows = [Row("volume", mark + _figure(known.ml, millilitres, language), "; ".join(known.ml_from))]
    for cup, label in DRAWERS.items():
        rows.append(Row(label, mark + _in_drawer(known.ml, drawer(cup, language), cup)))
    return rows


def _in_drawer(ml: Figure, units: Units, cup: Cup) -> str:
    words = ends(ml.usual, lambda value: kitchen_volume(value, units), units.language)
    ounce = units.get("imp_fl_oz" if cup == "imperial" else "fl_oz")
    if ounce is None or cup == "metric" or ml.usual.lo < ounce.factor:
        return words
    said = ends(ml.usual, lambda value: f"{number(_to(value / ounce.factor, 4))} fl oz", units.language)
    return f"{words}, or {said}"


def _figure(figure: Figure, show: Show, language: str) -> str:
    usual = ends(figure.usual, show, language)
    range_ = ends(Amount(figure.least, figure.most), show, language)
    return usual if not figure.differs or usual == range_ else f"{usual}; sources differ: {range_}"


def _other_sections(
    asked: Asked, known: Worths, item: Ingredient, states: tuple[Row, ...], kitchen: Kitchen
) -> list[Section]:
    return [
        Section("In pieces", _pieces(asked, item, known, kitchen)),
        Section("In another state", states),
        Section("Substitutes (approximate)", tuple(_swap(swap) for swap in instead_of(item, known.grams, kitchen))),
    ]


def _pieces(asked: Asked, item: Ingredient, known: Worths, kitchen: Kitchen) -> tuple[Row, ...]:
    if known.grams is None:
        return ()
    words = tuple(measure.unit for measure in asked.measures)
    # What was asked for by the piece, of whatever size, is not told by the piece again.
    plain = (*words, *item.states, *(f"{state} {word}" for state in item.states for word in words))
    return tuple(_count(count, item, kitchen) for count in counts(known.grams, item, plain))


def _count(count: Count, item: Ingredient, kitchen: Kitchen) -> Row:
    """So many pieces, to the quarter."""
    number_ = ends(count.figure.usual, lambda value: number(max(_to(value, 4), Fraction(1, 4))), kitchen.language)
    many = count.figure.usual.hi > 1
    word = count.word or (item.goods.name if item.goods else "")
    each = f"{'≈ ' if count.piece.analogy else ''}{grams(count.piece.usual)} each"
    sized = word in piece_words(kitchen.language).sizes and item.goods is not None
    if sized and item.goods:
        name = item.goods.name if not many else item.goods.plural or plural(item.goods.name, kitchen.language)
        return Row("", f"about {number_} {word} {name} ({each})", count.piece.source)
    return Row("", f"about {number_} {plural(word, kitchen.language) if many else word} ({each})", count.piece.source)


def _states(asked: Asked, known: Worths, item: Ingredient, kitchen: Kitchen) -> tuple[Row, ...]:
    volume = any(kind(measure, kitchen.units) == "volume" for measure in asked.measures)
    show = grams if volume else millilitres
    found = in_states(known, volume, item, kitchen)
    rows = []
    for each in found:
        states = ", ".join(word or "as sold" for word in each.states)
        rows.append(Row("", f"{states}: {_figure(each.figure, show, kitchen.language)}", each.source))
    return tuple(rows)


def _swap(swap: Instead) -> Row:
    asides = [swap.note, f"brings {', '.join(swap.brings)}" if swap.brings else ""]
    told = "; ".join(aside for aside in asides if aside)
    return Row("", f"{swap.text}: {told}" if told else swap.text, "; ".join(swap.sources))
