"""What happened to every batch, in the order in which it happened.

Products and takings tell who uses what, but not when: whether the marinade was poured off before the chicken was
cooked or after it. What must be traced through the flow (hazards, allergens) needs the order, so it is written down
while the clauses act, one entry a happening. Batches are numbered in the order in which they are first spoken of.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.model.batch import Batch

Kind = Literal["food", "aside", "batch", "by-product", "clause"]


class Happening(NamedTuple):
    """One thing that happened to a batch during an action.

    `food`: a use went in (`goods` is the part of it that did: the yolk of an egg). `aside`: a use for a purpose met
    the batch (brushed on, dusted under). `batch`: the batch numbered `other` went in, or a share of it. `by-product`:
    the batch was parted from `other` as that stood then. `clause`: the clause `read` of the action acted on it.
    """

    kind: Kind
    action: int
    batch: int
    other: int = -1
    use: int = -1
    goods: str = ""
    read: int = -1


class History(NamedTuple):
    """All happenings in order; `products` gives the product that each batch is or came to be (-1: none), `components`
    the batch that each component ended with (-1: none)."""

    happenings: tuple[Happening, ...] = ()
    products: tuple[int, ...] = ()
    components: tuple[int, ...] = ()


class Ledger:
    """The history while it is written: happenings still point at the batches themselves."""

    __slots__ = ("_happenings", "_numbers")

    def __init__(self) -> None:
        self._happenings: list[Happening] = []
        self._numbers: dict[Batch, int] = {}

    def note(
        self,
        kind: Kind,
        action: int,
        batch: Batch,
        other: Batch | None = None,
        use: int = -1,
        goods: str = "",
        read: int = -1,
    ) -> None:
        """Write one happening down."""
        against = -1 if other is None else self._number(other)
        self._happenings.append(Happening(kind, action, self._number(batch), against, use, goods, read))

    def _number(self, batch: Batch) -> int:
        return self._numbers.setdefault(batch, len(self._numbers))

    def close(self, components: Sequence[Batch | None]) -> History:
        """The finished history; `components` are the batches that the components ended with."""
        ends = tuple(-1 if batch is None else self._number(batch) for batch in components)
        products = tuple(-1 if batch.product is None else batch.product for batch in self._numbers)
        return History(tuple(self._happenings), products, ends)
