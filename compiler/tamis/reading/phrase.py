"""A clause that was refused, as the messages look at it: its items and their keys in a row."""

from __future__ import annotations

from tamis.reading.tables import Tables, match, tables
from tamis.source import Span
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Quantity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clause import Reading
    from tamis.reading.clauses import Read, VerbUse

    Alone = Callable[[str, Kitchen], tuple[tuple[Read | VerbUse, ...], list[Diagnostic]]]
    """What reads words as a clause of their own (`clause_reader`, which asks for messages and so stands above them)."""


class Phrase:
    """The items of one clause with everything needed to say what may have been meant.

    `alone` reads other words as a clause.
    """

    __slots__ = ("alone", "clause", "end", "fault", "items", "keys", "kitchen", "reading", "tables")

    def __init__(self, reading: Reading, alone: Alone) -> None:
        parsed = parse_clause(reading.text, reading.kitchen.language)
        self.reading = reading
        self.alone = alone
        self.clause = reading.clause
        self.items = parsed.items
        self.keys = parsed.keys
        self.fault = parsed.fault
        self.end = len(self.keys)
        self.kitchen = reading.kitchen
        self.tables: Tables = tables(reading.kitchen.language)

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

    def quantities(self, kind: str) -> Iterator[tuple[int, Quantity]]:
        """The quantities of a kind, with their indices; those in round brackets not counted."""
        for at, item in enumerate(self.items):
            if isinstance(item, Quantity) and item.kind == kind:
                yield at, item

    def all_quantities(self) -> Iterator[tuple[int, Quantity]]:
        """Every quantity, with its index."""
        for at, item in enumerate(self.items):
            if isinstance(item, Quantity):
                yield at, item

    def preposition(self) -> tuple[str, int] | None:
        """The preposition that the clause opens with, and its number of words."""
        return match(self.tables.prepositions, self.keys, 0)
