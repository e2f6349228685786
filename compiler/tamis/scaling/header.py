"""The header of a scaled recipe: what it makes, whom it serves, and the weight that percentages are of."""

from __future__ import annotations

from tamis.patterns import pattern
from tamis.reading.header import first_amount
from tamis.scaling.edits import Edit
from tamis.scaling.fitting import noun_for
from tamis.scaling.quantities import Scaling, counted, multiplied, twin_edits, weighed
from tamis.source import Span
from tamis.syntax.clause import parse_clause
from tamis.syntax.document import Document, Field
from tamis.syntax.items import Product, Quantity
from tamis.typed import Literal

ScaledKey = Literal["makes", "serves", "flour", "dough"]
KEYS: tuple[ScaledKey, ...] = ("makes", "serves", "flour", "dough")
MAKES: ScaledKey = "makes"
_NUMBER = pattern(r"[\d.,/¼-¾⅓-⅞]+")


def header_edits(document: Document, scaling: Scaling) -> list[Edit]:
    """The changes in the header, counted in the file. Of a key that stands twice only the first counts."""
    edits: list[Edit] = []
    seen: set[str] = set()
    for field in document.fields:
        if field.key in KEYS and field.key not in seen:
            edits += [edit.shifted(field.value_span.start) for edit in _field(field, scaling)]
        seen.add(field.key)
    return edits


def _are_vessels(words: str, scaling: Scaling) -> bool:
    """Whether several vessels are named right after a measure: what each holds is their size."""
    name = words.strip().partition(" ")[0].lower()
    found = scaling.kitchen.cupboard.find([name]) if name else None
    return found is not None and found.several and found.item.kind == "vessel"


def _field(field: Field, scaling: Scaling) -> list[Edit]:
    language = scaling.kitchen.language
    items = parse_clause(field.value, language).items
    first = first_amount(items, language)
    if isinstance(first, Product) and first.kind in ("mass", "volume"):
        return [multiplied(first, field.value, scaling)]
    if not isinstance(first, Quantity):
        return []
    if first.kind in ("mass", "volume"):
        number = _NUMBER.match(field.value, first.span.start)
        if number and _are_vessels(field.value[first.span.end :], scaling):  # 4 pint jars are jars
            return [counted(Span(*number.span()), first.amount.times(scaling.factor), language)]
        behind = items[items.index(first) + 1 :]
        return [weighed(first, field.value, scaling), *twin_edits(behind, field.value, scaling)]
    if first.kind != "pieces":
        return []
    amount = first.amount.times(scaling.factor)
    edits = [counted(first.span, amount, language)]
    if field.key == MAKES:
        end = field.value.find("(")
        noun = field.value[first.span.end : end if end >= 0 else None].strip(" ,")
        at = field.value.find(noun, first.span.end)
        fitting = noun_for(noun, amount, language)
        if noun and noun != fitting and noun.islower():
            edits.append(Edit(Span(at, at + len(noun)), fitting, fitting))
    return edits
