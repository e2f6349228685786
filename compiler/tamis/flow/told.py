"""What the log has told up to an entry: how the batches stand, what they are called, and what went into them."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.names import with_part
from tamis.model.replay import Replay
from tamis.quantity.wrapping import series
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.mass import Mass
    from tamis.model.recipe import Recipe, Use
    from tamis.quantity.amount import Amount
    from tamis.source import Source, Span

_FEW = 3
"""So many names tell what a batch is made of: of more foods, those that weigh most."""
NAMED = ("component", "named", "by-product", "used-recipe")
"""Products that are called as the cook called them; others are told by what is in them."""
SO_FAR, OTHERS = "{name} so far", "more"


class Told:
    """`names` are those that the cook gave to batches, `contents` what went into each and weighs how much, `began` the
    action in which it began. What has been `cooked` weighs no more what went in; of the `unweighed` nobody knows, since
    something cooked was taken out, or is served beside it; the `turned_out` is no longer in its vessels."""

    __slots__ = (
        "began",
        "contents",
        "cooked",
        "names",
        "recipe",
        "replay",
        "source",
        "turned_out",
        "unweighed",
        "vessels",
    )

    def __init__(self, recipe: Recipe, source: Source) -> None:
        self.recipe = recipe
        self.source = source
        self.replay = Replay()
        self.began: dict[int, int] = {}
        self.names: dict[int, str] = {}
        self.contents: dict[int, dict[str, Fraction]] = {}
        self.cooked: set[int] = set()
        self.turned_out: set[int] = set()
        self.unweighed: set[int] = set()
        self.vessels: dict[int, str] = {}

    def line(self, action: int) -> int:
        """The line of the file in which an action begins."""
        return self.source.place(self.recipe.actions[action].span.start).line

    def said(self, span: Span) -> str:
        """The words of a place, in one line."""
        return " ".join(self.source.slice(span).split())

    def name(self, batch: int) -> str:
        """What a batch is called, else what is in it."""
        if batch in self.names:
            return self.names[batch]
        parts = self.contents.get(batch, {})
        becomes = self._becomes(batch) if len(parts) > _FEW or batch in self.unweighed else ""
        if len(parts) <= _FEW and not becomes:
            return series(list(parts))
        if becomes:
            return SO_FAR.format(name=becomes)
        heaviest = sorted(parts, key=lambda name: -parts[name])[:_FEW]
        return series([*(name for name in parts if name in heaviest), OTHERS])

    def _becomes(self, batch: int) -> str:
        """What the cook calls it once it is made."""
        made = self.recipe.history.products[batch]
        product = self.recipe.products[made] if made >= 0 else None
        return product.name if product and product.kind in NAMED else ""

    def food(self, use: Use) -> str:
        """What a food is called, with the part of it that is taken: `zest of 2 lemons`."""
        return with_part(use.ingredient)

    def put(self, batch: int, name: str, mass: Mass | None) -> None:
        """Something goes into a batch."""
        there = self.contents.setdefault(batch, {})
        there[name] = there.get(name, Fraction(0)) + (mass.hi if mass else 0)

    def pieces(self, batch: int) -> tuple[Amount, str] | None:
        """In what it lies divided; tins that it was turned out of are no pieces of it."""
        return None if batch in self.turned_out else self.replay.batches[batch].pieces
