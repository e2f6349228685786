"""What lies before the cook while one component is worked through: the batch in hand and the open ones.

Nothing else changes them but the methods here, and each writes what it does into the log: so log and state tell the
same story, and `replay.py` makes the one from the other again.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.effects import (
    SAID,
    Begins,
    Closes,
    Discards,
    Entry,
    Follows,
    Gives,
    Loses,
    Names,
    Parts,
    Reaches,
    Redoes,
    Splits,
    Takes,
    Turns,
    Why,
)
from tamis.model.mass import NOTHING, ONE, is_little, minus, plus
from tamis.model.opened import Opened
from tamis.record import made
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.diagnostics import Diagnostic
    from tamis.model.batch import Batch, Food, Origin
    from tamis.model.effects import Effect, PartKind
    from tamis.model.flow import Flow
    from tamis.model.mass import Mass
    from tamis.model.recipe import Product
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure

HANDS_EMPTY = Why("hands-empty")
NONE = Fraction(0)
_NOT_CERTAIN = ("product-unknown", "product-ambiguous")
"""What is found of a name of which nobody knows what it brings along."""


class State:
    """The state of one component, and where in the text it is being changed."""

    __slots__ = ("_log", "action", "clause", "component", "flow", "open", "present", "read_at", "words")

    def __init__(self, flow: Flow, component: int) -> None:
        self.flow = flow
        self._log = flow.log
        self.component = component
        self.present: Batch | None = None
        self.open = Opened()
        self.action = -1
        self.read_at = -1
        self.clause = self.words = NOWHERE

    def at(self, action: int, clause: Span, words: Span, read: int) -> None:
        """What is done from now on is done by this clause."""
        self.action, self.clause, self.words, self.read_at = action, clause, words, read

    def emit(self, effect: Effect, why: Why = SAID) -> int:
        """Write an effect into the log; returns the entry's number."""
        log, present = self._log, self.present
        number = len(log)
        batch = -1 if present is None else present.number
        log.append(
            made(
                Entry,
                (number, self.action, self.component, self.clause, self.words, self.read_at, effect, batch, why),
            )
        )
        return number

    def tell(self, finding: Diagnostic) -> None:
        """Keep a finding."""
        self.flow.findings.append(finding)
        self.note(finding)

    def note(self, finding: Diagnostic) -> None:
        """Write one into the log, told or not."""
        if finding.rule in _NOT_CERTAIN:
            self.flow.uncertain.add((self.action, finding.span))
        self.emit(finding)

    def begin(self, why: Why = HANDS_EMPTY) -> Batch:
        """A new batch in the hand."""
        self.present = batch = self.flow.new_batch("present")
        self.emit(made(Begins, (batch.number,)), why)
        return batch

    def turn(self, batch: Batch | None, why: Why) -> None:
        """The hand turns to a batch that lies there, or to none."""
        if batch is self.present:
            return
        if batch is not None:
            self.open.drop(batch)
        self.present = batch
        self.emit(made(Turns, (-1 if batch is None else batch.number,)), why)

    def give(self, batch: Batch, food: Food) -> None:
        """Food goes in."""
        batch.add(food)
        self.flow.gave[food.use] = self.emit(made(Gives, (food.use, batch.number, food)))

    def set_by(self, use: int) -> None:
        """Food is there for a purpose, and goes into nothing."""
        self.emit(made(Gives, (use, -1 if self.present is None else self.present.number, None)))

    def take(
        self,
        source: Batch,
        span: Span,
        fraction: Fraction | None,
        scale: Fraction | None,
        whole: bool,
        taking: int = -1,
        use: int = -1,
        why: Why = SAID,
    ) -> None:
        """A batch, or a part of it, joins the one in hand."""
        into = self.present or self.begin()
        little = is_little(source.mass, into.mass)
        into.take_in(source, scale, whole)
        if into.pieces is None and source.pieces and whole and not little:
            into.pieces = source.pieces
        if not whole:
            source.share()
            self.flow.part_from(source)
        source.left = NONE if whole else source.left - (fraction or 0)
        source.taken_at = span
        if whole:
            self.open.drop(source)
        self.emit(made(Takes, (source.number, into.number, fraction, scale, whole, taking, use)), why)

    def part(
        self,
        kind: PartKind,
        origin: Origin,
        foods: Sequence[Food] = (),
        mass: Mass = NOTHING,
        source: Batch | None = None,
        left: Fraction = ONE,
        less: bool = False,
    ) -> Batch:
        """A batch comes to be beside the one in hand, of these foods; the rest of a measure lies open."""
        batch = self.flow.new_batch(origin)
        batch.hold(foods)
        batch.mass, batch.left = mass, left
        if source is not None and kind == "own-part":
            batch.products = [*source.products, *([] if source.product is None else [source.product])]
        if source is not None and less:
            source.mass, source.measure = minus(source.mass, mass), None
        if kind == "rest":
            batch.shared = True
            self.flow.index.enter(batch, batch.keys)
            self.open.open(batch)
        number = -1 if source is None else source.number
        self.emit(made(Parts, (batch.number, kind, number, tuple(foods), mass, left, less)))
        return batch

    def lose(self, batch: Batch, words: tuple[str, ...]) -> bool:
        """Food so called is fished out and gone; tells whether any was there."""
        gone = batch.remove(words, self.flow.kitchen)
        if gone:
            self.emit(made(Loses, (batch.number, tuple(gone), ())))
        return bool(gone)

    def lift(self, rest: Batch, foods: Sequence[Food], words: tuple[str, ...]) -> Batch:
        """Foods are lifted out of a batch, and are one by themselves, called so."""
        mass = NOTHING
        for food in foods:
            mass = plus(mass, food.mass)
        lifted = self.part("lifted", "present", foods, mass, rest)
        self.name(lifted, words)
        lifted.lifted_from, rest.lifted_out = rest, lifted
        self.let_go(rest, foods, words)
        return lifted

    def let_go(self, batch: Batch, foods: Sequence[Food], words: tuple[str, ...]) -> None:
        """Foods leave a batch, which is not called so any more."""
        names = batch.let_go(foods, words)
        self.emit(made(Loses, (batch.number, tuple(foods), names)))

    def reach(self, batch: Batch, mass: Mass, measure: Measure | None) -> None:
        """A batch is measured where it has got to."""
        batch.mass, batch.measure = mass, measure
        batch.measured |= {food.use for food in batch.foods}
        self.emit(made(Reaches, (batch.number, mass, measure)))

    def discard(self, batch: Batch, span: Span) -> None:
        """What is left of a batch is thrown away."""
        batch.left, batch.taken_at = NONE, span
        self.open.drop(batch)
        if batch is self.present:
            self.present = None
        self.emit(made(Discards, (batch.number,)))

    def name(self, batch: Batch, words: tuple[str, ...], why: Why = SAID) -> None:
        """A batch gets a name."""
        batch.call(words)
        self.flow.told(words, batch, self.emit(made(Names, (batch.number, words)), why))

    def close(self, batch: Batch, product: Product, opened: bool = True, why: Why = SAID) -> None:
        """A batch is put by as a product, and lies open for the component if `opened`."""
        index = self.flow.register(batch, product)
        if batch is self.present:
            self.present = None
        if opened:
            self.open.open(batch)
        self.emit(made(Closes, (batch.number, batch.origin, index, batch.left)), why)

    def split(self, batch: Batch, pieces: tuple[Amount, str] | None, why: Why = SAID) -> None:
        """A batch lies in pieces."""
        batch.pieces = pieces
        self.emit(made(Splits, (batch.number, *(pieces or (None, "")))), why)

    def redo(self, actions: Sequence[int], more: Fraction, mass: Mass) -> None:
        """Lines are done more times, and so much more goes into what they worked on."""
        batch = self.present
        if batch is not None:
            batch.mass = plus(batch.mass, mass)
        number = -1 if batch is None else batch.number
        self.emit(made(Redoes, (actions[0], actions[-1], more, number, mass)))

    def follow(self, action: int, why: Why, from_start: bool = False) -> None:
        """The action waits for an earlier one."""
        self.emit(made(Follows, (action, from_start)), why)
