"""The piece that cooks: what a time by weight (`20 min per 500 g`) goes by.

A joint takes its time whatever lies round it, and two birds side by side take no longer than the heavier one.
"""

from __future__ import annotations

from tamis.model.recipe import Mass
from tamis.reading.clauses import Time
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.model.act import Act
    from tamis.model.batch import Batch, Food
    from tamis.reading.clauses import Cue, Ingredient, Pause


def heaviest_piece(act: Act, time: Time | Cue | Pause | None, batch: Batch | None) -> Mass | None:
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


def _unknown(act: Act, time: Time, names: list[str]) -> None:
    what = " and ".join(dict.fromkeys(names)) or "the batch"
    message = f"a time by weight, but the weight of {what} is not known: the plan takes the time once"
    one, each = (example(act.walker.flow.kitchen.language, key) for key in ("weighed", "weighed_each"))
    hint = f"give the weight of the piece that cooks: {one}, {each}"
    act.walker.find("time-by-weight", "warning", time.clause.span, message, hint)
