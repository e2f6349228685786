"""What somebody wants converted: a food with its measure, a bare measure, a size, a temperature.

It is written as in a recipe, so it is read as a recipe's clause is; only temperatures are looser, since "180 C" is
clear where nothing else stands beside it.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.convert.words import DegreeWords, degree_words, piece_words
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import Kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.number import parse
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.clause import Items, parse_clause
from tamis.syntax.document import Clause
from tamis.syntax.items import Product, Quantity
from tamis.typed import Literal
from tamis.words import example

LONGEST = 200
Scale = Literal["c", "f", "gas"]


class Degrees(NamedTuple):
    """A temperature as asked, in its own scale; `fan` says that it is a fan oven's setting."""

    amount: Amount
    scale: Scale
    fan: bool = False


class Asked(NamedTuple):
    """What was asked: `degrees`, or `measures` (added up) and the food they are of, if one was named, or the `sides`
    of a tin.

    Where neither could be read, `problem` tells what was found and expected, and `hint` a way out. Where the food
    is not known, `problem` says that, and the measures hold.
    """

    text: str
    degrees: Degrees | None = None
    measures: tuple[Measure, ...] = ()
    item: Ingredient | None = None
    sides: tuple[Measure, ...] = ()
    problem: str = ""
    hint: str = ""


def read_asked(text: str, kitchen: Kitchen) -> Asked:
    """Understand the words of one question."""
    said = " ".join(text.split()).removeprefix("[").removesuffix("]").strip()
    if not said:
        asked = example(kitchen.language, "cup").replace("`", '"')
        return Asked(said, problem="nothing to convert", hint=f"try `tamis convert {asked}`")
    if len(said) > LONGEST:
        return Asked(said[:40], problem=f"this is longer than {LONGEST} characters")
    words = degree_words(kitchen.language)
    degrees = _degrees(said, words, kitchen.language) or _oven_word(said, words)
    if degrees:
        return Asked(said, degrees)
    return _measured(said, kitchen)


def _degrees(said: str, words: DegreeWords, language: str) -> Degrees | None:
    mark = words.mark.fullmatch(said)
    if mark:
        number = parse(mark[1], language)
        return Degrees(Amount(number, number), "gas") if number is not None else None
    found = words.degrees.fullmatch(said)
    if not found or not any(found.group("sign", "c", "f", "fan")):
        return None
    low = _signed(found["low"], language)
    high = low if found["high"] is None else _signed(found["high"], language)
    if low is None or high is None:
        return None
    return Degrees(Amount(low, high), "f" if found["f"] else "c", bool(found["fan"]))


def _oven_word(said: str, words: DegreeWords) -> Degrees | None:
    """What old books call a heat: "a moderate oven"."""
    found = words.oven.fullmatch(said)
    return Degrees(Amount(*map(Fraction, words.heats[found[1].lower()])), "f") if found else None


def _signed(text: str, language: str) -> Fraction | None:
    value = parse(text.lstrip("−- "), language)
    return -value if value is not None and text[:1] in "−-" else value


def _measured(said: str, kitchen: Kitchen) -> Asked:
    items = parse_clause(said, kitchen.language)
    if items.fault:
        return Asked(said, problem=items.fault.message, hint=items.fault.hint)
    bare, first = _bare(items, kitchen), items.items[0]
    if bare:
        return Asked(said, measures=bare)
    if isinstance(first, Product) and first.kind == "length" and len(items.items) == 1:
        unit = kitchen.units.get(first.unit)
        return Asked(said, sides=tuple(Measure(side, unit.id if unit else first.unit) for side in first.factors))
    record, findings = _read(said, kitchen)
    if not isinstance(record, Ingredient) or not record.measures:
        return _unread(said, findings, kitchen.language)
    told = next((finding for finding in findings if finding.rule == "unknown-ingredient"), None)
    problem, hint = (told.message.partition(":")[0], told.hint) if told else ("", "")
    return Asked(said, measures=record.measures, item=record, problem=problem, hint=hint)


def _bare(items: Items, kitchen: Kitchen) -> tuple[Measure, ...]:
    """A measure of nothing in particular: `100 ml`, `1 lb 8 oz`, `9 inches`, `a pinch`."""
    articles = piece_words(kitchen.language).articles
    words = items.keys[1:] if not articles.isdisjoint(items.keys[:1]) else items.keys
    if len(items.items) == 1 and isinstance(items.items[0], Quantity):
        return _sum(items.items[0], kitchen)
    unit = kitchen.units.get(words[-1]) if words else None
    if unit is None or unit.kind != "nominal" or len(items.items) > 2:
        return ()
    first = items.items[0]
    amount = first.amount if isinstance(first, Quantity) else Amount(Fraction(1), Fraction(1))
    return (Measure(amount, unit.id),)


def _sum(item: Quantity, kitchen: Kitchen) -> tuple[Measure, ...]:
    unit = kitchen.units.get(item.unit)
    if item.kind not in ("mass", "volume", "length") or unit is None or item.amount.lo > item.amount.hi:
        return ()
    return (Measure(item.amount, unit.id), *(measure for part in item.then for measure in _sum(part, kitchen)))


def _read(said: str, kitchen: Kitchen) -> tuple[object, list[Diagnostic]]:
    from tamis.reading.clause_reader import read_clause

    findings: list[Diagnostic] = []
    clause = Clause(said, Span(-1, len(said) + 1), kitchen.language)
    records = read_clause(clause, kitchen, findings)
    return (records[0] if records else None), findings


_ASKED = ("cup", "eggs", "inches", "gas")


def _unread(said: str, findings: list[Diagnostic], language: str) -> Asked:
    """Why it is no measure that can be converted."""
    told = next((f for f in findings if f.severity == "error" and f.rule != "clause-role"), None)
    if told:
        return Asked(said, problem=told.message, hint=told.hint)
    return Asked(
        said,
        problem=f"“{said}” is not a measure: expected a number with a unit, a food, or degrees",
        hint=f"as in {', '.join(example(language, key) for key in _ASKED)}, `100 ml`, `180 °C`",
    )
