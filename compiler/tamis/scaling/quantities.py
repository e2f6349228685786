"""One quantity of a clause, multiplied: its number in both forms, its unit in the number that fits."""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.house import Kitchen
from tamis.patterns import pattern
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.measure_words import DECIMAL
from tamis.record import NamedTuple
from tamis.scaling.edits import Edit
from tamis.scaling.fitting import count_text, unit_for
from tamis.scaling.numbers import exact_amount
from tamis.scaling.words import clause_words
from tamis.source import Span
from tamis.syntax.items import Bracket, Mark, Product, Quantity, Word
from tamis.table.scaled import scaled_text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.syntax.items import Item

SCALED = ("mass", "volume")
_FACTOR_END = pattern(r"\s*[×x*]")


class Scaling(NamedTuple):
    """By how much, in whose kitchen; `pieces`: divisions come out whole, so that their numbers change too;
    `tools`: so do those of tins and plates; `stay`: the clauses of foods for a purpose that do not grow."""

    factor: Fraction
    kitchen: Kitchen
    pieces: bool = True
    tools: bool = False
    stay: frozenset[Span] = frozenset()


def weighed(quantity: Quantity, text: str, scaling: Scaling) -> Edit:
    """A mass or a volume of a clause's text: `480 g`, `1 lb 8 oz`, `1-2 tbsp`."""
    cuts = [*(part.span.start for part in quantity.then), quantity.span.end]
    starts = [quantity.span.start, *cuts[:-1]]
    parts = (quantity._replace(then=()), *quantity.then)
    said, measures = [], []
    for part, start, end in zip(parts, starts, cuts, strict=True):
        measure = _measure(part, scaling)
        measures.append(measure)
        said.append(_with_number(text[start:end], part, measure, scaling.kitchen.language))
    shown = scaled_text(tuple(measures), "", scaling.kitchen.units)
    return Edit(quantity.span, "".join(said), shown)


def twin_edits(items: Sequence[Item], text: str, scaling: Scaling) -> list[Edit]:
    """The same amount in other measures, right behind the first: `120 ml (1/2 cup)`, `200 ml / 7 fl oz`, `1 cup or
    240 ml`. Not the weight of each of several pieces."""
    words = clause_words(scaling.kitchen.language)
    edits: list[Edit] = []
    joint = False
    for item in items:
        if isinstance(item, Quantity) and item.kind in SCALED and joint:
            edits.append(weighed(item, text, scaling))
        elif isinstance(item, Bracket):
            of_each = any(isinstance(inside, Word) and inside.lower in words.each for inside in item.items)
            twins = (inside for inside in item.items if isinstance(inside, Quantity) and inside.kind in SCALED)
            if not of_each:
                edits += [weighed(twin, text, scaling) for twin in twins]
        joint = (isinstance(item, Mark) and item.text == "/") or (
            isinstance(item, Word) and item.lower in words.alternative
        )
        if not (joint or isinstance(item, Quantity | Bracket)):
            break
    return edits


def joined(first: Edit, second: Edit, measures: tuple[Measure, ...], text: str, scaling: Scaling) -> Edit:
    """Two changes of one measure, `1 cup plus 2 tbsp`, as one whose sum is shown."""
    between = text[first.span.end : second.span.start]
    shown = scaled_text(measures, "", scaling.kitchen.units)
    return Edit(Span(first.span.start, second.span.end), first.exact + between + second.exact, shown)


def scaled_measures(quantity: Quantity, scaling: Scaling) -> tuple[Measure, ...]:
    """A quantity's measures multiplied, the smaller parts of a compound after the first."""
    return tuple(_measure(part, scaling) for part in (quantity, *quantity.then))


def _measure(part: Quantity, scaling: Scaling) -> Measure:
    unit = scaling.kitchen.units.get(part.unit)
    return Measure(part.amount.times(scaling.factor), unit.id if unit else part.unit)


def _with_number(text: str, part: Quantity, measure: Measure, language: str) -> str:
    """The words of a quantity with another number, space and unit as they were written."""
    at = text.lower().rfind(part.unit.lower())
    head, rest = text[:at], text[at + len(part.unit) :]
    gap = head[len(head.rstrip(" -\u00a0\t")) :]
    unit = unit_for(part.unit, measure.unit, measure.amount.hi > 1, language)
    return exact_amount(measure.amount, measure.unit in DECIMAL) + gap + unit + rest


def counted(span: Span, amount: Amount, language: str, hedged: bool = False) -> Edit:
    """A number of pieces; `hedged`: the sentence says *about* already."""
    return Edit(span, exact_amount(amount, decimals=False), count_text(amount, language, hedged))


def multiplied(product: Product, text: str, scaling: Scaling) -> Edit:
    """`2 × 400 g`: so many times as many, each as before."""
    found = _FACTOR_END.search(text, product.span.start)
    assert found, "a product has a sign between its factors"
    amount = product.factors[0].times(scaling.factor)
    return counted(Span(product.span.start, found.start()), amount, scaling.kitchen.language)
