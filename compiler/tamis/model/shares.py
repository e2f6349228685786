"""How much of a batch a share takes, as a fraction of the whole as it was made."""

from __future__ import annotations

from fractions import Fraction
from itertools import islice

from tamis.quantity.measure import base, grams, kind, millilitres
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Batch
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Share


def part_of(batch: Batch, share: Share, kitchen: Kitchen) -> tuple[Fraction | None, bool]:
    """The fraction that a share takes (None where it cannot be known), and whether it takes all that is left."""
    if share.kind in ("all", "rest"):
        return batch.left, True
    if share.kind == "fraction":
        return share.fraction, share.fraction == batch.left
    if share.kind == "measure" and share.measure:
        return _ratio(batch, share.measure, kitchen), False
    if share.kind == "but" and share.measure:
        kept = _ratio(batch, share.measure, kitchen)
        return (None if kept is None else max(Fraction(0), batch.left - kept)), False
    return None, False


def _ratio(batch: Batch, measure: Measure, kitchen: Kitchen) -> Fraction | None:
    """A measure as a part of a batch: by weight, by pieces, or by the volume of its only food."""
    if kind(measure, kitchen.units) == "count":
        return measure.amount.hi / batch.pieces[0].lo if batch.pieces and batch.pieces[0].lo else None
    if batch.measure and kind(batch.measure, kitchen.units) == kind(measure, kitchen.units):
        part, whole = base(measure, kitchen.units), base(batch.measure, kitchen.units)
        return part.hi / whole.lo if part and whole and whole.lo else None
    weight = grams(measure, kitchen.units) or _by_density(batch, measure, kitchen)
    if weight is None or not batch.mass.known or not batch.mass.lo:
        return None
    return weight.hi / batch.mass.hi


def _by_density(batch: Batch, measure: Measure, kitchen: Kitchen) -> Amount | None:
    """Grams of a volume of a batch that is one food only."""
    volume = millilitres(measure, kitchen.units)
    foods = list(islice(batch.foods, 2)) if volume else ()
    goods = kitchen.larder.get(foods[0].goods) if len(foods) == 1 else None
    density = kitchen.larder.density(goods) if goods else None
    return volume.times(density.usual) if volume and density else None
