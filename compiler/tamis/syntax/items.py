"""The items that a clause is made of, as the clause grammar groups them.

Spans count from the start of the clause, so that clauses of equal wording share their items.
"""

from __future__ import annotations

from tamis.quantity.amount import Amount
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import Literal

QuantityKind = Literal["pieces", "mass", "volume", "length", "time", "temperature", "percent", "gas"]


class Word(NamedTuple):
    """A word as written; `lower` is what look-ups use."""

    text: str
    lower: str
    span: Span


class Mark(NamedTuple):
    """A comma, a slash, or another character that parts words."""

    text: str
    span: Span


class Quantity(NamedTuple):
    """An amount with its unit: `420 g`, `60–90 min`, `2`, `180 °C`, `gas mark 4`.

    `unit` is the spelling used; `then` holds the smaller part of a compound such as `1 lb 8 oz`, and the upper
    end of a range that changes its unit (`45 s–1 min`).
    """

    kind: QuantityKind
    amount: Amount
    unit: str
    span: Span
    then: tuple[Quantity, ...] = ()
    upper: Quantity | None = None


class Product(NamedTuple):
    """Numbers joined by `×`: `38 × 6 cm` is a size, `2 × 400 g` two of 400 g, `3 × 20 cm` either."""

    factors: tuple[Amount, ...]
    kind: QuantityKind
    unit: str
    span: Span


class Miswritten(NamedTuple):
    """A number with a comma in it, which two countries read in two ways, or one that is no number at all."""

    text: str
    span: Span


class Bracket(NamedTuple):
    """Round brackets and what stands in them."""

    items: tuple[Item, ...]
    span: Span


Item = Word | Mark | Quantity | Product | Miswritten | Bracket
