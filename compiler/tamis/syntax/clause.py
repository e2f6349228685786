"""The items of a text: its numbers with their units, sizes, round brackets, words.

Whoever rewrites or prints a clause, or reads a measure outside of one (`makes: 5 jars (340 g each)`), asks for these.
What a clause means is read by its grammar (`reading/`), from the same tokens.
"""

from __future__ import annotations

from functools import lru_cache

from tamis.quantity.amount import Amount
from tamis.quantity.number import parse as parse_number
from tamis.quantity.units import Units, shipped
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.syntax.cutting import NUMBER_WORD, Choice, Cut, Cutter
from tamis.syntax.items import Bracket, Item, Mark, Miswritten, Product, Quantity, QuantityKind, Word

_KINDS: dict[str, QuantityKind] = {
    "MASS": "mass",
    "VOLUME": "volume",
    "LENGTH": "length",
    "INCH": "length",
    "TIME": "time",
    "DEGREE": "temperature",
    "PERCENT": "percent",
}
_COMPOUND: frozenset[QuantityKind] = frozenset(("mass", "volume", "time"))
_SIDES: frozenset[QuantityKind] = frozenset(("mass", "volume", "length"))
_DEEPEST = 40


class ClauseFault(NamedTuple):
    """Why a text cannot be taken apart, and where in it."""

    message: str
    span: Span
    hint: str = ""


class Items(NamedTuple):
    """The items of a text; `fault` is set instead of them where its round brackets or signs do not pair.

    `keys` are what tables look up, one an item: a word in lower case, `#mass`, `#time`, `#pieces` … for quantities,
    `#product`, `#miswritten`, `()` for a bracket, else the mark itself.
    """

    items: tuple[Item, ...]
    keys: tuple[str, ...] = ()
    fault: ClauseFault | None = None


class _Fault(Exception):
    """Where a text cannot be taken apart; it never leaves this file."""

    def __init__(self, message: str, start: int, hint: str = "") -> None:
        super().__init__(message)
        self.fault = ClauseFault(message, Span(start, start + 1), hint)


@lru_cache(8)
def cutter(language: str, units: Units) -> Cutter:
    """The cutter of a language and a house's units."""
    return Cutter(language, units)


@lru_cache(4096)
def parse_clause(text: str, language: str) -> Items:
    """The items of a clause's text (without its square brackets)."""
    try:
        items = _Grouping(cutter(language, shipped(language)).cut(text), language).all()
    except _Fault as found:
        at = min(found.fault.span.start, len(text))
        return Items((), (), found.fault._replace(span=Span(at, min(at + 1, len(text)))))
    return Items(tuple(items), tuple([key_of(item) for item in items]))


