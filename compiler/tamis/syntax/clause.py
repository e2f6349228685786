"""The items of one clause, by the Lark grammar `clause.lark`.

Lark's trees are turned into our own records while it parses and are never kept: a kept tree costs more than the
parse. Clauses of equal wording share one result, since spans count from the clause's start.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

from lark import Lark, Transformer
from lark.exceptions import UnexpectedInput

from tamis.quantity.amount import Amount
from tamis.quantity.number import parse as parse_number
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.items import Bracket, Item, Mark, Miswritten, Product, Quantity, QuantityKind, Word
from tamis.syntax.token import Token
from tamis.syntax.tokens import ROW_OF_WORDS, ClauseLexer, clause_grammar

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

# What went wrong, by broken examples: Lark finds the one that stops in the same state. Message, then hint.
FAULTS: Mapping[str, list[str]] = {
    "a round bracket is opened and not closed\nexpected `)` before the clause ends": ["(a", "1 g (2 g", "1 (", "(1–2"],
    "a round bracket is closed and was not opened\ntake it out, or put `(` before it": ["a)", "1 g)", "1)", "1–2)"],
    "a number should follow the ×\nfor example `20 × 30 cm`, `2 × 400 g`": ["3 × a", "3 ×", "3 × (", "2 cm × a"],
    "the upper end of this range has no unit of time\nwrite it out, for example `45 s–1 min`": ["45 s–1", "45 s–1 a"],
}


_KINDS: Mapping[str, QuantityKind] = {
    "MASS": "mass",
    "VOLUME": "volume",
    "LENGTH": "length",
    "TIME": "time",
    "DEGREE": "temperature",
    "PERCENT": "percent",
}


class ClauseFault(NamedTuple):
    """Why a clause cannot be taken apart, and where in it."""

    message: str
    span: Span
    hint: str = ""


class Items(NamedTuple):
    """The items of a clause; `fault` is set instead of them where the grammar gave up.

    `keys` are what tables look up, one an item: a word in lower case, `#mass`, `#time`, `#pieces` … for quantities,
    `#product`, `#miswritten`, `()` for a bracket, else the mark itself.
    """

    items: tuple[Item, ...]
    keys: tuple[str, ...] = ()
    fault: ClauseFault | None = None


# A clause that the bracket scan has already reported.
BROKEN = Items((), (), ClauseFault("", Span(0, 0)))


def _span(first: Token, last: Token) -> Span:
    return Span(first.start_pos, last.end_pos)


# The tokens of an amount: one number, or two with what makes a range of them between.
_Number = list[Token]


@lru_cache(4096)
def _amount(low_text: str, high_text: str) -> Amount | None:
    low = parse_number(low_text)
    high = low if high_text == low_text else parse_number(high_text)
    return None if low is None or high is None else Amount(low, high)


def _quantity(kind: QuantityKind, number: _Number, unit: Token | None = None) -> Quantity | Miswritten:
    low, high = number[0], number[-1]
    amount = _amount(low, high)
    if amount is None:
        return Miswritten(" ".join(number), _span(low, high))
    if unit is None:
        return Quantity(kind, amount, "", _span(low, high))
    return Quantity(kind, amount, unit.strip("-."), _span(low, unit))


class _ToItems(Transformer[Any, Any]):
    """Grammar productions as our own records; each method has the children of its production."""

    def nothing(self, _: list[Any]) -> list[Item]:
        return []

    def words(self, parts: list[Any]) -> list[Item]:
        items, words = parts
        items.extend(_words(words, words.start_pos))
        return items  # type: ignore[no-any-return]

    def mark(self, parts: list[Any]) -> list[Item]:
        items, mark = parts
        items.append(Mark(str(mark), _span(mark, mark)))
        return items  # type: ignore[no-any-return]

    def item(self, parts: list[Any]) -> list[Item]:
        items, item = parts
        items.append(item)
        return items  # type: ignore[no-any-return]

    def bracket(self, parts: list[Any]) -> Bracket:
        first, items, last = parts
        return Bracket(_merged(items), _span(first, last))

    def amount(self, number: _Number) -> _Number:
        return number

    def pieces(self, number: _Number) -> Item:
        return _quantity("pieces", number)

    def measure(self, parts: list[Any]) -> Item:
        unit: Token = parts.pop()
        return _quantity(_KINDS[unit.type], parts[0] if isinstance(parts[0], list) else parts, unit)

    def gas(self, parts: list[Any]) -> Item:
        word, number = parts
        return _quantity("gas", number)._replace(span=_span(word, number[-1]))

    def time_range(self, parts: list[Any]) -> Item:
        low, unit, _to, high, high_unit = parts
        lower, upper = _quantity("time", low, unit), _quantity("time", high, high_unit)
        if isinstance(lower, Quantity) and isinstance(upper, Quantity):
            return lower._replace(upper=upper, span=Span(lower.span.start, upper.span.end))
        return lower if isinstance(lower, Miswritten) else upper

    def product(self, parts: list[Any]) -> Item:
        numbers = [part for part in parts if isinstance(part, list)]
        return _product(numbers, parts[-1] if isinstance(parts[-1], Token) else None)

    def lengths(self, parts: list[Any]) -> Item:
        one, unit, _by, other, last = parts
        if unit != last:
            text = f"{' '.join(one)} {unit} × {' '.join(other)} {last}"
            return Miswritten(text, _span(one[0], last))
        return _product([one, other], unit, last)

    def miswritten(self, tokens: list[Token]) -> Miswritten:
        return Miswritten(str(tokens[0]), _span(tokens[0], tokens[0]))


def _product(numbers: list[_Number], unit: Token | None, last: Token | None = None) -> Item:
    amounts: list[Amount] = []
    for number in numbers:
        amount = _amount(number[0], number[-1])
        if amount is None:
            return Miswritten(" ".join(number), _span(number[0], number[-1]))
        amounts.append(amount)
    span = _span(numbers[0][0], last or unit or numbers[-1][-1])
    if unit is None:
        return Product(tuple(amounts), "pieces", "", span)
    return Product(tuple(amounts), _KINDS[unit.type], unit.strip("-."), span)


_ONE_WORD = re.compile(r"\S+")


def _words(text: str, start: int) -> list[Item]:
    """The words of a row, which came as one token that begins at `start`."""
    lower = text.lower().replace("’", "'")
    words: list[Item] = []
    for found in _ONE_WORD.finditer(text):
        first, last = found.span()
        words.append(Word(found[0], lower[first:last], Span(start + first, start + last)))
    return words


def _merged(items: list[Item]) -> tuple[Item, ...]:
    """Compounds as one quantity: `1 lb 8 oz`, `1 h 30 min` (same kind, other unit, both with a unit)."""
    merged: list[Item] = []
    last: Item | None = None
    for item in items:
        if (
            isinstance(item, Quantity)
            and isinstance(last, Quantity)
            and item.kind == last.kind
            and item.kind in ("mass", "volume", "time")
            and item.unit != last.unit
        ):
            merged[-1] = last._replace(then=(*last.then, item), span=Span(last.span.start, item.span.end))
        else:
            merged.append(item)
        last = merged[-1]
    return tuple(merged)


@cache
def _parser() -> Lark:
    return Lark(
        clause_grammar(),
        parser="lalr",
        lexer=ClauseLexer,
        start="clause",
        maybe_placeholders=False,
        transformer=_ToItems(),
    )


@cache
def parse_clause(text: str) -> Items:
    """The items of a clause's text (without its square brackets)."""
    if ROW_OF_WORDS.fullmatch(text):  # the grammar would say no more
        return _items(_words(text, 0))
    try:
        items: list[Item] = _parser().parse(text)  # type: ignore[assignment]  # the transformer's result
    except UnexpectedInput as error:
        told = error.match_examples(_parser().parse, FAULTS, use_accepts=True) or "these words do not fit together"
        message, _, hint = told.partition("\n")
        at = min(max(error.pos_in_stream or 0, 0), len(text))
        return Items((), (), ClauseFault(message, Span(at, min(at + 1, len(text))), hint))
    return _items(_merged(items))


def _items(items: Iterable[Item]) -> Items:
    return Items(tuple(items), tuple([item.lower if isinstance(item, Word) else key_of(item) for item in items]))


def key_of(item: Item) -> str:
    """What tables look up for an item."""
    if isinstance(item, Word):
        return item.lower
    if isinstance(item, Mark):
        return item.text
    if isinstance(item, Quantity):
        return "#" + item.kind
    if isinstance(item, Bracket):
        return "()"
    return "#product" if isinstance(item, Product) else "#miswritten"
