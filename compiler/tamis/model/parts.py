"""Parts taken off a food that is counted elsewhere: *the juice of the lemon*, whose zest is grated before or later."""

from __future__ import annotations

from tamis.model.mass import NOTHING, plus
from tamis.model.words import plain
from tamis.quantity.amount import exactly
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.model.flow import Flow
    from tamis.model.mass import Mass
    from tamis.reading.clauses import Reference


def of_one_counted(flow: Flow, food: Ingredient, use: int) -> tuple[Ingredient, int | None]:
    """The part with the number of pieces that it is taken off, and the use that buys these: none where the sum of the
    table knows that zest and juice come off one lemon, or where it is still to come. `use` is its own."""
    counted = _counted_before(flow, food)
    if counted is not None:
        item = flow.uses[counted].ingredient
        if counted in flow.parts_ahead:
            flow.parts_ahead.append(use)
        return _taken_off(flow, food, item), None if _is_other_part(item, food) else counted
    ahead = _counted_ahead(flow, food)
    if ahead is None:
        return food, None
    if not _is_other_part(ahead, food):
        flow.parts_ahead.append(use)
    return _taken_off(flow, food, ahead), None


def buy_once(flow: Flow, use: int) -> Mass:
    """A food that is counted here buys what was taken of it before; returns how much of it that leaves less of."""
    item, gone = flow.uses[use].ingredient, NOTHING
    if item.definite:
        return gone
    bought = [at for at in flow.parts_ahead if _is_counted(item, flow.uses[at].ingredient)]
    for at in bought:
        flow.uses[at] = flow.uses[at]._replace(rest_of=use)
        flow.parts_ahead.remove(at)
        if not flow.uses[at].ingredient.part:
            gone = plus(gone, flow.uses[at].mass)
    return gone


def counted_ahead(flow: Flow, reference: Reference) -> Ingredient | None:
    """The one clause further on in which the food that is named is weighed; None where there are several."""
    language = flow.kitchen.language
    words = plain(reference.name, language)
    ahead = [
        item
        for item in _all_counted(flow).get(words[-1] if words else "", ())
        if item.clause.span.start > reference.clause.span.start and set(words) <= set(plain(item.name, language))
    ]
    return ahead[0] if len(ahead) == 1 and _is_counted(ahead[0], ahead[0]) and not ahead[0].part else None


def _counted_before(flow: Flow, food: Ingredient) -> int | None:
    """The use in which the food is counted off which this part is taken: the last of which another part is taken, else
    the last."""
    alike = flow.uses_of.get(plain(food.name, flow.kitchen.language)[-1], ())
    uses = flow.uses
    counted = [at for at in alike if uses[at].rest_of is None and _is_counted(uses[at].ingredient, food)]
    others = [at for at in counted if _is_other_part(uses[at].ingredient, food)]
    return next(reversed(others or counted), None)


def _counted_ahead(flow: Flow, food: Ingredient) -> Ingredient | None:
    """The clause in which the food is counted where none has gone in yet: the last before this one in the text, else
    the first behind it."""
    alike = _all_counted(flow).get(plain(food.name, flow.kitchen.language)[-1], ())
    counted = [item for item in alike if _is_counted(item, food)]
    before = [item for item in counted if item.clause.span.start < food.clause.span.start]
    return next(reversed(before), None) or next(iter(counted), None)


def _all_counted(flow: Flow) -> dict[str, list[Ingredient]]:
    if flow.counted is None:
        flow.counted = _counted(flow)
    return flow.counted


def _counted(flow: Flow) -> dict[str, list[Ingredient]]:
    """The measured foods of the whole text, by the last word of their names."""
    found: dict[str, list[Ingredient]] = {}
    for food in [food for labour in flow.labours for food in labour.foods if food.measures]:
        found.setdefault(plain(food.name, flow.kitchen.language)[-1], []).append(food)
    return found


def _is_counted(item: Ingredient, food: Ingredient) -> bool:
    """Whether it is the same food, in the dish, by the piece or the bunch."""
    alike = item.goods is food.goods if food.goods else item.name == food.name
    in_batch = not item.purpose and not item.optional
    return alike and in_batch and len(item.measures) == 1 and item.percent is None


def _is_other_part(item: Ingredient, food: Ingredient) -> bool:
    return bool(item.part) and item.part != food.part


def _taken_off(flow: Flow, food: Ingredient, item: Ingredient) -> Ingredient:
    (measure,) = item.measures
    one = nouns(flow.kitchen.language).one(food.name.lower()) == food.name.lower()
    if one and not measure.unit and measure.amount.hi > 1:
        measure = Measure(exactly(1), "")
    return food._replace(measures=(measure,), piece_word=item.piece_word)
