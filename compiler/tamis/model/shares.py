"""How much of a batch a share takes, as a fraction of the whole as it was made."""

from __future__ import annotations

from fractions import Fraction
from itertools import islice

from tamis.model.batch import answering
from tamis.model.words import model_words, plain, vessel_noun
from tamis.quantity.measure import base, grams, kind, millilitres
from tamis.reading.clauses import Share
from tamis.reading.plain import plain_of
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.house import Kitchen
    from tamis.model.batch import Batch
    from tamis.model.hands import Hands
    from tamis.model.line import Line
    from tamis.model.recipe import Use
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Reference, Tool
    from tamis.syntax.document import Clause


def part_of(batch: Batch, share: Share, kitchen: Kitchen, uses: Sequence[Use]) -> tuple[Fraction | None, bool]:
    """The fraction that a share takes (None where it cannot be known), and whether it takes all that is left."""
    if share.kind in ("all", "rest"):
        return batch.left, True
    if share.kind == "fraction":
        taken = share.fraction * batch.left if share.of_rest else share.fraction
        return taken, taken == batch.left
    if share.kind == "measure" and share.measure:
        return _ratio(batch, share.measure, kitchen, uses), False
    if share.kind == "but" and share.measure:
        kept = _ratio(batch, share.measure, kitchen, uses)
        return (None if kept is None else max(Fraction(0), batch.left - kept)), False
    return None, False


def shared_by_name(walker: Hands, words: tuple[str, ...]) -> list[Batch]:
    """What a share was taken from, by its name."""
    flow = walker.flow
    keys = answering(words, flow.kitchen)
    return [*walker.open.shared.called(keys, flow.index), *flow.shared(keys)]


def back_to_the_rest(act: Line, reference: Reference) -> Reference:
    """*Pour it back into [the milk]*, a share of which is in hand: that is the rest of the milk."""
    walker = act.walker
    if reference.share or not _goes_back(act, reference.clause):
        return reference
    there = shared_by_name(walker, plain(reference.name, walker.flow.kitchen.language))
    return reference._replace(share=Share("rest")) if any(_is_in_hand(act, batch) for batch in there) else reference


def rest_in_vessel(act: Line, tool: Tool) -> Batch | None:
    """*Tip it back into [the pan]*, in which the rest of that lies of which a share is in hand; None if it does not."""
    equipment = tool.equipment
    if not tool.definite or equipment.kind != "vessel" or not _goes_back(act, tool.clause):
        return None
    noun = vessel_noun(equipment.name, act.walker.flow.kitchen.language)
    there = [batch for batch in act.walker.open.shared if _is_in_hand(act, batch)]
    return next((batch for batch in there if equipment.general or batch.vessel.endswith(noun)), None)


def _is_in_hand(act: Line, batch: Batch) -> bool:
    """Whether a share of what lies there is in hand."""
    present = act.walker.present
    return present is not None and batch.left > 0 and batch.product in present.products


def _goes_back(act: Line, clause: Clause) -> bool:
    """Whether the words before a bracket put something back into what it names."""
    walker, parts = act.walker, act.read.parts
    if walker.present is None or not (walker.open.shared or walker.flow.parted):
        return False
    at = next((at for at, part in enumerate(parts) if part is clause), 0)
    before = parts[at - 1] if at else None
    said = plain_of(before.text, walker.flow.kitchen).said if isinstance(before, Text) else ()
    return not model_words(walker.flow.kitchen.language).back.isdisjoint(said)


def _ratio(batch: Batch, measure: Measure, kitchen: Kitchen, uses: Sequence[Use]) -> Fraction | None:
    """A measure as a part of a batch: by weight, by pieces, or by the volume of its only food."""
    if kind(measure, kitchen.units) == "count":
        number = batch.pieces[0] if batch.pieces else _counted(batch, measure, uses)
        return measure.amount.hi / number.lo if number and number.lo else None
    if batch.measure and kind(batch.measure, kitchen.units) == kind(measure, kitchen.units):
        part, whole = base(measure, kitchen.units), base(batch.measure, kitchen.units)
        return part.hi / whole.lo if part and whole and whole.lo else None
    weight = grams(measure, kitchen.units) or _by_density(batch, measure, kitchen)
    if weight is None or not batch.mass.known or not batch.mass.lo:
        return None
    return weight.hi / batch.mass.hi


def _counted(batch: Batch, measure: Measure, uses: Sequence[Use]) -> Amount | None:
    """How many there are of a batch that is one food only, where that is counted: three of the eggs."""
    foods = list(islice(batch.foods, 2))
    use = uses[foods[0].use] if len(foods) == 1 and foods[0].use >= 0 else None
    if use is None or measure.unit or use.times != 1 or use.fraction != 1 or use.ingredient.part:
        return None
    return next((said.amount for said in use.ingredient.measures[:1] if not said.unit), None)


def _by_density(batch: Batch, measure: Measure, kitchen: Kitchen) -> Amount | None:
    """Grams of a volume of a batch that is one food only."""
    volume = millilitres(measure, kitchen.units)
    foods = list(islice(batch.foods, 2)) if volume else ()
    goods = kitchen.larder.get(foods[0].goods) if len(foods) == 1 else None
    density = kitchen.larder.density(goods) if goods else None
    return volume.times(density.usual) if volume and density else None
