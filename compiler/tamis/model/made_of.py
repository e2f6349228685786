"""What a cook calls by what it is made of: *the syrup* is sugar and water, *the custard* eggs and milk."""

from __future__ import annotations

from itertools import chain, islice

from tamis.model.words import model_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from tamis.model.batch import Batch
    from tamis.model.flow import Flow
    from tamis.model.hands import Hands

_MOST = 100
"""Batches among which it is looked for: no recipe makes so many."""


def all_made_of(walker: Hands, name: str) -> list[Batch]:
    """What is there and made so: in hand and open, else named, left and made before."""
    flow, present = walker.flow, walker.present
    if name not in model_words(flow.kitchen.language).made_of:
        return []

    def made(batches: Iterable[Batch]) -> list[Batch]:
        return [batch for batch in islice(batches, _MOST) if is_made_of(flow, batch, name)]

    here = made(chain([present] if present else [], walker.open))
    return here or made(chain(flow.named, flow.byproducts, flow.made))


def is_made_of(flow: Flow, batch: Batch, name: str) -> bool:
    """Whether there is something left of a batch that is made so."""
    words = model_words(flow.kitchen.language)
    needed, without = words.made_of.get(name), words.made_without.get(name, frozenset())
    if needed is None or batch.left <= 0:
        return False
    return needed <= (roles := _roles(flow, batch)) and roles.isdisjoint(without)


def _roles(flow: Flow, batch: Batch) -> set[str]:
    known = (flow.kitchen.larder.get(food.goods) for food in batch.foods if food.goods)
    return {goods.role for goods in known if goods is not None}
