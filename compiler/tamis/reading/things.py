"""Clauses about things: what is referred to, equipment, divisions, names and repetitions."""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.measure import Measure
from tamis.reading.clauses import Division, Naming, Reference, Repeat, Tool
from tamis.reading.measured import Measured, read_bracket, read_measure
from tamis.reading.nouns import name_end
from tamis.reading.phrase import Phrase, measures_of
from tamis.reading.roles import Decision
from tamis.syntax.items import Product, Quantity


def read_reference(phrase: Phrase, decision: Decision) -> Reference:
    """`the poolish`, `a third of the milk`, `with the rest of the cream, whipped`."""
    start = decision.share.end if decision.share else decision.start
    if phrase.key(start) == "the":
        start += 1
    end = name_end(phrase, start)
    if end > start and phrase.key(end) == "#pieces":  # `the layer 2`: a number at the end belongs to the name
        end += 1
    comma = phrase.index(",", end)
    return Reference(
        phrase.clause,
        phrase.text(start, end),
        phrase.span(start, end),
        decision.share.share if decision.share else None,
        decision.preposition,
        phrase.text(comma + 1, phrase.end) if comma < phrase.end else "",
    )


def read_tool(phrase: Phrase, decision: Decision) -> Tool:
    """A piece of equipment with its number, size and adjectives."""
    noun = decision.noun
    assert noun is not None and noun.equipment is not None
    measured = decision.measured or Measured(decision.start, decision.start)
    number, size = _number_and_size(phrase, measured, noun.equipment.several)
    size = size or next((phrase.text(at, at + 1) for at in range(noun.start, noun.end) if phrase.quantity(at)), "")
    same = phrase.index("same", noun.start)
    name = phrase.text(same + 1 if same < noun.end - 1 else noun.start, noun.end)
    of = name.lower().find(" of ")
    if of >= 0 and phrase.key(noun.start) in phrase.tables.ends:  # `the back of a spoon`
        name, of = _bare(name[of + 4 :], phrase), -1
    said = _bare(name if of < 0 else name[:of], phrase)
    words = said.lower().split()
    return Tool(
        phrase.clause,
        said,
        noun.equipment.item,
        tuple(word for word in noun.equipment.adjectives if word in words and word not in ("the", "same")),
        number,
        size,
        decision.preposition,
        phrase.key(decision.start) == "the" or phrase.key(noun.start - 1) in ("the", "same"),
        decision.preposition in phrase.tables.dividing and number > 1 and noun.equipment.item.kind == "vessel",
        "" if of < 0 else name[of + 4 :],
    )


def _bare(name: str, phrase: Phrase) -> str:
    """The piece without its article, and without what stands before it: `cover with foil` names foil."""
    words = name.split()
    start = max((at + 1 for at, word in enumerate(words[:-1]) if word.lower() in phrase.tables.prepositions), default=0)
    start += words[start].lower() in phrase.tables.articles and start + 1 < len(words)
    return " ".join(words[start:])


def _number_and_size(phrase: Phrase, measured: Measured, several: bool) -> tuple[Fraction, str]:
    """`3 × 20 cm round tins` are three; `a 20 × 30 cm tin` has a size."""
    product = measured.product
    if product and several and len(product.factors) == 2 and product.factors[0].single:
        number = product.factors[0].lo
        if number.denominator == 1 and number <= 12:
            size = measured.size.split("×" if "×" in measured.size else "x", 1)[-1].strip()
            return number, size
    number = measured.pieces.lo if measured.pieces else Fraction(1)
    for at in range(measured.start, measured.end):
        quantity = phrase.quantity(at)
        if not measured.size and quantity and quantity.kind in ("mass", "volume"):
            return number, phrase.text(at, at + 1)
    return number, measured.size


def read_division(phrase: Phrase, decision: Decision) -> Division:
    """`into 2 pieces`, `into 40 pieces (11 g each)`, `into 2-cm cubes`."""
    start = decision.start
    quantity = phrase.quantity(start)
    count = quantity.amount if quantity and quantity.kind == "pieces" else None
    name_start = start + 1 if quantity else start
    item = phrase.items[name_start] if name_start < phrase.end else None
    if isinstance(item, Product) or (isinstance(item, Quantity) and item.kind in ("length", "mass")):
        name_start += 1
    end = name_end(phrase, name_start)
    each: Measure | None = None
    measured = read_measure(phrase, start)
    for bracket in range(end, phrase.end):
        if phrase.key(bracket) == "()":
            read = read_bracket(phrase, measured._replace(each=None, also=()), bracket)
            each = read.each or (read.also[0] if read.also else None)
    if isinstance(item, Quantity) and item.kind == "mass":
        each = measures_of(phrase, item)[0]
    return Division(phrase.clause, count, phrase.text(name_start, end), each, phrase.clause.text)


def read_naming(phrase: Phrase, decision: Decision) -> Naming:
    """`as garlic paste`, `leaving duck fat`, `reserving 250 ml pasta water`, `set aside`."""
    opener = phrase.key(decision.start)
    if opener == "set":
        return Naming(phrase.clause, "set-aside")
    kind = "as" if opener == "as" else "leaving"
    start = phrase.hedged(decision.start + 1)
    if phrase.key(start) in ("the", "a", "an"):
        start += 1
    quantity = phrase.quantity(start)
    measure: Measure | None = None
    if quantity and quantity.kind in ("mass", "volume"):
        measure = measures_of(phrase, quantity)[0]
        start += 1
    elif quantity and quantity.kind == "pieces":
        measure = Measure(quantity.amount, "")
        start += 1
    for word in ("of", "the"):
        start += phrase.key(start) == word
    end = name_end(phrase, start)
    return Naming(phrase.clause, "as" if kind == "as" else "leaving", phrase.text(start, end), measure)


def read_repeat(phrase: Phrase, decision: Decision) -> Repeat:
    """`twice`, `3 times`, `Repeat twice`, `in 4 batches`, `in 2 loads`, `in batches of 10`."""
    start = decision.start
    whole_step = phrase.key(start) == "repeat"
    number = next((q.amount.lo for _, q in phrase.quantities("pieces", start)), None)
    if number is None:
        number = Fraction(2) if "twice" in phrase.keys else Fraction(1)
    kinds = [phrase.tables.repeat_nouns[key] for key in phrase.keys if key in phrase.tables.repeat_nouns]
    kind = kinds[0] if kinds else "time"
    if whole_step:
        return Repeat(phrase.clause, "step-times", number)
    if kind == "time":
        return Repeat(phrase.clause, "times", number)
    if phrase.key(start) in phrase.tables.repeat_nouns:
        return Repeat(phrase.clause, "batch-size", number)
    return Repeat(phrase.clause, "batches" if kind == "batch" else "loads", number)
