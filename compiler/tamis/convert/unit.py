"""A measure in the one unit that somebody wants."""

from __future__ import annotations

from fractions import Fraction

from tamis.convert.asked import Asked
from tamis.convert.degrees import heat_of, in_scale
from tamis.convert.measures import Figure, in_unit, worths
from tamis.convert.words import degree_words, piece_words
from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.display import grams, millilitres
from tamis.quantity.measure_words import unit_words
from tamis.quantity.near import nearest
from tamis.quantity.nouns import nouns
from tamis.quantity.numerals import decimal, number
from tamis.record import NamedTuple

# The parts of a cup or spoon that are in a drawer.
DRAWER = (1, 2, 3, 4, 8)
METRIC = {"g": grams, "ml": millilitres}


class Said(NamedTuple):
    """The measure in the wanted unit, or why it cannot be said and what could be tried."""

    text: str = ""
    problem: str = ""
    hint: str = ""


def said_in(asked: Asked, wanted: str, kitchen: Kitchen) -> Said:
    """What was asked, in a unit by its spelling, a count word of the food (or `piece`), or a scale of degrees."""
    if asked.degrees:
        return _heat(asked, wanted, kitchen)
    if not asked.measures or asked.problem:
        return Said(problem=asked.problem or "one length at a time can be said in a unit", hint=asked.hint)
    unit = kitchen.units.get(wanted)
    word = unit.id if unit else nouns(kitchen.language).singular(wanted.lower())
    if unit is None and word not in _words(asked, kitchen):
        return _no_unit(asked, wanted, kitchen)
    figure = in_unit(asked, worths(asked, kitchen), word, kitchen)
    if figure is None:
        return Said(problem=_why(asked, wanted, kitchen))
    return Said(_figure(figure, word, kitchen))


def _heat(asked: Asked, wanted: str, kitchen: Kitchen) -> Said:
    heat = heat_of(asked.degrees) if asked.degrees else None
    scale = degree_words(kitchen.language).scales.get(wanted.lower().lstrip("° "))
    if heat is None:
        return Said(problem="no oven has this setting", hint="gas marks are ¼, ½ and 1 to 10")
    if scale is None:
        return Said(problem=f"“{wanted}” is not a temperature scale", hint="one of C, F, fan, gas")
    text = in_scale(heat, scale)
    return Said(text) if text else Said(problem="no gas mark is near this temperature")


def _words(asked: Asked, kitchen: Kitchen) -> list[str]:
    """The count words by which this food's pieces are weighed."""
    goods = asked.item.goods if asked.item else None
    piece = sorted(piece_words(kitchen.language).piece)
    return [*piece, *(piece.word for piece in goods.pieces if piece.word)] if goods and goods.pieces else []


def _no_unit(asked: Asked, wanted: str, kitchen: Kitchen) -> Said:
    near = kitchen.units.near(wanted) or nearest(wanted.lower(), _words(asked, kitchen))
    pieces = ", ".join(f"`{word}`" for word in _words(asked, kitchen))
    hint = f"did you mean `{near}`?" if near else f"for this food also {pieces}" if pieces else ""
    return Said(problem=f"no unit is called “{wanted}”", hint=hint)


def _why(asked: Asked, wanted: str, kitchen: Kitchen) -> str:
    here, there = kitchen.units.get(asked.measures[0].unit), kitchen.units.get(wanted)
    if any(unit is not None and unit.kind == "nominal" for unit in (here, there)):
        return "no standard says how much that is: it is shown as written and never converted"
    if asked.item is None:
        return f"{asked.text} can be converted to {wanted} only for a named food: a cup of flour is not a cup of honey"
    return f"no figure on record converts {asked.text} to {wanted}"


def _figure(figure: Figure, unit: str, kitchen: Kitchen) -> str:
    usual = _through(figure.usual, unit, kitchen)
    range_ = _through(Amount(figure.least, figure.most), unit, kitchen)
    return usual if not figure.differs or usual == range_ else f"{usual} (sources differ: {range_})"


def _through(amount: Amount, unit: str, kitchen: Kitchen) -> str:
    low, high = _bare(amount.lo, unit), _bare(amount.hi, unit)
    words = unit if unit in piece_words(kitchen.language).sizes else unit_words(unit, amount.hi > 1, kitchen.language)
    return f"{low} {words}" if low == high else f"{low}–{high} {words}"


def _bare(value: Fraction, unit: str) -> str:
    """A number as a scale or a spoon would give it: a kitchen fraction where it is one."""
    if unit in METRIC and value < 1000:
        return METRIC[unit](value).partition(" ")[0]
    return number(value) if value.denominator in DRAWER else decimal(value)
