"""A clause under the reader's eye: its items, their keys, and the lists that they are looked up in."""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Fix, Severity
from tamis.kitchen.house import Kitchen
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.reading.tables import Tables, match
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.syntax.items import Bracket, Item, Quantity


class Phrase:
    """The items of one clause with everything needed to read them. Findings about it gather in `findings`."""

    __slots__ = ("clause", "end", "findings", "items", "keys", "kitchen", "tables")

    def __init__(self, clause: Clause, kitchen: Kitchen, tables: Tables, findings: list[Diagnostic]) -> None:
        self.clause = clause
        self.items: tuple[Item, ...] = clause.items.items
        self.keys = clause.items.keys
        self.end = len(self.keys)
        self.kitchen = kitchen
        self.tables = tables
        self.findings = findings

    def key(self, at: int) -> str:
        """The key at an index, or "" past the end."""
        return self.keys[at] if 0 <= at < self.end else ""

    def index(self, key: str, start: int = 0) -> int:
        """Where a key stands at or after `start`; the number of items where it does not."""
        try:
            return self.keys.index(key, start)
        except ValueError:
            return self.end

    def text(self, start: int, end: int) -> str:
        """The words of the items from `start` up to, not including, `end`, as written."""
        end = min(end, self.end)
        if start >= end:
            return ""
        return self.clause.text[self.items[start].span.start : self.items[end - 1].span.end]

    def span(self, start: int, end: int) -> Span:
        """Where the items from `start` up to, not including, `end` stand in the file."""
        end = min(end, self.end)
        if start >= end:
            return self.clause.span
        inner = self.clause.inner
        return Span(inner + self.items[start].span.start, inner + self.items[end - 1].span.end)

    def quantity(self, at: int) -> Quantity | None:
        """The quantity at an index, if one stands there."""
        item = self.items[at] if 0 <= at < self.end else None
        return item if isinstance(item, Quantity) else None

    def quantities(self, kind: str, start: int = 0) -> Iterator[tuple[int, Quantity]]:
        """The quantities of a kind from `start` on, with their indices; those in round brackets not counted."""
        key = "#" + kind
        at = self.index(key, start)
        while at < self.end:
            item = self.items[at]
            assert isinstance(item, Quantity)
            yield at, item
            at = self.index(key, at + 1)

    def hedged(self, start: int) -> int:
        """The index after any hedges at `start`."""
        hedges = self.tables.hedges
        while self.key(start) in hedges:
            found = match(hedges, self.keys, start)
            if not found or start + found[1] >= self.end:
                break
            start += found[1]
        return start

    def find(
        self, rule: str, severity: Severity, span: Span, message: str, hint: str = "", fix: Fix | None = None
    ) -> None:
        """Keep a finding about this clause."""
        self.findings.append(Diagnostic(rule, severity, span, message, hint, fix=fix))


def measures_of(phrase: Phrase, quantity: Quantity) -> tuple[Measure, ...]:
    """A quantity of mass, volume or length as measures to be added up."""
    unit = phrase.kitchen.units.get(quantity.unit)
    first = Measure(quantity.amount, unit.id if unit else quantity.unit)
    return (first, *(measure for part in quantity.then for measure in measures_of(phrase, part)))


def seconds_of(phrase: Phrase, quantity: Quantity) -> Duration:
    """A quantity of time as a duration that the food decides."""
    unit = phrase.kitchen.units.get(quantity.unit)
    factor = unit.factor if unit else 60
    total = Duration(*quantity.amount.times(factor))
    for part in quantity.then:
        total = total.plus(seconds_of(phrase, part))
    if quantity.upper:
        total = total._replace(hi=seconds_of(phrase, quantity.upper).hi)
    return total


def inside(phrase: Phrase, bracket: Bracket) -> Phrase:
    """The phrase within round brackets, for reading it as one of its own."""
    from tamis.syntax.clause import key_of

    inner = Phrase(phrase.clause, phrase.kitchen, phrase.tables, phrase.findings)
    inner.items = bracket.items
    inner.keys = tuple([key_of(item) for item in bracket.items])
    inner.end = len(inner.keys)
    return inner
