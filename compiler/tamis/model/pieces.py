"""The pieces of food: how many a hand works one by one, and the one that a time by weight (`20 min per 500 g`) goes by.

A joint takes its time whatever lies round it, and two birds side by side take no longer than the heavier one.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from tamis.model.mass import Mass, mass_of
from tamis.reading.clauses import Ingredient, Time, VerbUse
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.kitchen.verbs import Verb
    from tamis.model.batch import Batch, Food
    from tamis.model.line import Line
    from tamis.reading.clauses import Cue, Pause
    from tamis.reading.reading import Event


def heaviest_piece(act: Line, time: Time | Cue | Pause | None, batch: Batch | None) -> Mass | None:
    """The weight of the heaviest piece; None where no time goes by it. An unknown weight is reported."""
    if not isinstance(time, Time) or time.per is None or batch is None:
        return None
    if batch.pieces and batch.mass.known and batch.pieces[0].lo:
        number = batch.pieces[0]
        return Mass(batch.mass.lo / number.hi, batch.mass.hi / number.lo)
    uses = act.walker.flow.uses
    foods = [(food, uses[food.use].ingredient) for food in batch.foods]
    # What is raw and a hazard is what such times are given for; other food in the tin cooks beside it.
    flesh = [(food, item) for food, item in foods if item.goods and item.goods.hazard]
    pieces = [_piece(food, item) for food, item in flesh or foods]
    known = [piece for piece in pieces if piece.known and piece.hi]
    if len(known) < len(pieces) or not known:
        _unknown(act, time, [item.name for _, item in flesh or foods])
        return None
    return max(known, key=lambda piece: (piece.hi, piece.lo))


def _piece(food: Food, item: Ingredient) -> Mass:
    """One of so many: a bird of two, a leg of six; a weight is one piece."""
    measure = item.measures[0] if item.measures else None
    if measure is None or not food.mass.known or (item.each is None and measure.unit not in ("", item.piece_word)):
        return food.mass
    number = measure.amount
    return Mass(food.mass.lo / number.hi, food.mass.hi / number.lo) if number.lo else food.mass


def _unknown(act: Line, time: Time, names: list[str]) -> None:
    what = " and ".join(dict.fromkeys(names)) or "the batch"
    message = f"a time by weight, but the weight of {what} is not known: the plan takes the time once"
    one, each = (example(act.walker.flow.kitchen.language, key) for key in ("weighed", "weighed_each"))
    hint = f"give the weight of the piece that cooks: {one}, {each}"
    act.walker.find("time-by-weight", "warning", time.clause.span, message, hint)


def one_by_one(verb: Verb, item: Ingredient, mass: Mass, kitchen: Kitchen) -> Fraction:
    """Seconds that a verb takes for the pieces of a food: those counted, else those that its weight comes to."""
    if not verb.per_piece or not item.measures:
        return Fraction(0)
    if kitchen.units.get(item.measures[0].unit) is None:
        return verb.per_piece * item.measures[0].amount.hi
    piece = kitchen.larder.piece(item.goods, "", item.states) if item.goods else None
    if piece is None or not verb.most_per_kg or verb.per_kg or not mass.known:
        return Fraction(0)
    return min(verb.per_piece * mass.hi / piece.usual, verb.most_per_kg * mass.hi / 1000)


def worked_one_by_one(events: Sequence[Event], kitchen: Kitchen) -> dict[int, int]:
    """Seconds that the verbs of a line take for the pieces of the food named after each, by the verb's place."""
    found: dict[int, Fraction] = {}
    use: VerbUse | None = None
    for event in events:
        if isinstance(event, VerbUse):
            use = event
        elif isinstance(event, Ingredient) and use is not None and use.verb.most_per_kg:
            at = use.span.start
            found[at] = found.get(at, Fraction(0)) + one_by_one(use.verb, event, mass_of(event, kitchen), kitchen)
    return {at: ceil(seconds) for at, seconds in found.items()}