class _Grouping:
    """Walks over the tokens of a text, once."""

    __slots__ = ("at", "cut", "depth", "end", "kinds", "language")

    def __init__(self, cut: Cut, language: str) -> None:
        self.cut = cut
        self.language = language
        self.kinds = [_kind(choice) for choice in cut.fixed]
        self.at, self.end, self.depth = 0, len(self.kinds), 0

    def all(self) -> list[Item]:
        items = self._items()
        if self.at < self.end:
            message, hint = "a closing parenthesis has no opening one", "take it out, or put `(` before it"
            raise _Fault(message, self.cut.starts[self.at], hint)
        return items

    def _items(self) -> list[Item]:
        items: list[Item] = []
        while self.at < self.end and self.kinds[self.at] != "CLOSE":
            item = self._item()
            last = items[-1] if items else None
            if isinstance(last, Quantity) and isinstance(item, Quantity) and _is_compound(last, item):
                items[-1] = last._replace(then=(*last.then, item), span=Span(last.span.start, item.span.end))
            else:
                items.append(item)
        return items

    def _item(self) -> Item:
        kind, at = self.kinds[self.at], self.at
        if kind == "":
            self.at += 1
            text = self.cut.text[self.cut.starts[at] : self.cut.ends[at]]
            return Word(text, self.cut.words[at], self._span(at, at))
        if kind == "NUMBER":
            return self._number()
        if kind == "GAS" and self._kind(1) == "NUMBER":
            self.at += 1
            number = self._number()
            if not isinstance(number, Quantity):
                return number
            return number._replace(kind="gas", span=Span(self.cut.starts[at], number.span.end))
        if kind == "OPEN":
            return self._bracket()
        self.at += 1
        text = self.cut.text[self.cut.starts[at] : self.cut.ends[at]]
        return Miswritten(text, self._span(at, at)) if kind == "MISWRITTEN" else Mark(text, self._span(at, at))

    def _bracket(self) -> Item:
        first = self.at
        self.at += 1
        self.depth += 1
        items = self._items() if self.depth < _DEEPEST else []
        if self.at >= self.end or self.kinds[self.at] != "CLOSE":
            message, hint = "an opening parenthesis has no closing one", "expected `)` before the bracket ends"
            raise _Fault(message, self.cut.starts[first], hint)
        self.at += 1
        self.depth -= 1
        return Bracket(tuple(items), self._span(first, self.at - 1))

    def _number(self) -> Item:
        """A number and all that belongs to it: the end of its range, its unit, the other sides of a size."""
        first = self.at
        amount = self._amount()
        kind = self._unit_kind()
        if self._kind(0) == "TIMES" and kind in (None, "length"):
            return self._product(first, amount)
        if kind == "time" and self._kind(1) == "RANGE" and self._kind(2) == "NUMBER":
            return self._time_range(first, amount)
        if kind:
            unit = self._unit()
            return self._quantity(first, kind, amount, unit)
        return self._quantity(first, "pieces", amount, "")

    def _amount(self) -> Amount | None:
        low = high = self._text(self.at)
        self.at += 1
        if self._kind(0) == "RANGE" and self._kind(1) == "NUMBER":
            high = self._text(self.at + 1)
            self.at += 2
        return _amount(low, high, self.language)

    def _quantity(self, first: int, kind: QuantityKind, amount: Amount | None, unit: str) -> Item:
        span = self._span(first, self.at - 1)
        if amount is None:
            return Miswritten(self.cut.text[span.start : span.end], span)
        return Quantity(kind, amount, unit, span)

    def _time_range(self, first: int, low: Amount | None) -> Item:
        """`45 s–1 min`: a range that changes its unit."""
        lower = self._quantity(first, "time", low, self._unit())
        self.at += 1
        second = self.at
        high = self._amount()
        if self._unit_kind() != "time":
            message = "the upper end of this range has no unit of time"
            raise _Fault(message, self.cut.starts[second], "write it out, for example `45 s–1 min`")
        upper = self._quantity(second, "time", high, self._unit())
        if isinstance(lower, Quantity) and isinstance(upper, Quantity):
            return lower._replace(upper=upper, span=Span(lower.span.start, upper.span.end))
        return lower if isinstance(lower, Miswritten) else upper

    def _product(self, first: int, amount: Amount | None) -> Item:
        amounts = [amount]
        kind: QuantityKind | None = None
        unit = ""
        while self._kind(0) == "TIMES" or (self._unit_kind() == "length" and self._kind(1) == "TIMES"):
            if self._kind(0) != "TIMES":
                kind, unit = "length", self._unit()
            self.at += 1
            if self._kind(0) != "NUMBER":
                at = self.cut.starts[self.at] if self.at < self.end else len(self.cut.text)
                raise _Fault("a number should follow the ×", at, "for example `20 × 30 cm`, `2 × 400 g`")
            amounts.append(self._amount())
        after = self._unit_kind()
        if after in _SIDES:
            last = self._unit()
            if unit and unit != last:
                span = self._span(first, self.at - 1)
                return Miswritten(self.cut.text[span.start : span.end], span)
            kind, unit = after, last
        span = self._span(first, self.at - 1)
        if None in amounts:
            return Miswritten(self.cut.text[span.start : span.end], span)
        return Product(tuple(amounts), kind or "pieces", unit, span)  # type: ignore[arg-type]  # none is None, as just asked

    def _kind(self, ahead: int) -> str:
        at = self.at + ahead
        return self.kinds[at] if at < self.end else "END"

    def _unit_kind(self) -> QuantityKind | None:
        return _KINDS.get(self._kind(0))

    def _unit(self) -> str:
        said = self._text(self.at).strip("-‐‑.")
        inch = self.kinds[self.at] == "INCH"
        self.at += 1
        return "inch" if inch else said

    def _text(self, at: int) -> str:
        return self.cut.text[self.cut.starts[at] : self.cut.ends[at]].strip()

    def _span(self, first: int, last: int) -> Span:
        return Span(self.cut.starts[first], self.cut.ends[last])


def _kind(choice: Choice | None) -> str:
    """The class of a token that is no word; a number in letters is a number here."""
    if choice is None:
        return ""
    return "NUMBER" if choice is NUMBER_WORD else choice.ways[0][0]


def _is_compound(last: Quantity, item: Quantity) -> bool:
    """`1 lb 8 oz`, `1 h 30 min`: the same kind in another unit, both with one."""
    return item.kind in _COMPOUND and item.kind == last.kind and item.unit != last.unit


@lru_cache(4096)
def _amount(low_text: str, high_text: str, language: str) -> Amount | None:
    low = parse_number(low_text, language)
    high = low if high_text == low_text else parse_number(high_text, language)
    return None if low is None or high is None else Amount(low, high)


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
