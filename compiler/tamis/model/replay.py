"""The log read back: what lay where after each entry, made from nothing but what the log says.

Whoever wants to know how things stood at some line (what a batch weighed, what it was called, what was still open)
plays the log up to there. That the state of the walk comes out again is a law of the tests.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.batch import without
from tamis.model.effects import (
    Begins,
    Closes,
    Discards,
    Gives,
    Loses,
    Names,
    Parts,
    Reaches,
    Redoes,
    Splits,
    Takes,
    Turns,
)
from tamis.model.mass import NOTHING, ONE, Mass, is_little, minus, plus, times, with_its_rest
from tamis.model.pile import Pile
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from tamis.model.batch import Food, Origin
    from tamis.model.effects import Entry
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure

_INDOORS: tuple[Origin, ...] = ("component", "by-product", "used-recipe")
"""What is put by so lies open for all components, not only for its own."""


class Standing:
    """How a batch stands: what is in it, what it is called and weighs, how much of it is left, and in which pieces it
    lies; `product` is what it was put by as (-1: not yet), `measured` the uses that were in it when it was last
    measured, `measure` how much that was, if nothing has gone in since."""

    __slots__ = ("called", "foods", "left", "mass", "measure", "measured", "names", "origin", "pieces", "product")

    def __init__(self, foods: Iterable[Food] = (), mass: Mass = NOTHING, left: Fraction = ONE) -> None:
        self.foods: Pile[Food] = Pile(foods)
        self.names: Pile[tuple[str, ...]] = Pile()
        self.called: tuple[str, ...] = ()
        self.mass = mass
        self.left = left
        self.pieces: tuple[Amount, str] | None = None
        self.origin: Origin = "present"
        self.product = -1
        self.measured: frozenset[int] = frozenset()
        self.measure: Measure | None = None


class Replay:
    """The batches as they stand after the entries read so far; for each component the batch in hand (-1: none) and the
    open ones."""

    __slots__ = ("batches", "hand", "open")

    def __init__(self) -> None:
        self.batches: dict[int, Standing] = {}
        self.hand: dict[int, int] = {}
        self.open: dict[int, dict[int, None]] = {}

    def read(self, entry: Entry) -> None:
        """Let an entry happen."""
        does = _DOES.get(type(entry.effect))
        if does:
            does(self, entry.component, entry.effect)

    def _begins(self, component: int, effect: Begins) -> None:
        self.batches[effect.batch] = Standing()
        self.hand[component] = effect.batch

    def _turns(self, component: int, effect: Turns) -> None:
        self.hand[component] = effect.batch
        self._gone(component, effect.batch)

    def _gives(self, component: int, effect: Gives) -> None:
        if effect.food is not None:
            batch = self.batches[effect.batch]
            batch.foods.add(effect.food)
            batch.mass = plus(batch.mass, effect.food.mass)
            if effect.food.mass.hi or effect.food.mass.unknown:
                batch.measure = None

    def _takes(self, component: int, effect: Takes) -> None:
        source, into = self.batches[effect.source], self.batches[effect.into]
        pieces = source.pieces if effect.whole and not is_little(source.mass, into.mass) else None
        into.foods.join(source.foods)
        into.names.join(source.names)
        into.called = source.called or into.called
        into.measured |= source.measured
        into.measure = None
        name = " ".join(called(source))
        if effect.scale is None:
            into.mass = plus(into.mass, Mass(unknown=(name,), uncounted=source.mass.uncounted))
        else:
            before = with_its_rest(into.mass, name) if effect.whole else into.mass
            into.mass = plus(before, times(source.mass, effect.scale))
        into.pieces = into.pieces or pieces
        source.left = Fraction(0) if effect.whole else source.left - (effect.fraction or 0)
        if effect.whole:
            self._gone(component, effect.source)

    def _parts(self, component: int, effect: Parts) -> None:
        mass = effect.mass or NOTHING
        self.batches[effect.batch] = Standing(effect.foods, mass, effect.left)
        if effect.less and effect.source >= 0:
            source = self.batches[effect.source]
            source.mass, source.measure = minus(source.mass, mass), None
        if effect.kind == "rest":
            self.open.setdefault(component, {})[effect.batch] = None

    def _loses(self, component: int, effect: Loses) -> None:
        batch = self.batches[effect.batch]
        batch.foods = Pile([food for food in batch.foods if food not in effect.foods])
        batch.mass = without(batch.mass, effect.foods, batch.measured)
        if effect.names:
            batch.names = Pile([name for name in batch.names if name not in effect.names])
            batch.called = () if batch.called in effect.names else batch.called

    def _discards(self, component: int, effect: Discards) -> None:
        self.batches[effect.batch].left = Fraction(0)
        self._gone(component, effect.batch)
        if self.hand.get(component) == effect.batch:
            self.hand[component] = -1

    def _names(self, component: int, effect: Names) -> None:
        batch = self.batches[effect.batch]
        batch.names.add(effect.words)
        batch.called = effect.words

    def _closes(self, component: int, effect: Closes) -> None:
        batch = self.batches[effect.batch]
        batch.origin, batch.product, batch.left = effect.origin, effect.product, effect.left
        if self.hand.get(component) == effect.batch:
            self.hand[component] = -1
        if effect.origin not in _INDOORS:
            self.open.setdefault(component, {})[effect.batch] = None

    def _splits(self, component: int, effect: Splits) -> None:
        self.batches[effect.batch].pieces = (effect.number, effect.noun) if effect.number else None

    def _reaches(self, component: int, effect: Reaches) -> None:
        batch = self.batches[effect.batch]
        batch.mass, batch.measure = effect.mass, effect.measure
        batch.measured |= {food.use for food in batch.foods}

    def _redoes(self, component: int, effect: Redoes) -> None:
        if effect.batch >= 0:
            batch = self.batches[effect.batch]
            batch.mass = plus(batch.mass, effect.mass)

    def _gone(self, component: int, batch: int) -> None:
        self.open.get(component, {}).pop(batch, None)


def called(batch: Standing) -> tuple[str, ...]:
    """What a batch is called: by its last name, else by its first food."""
    return batch.called or next((food.words for food in batch.foods), ("batch",))


_DOES: dict[type, Callable[[Replay, int, Any], None]] = {
    Begins: Replay._begins,
    Turns: Replay._turns,
    Gives: Replay._gives,
    Takes: Replay._takes,
    Parts: Replay._parts,
    Loses: Replay._loses,
    Discards: Replay._discards,
    Names: Replay._names,
    Closes: Replay._closes,
    Splits: Replay._splits,
    Reaches: Replay._reaches,
    Redoes: Replay._redoes,
}
