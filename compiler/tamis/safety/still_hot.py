"""What is still hot from simmering when a line works on it, batch by batch: cold sauce beside a hot soup is cold."""

from __future__ import annotations

from itertools import groupby

from tamis.quantity.measure import base
from tamis.reading.clauses import Reference
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import Station
    from tamis.model.history import Happening
    from tamis.model.recipe import Recipe
    from tamis.quantity.units import Units

_COLD: tuple[Station, ...] = ("fridge", "freezer")
_LITTLE = 60
"""Grams or millilitres of something hot that leave what they go into cold (common practice)."""


def still_hot(recipe: Recipe, verbs: Sequence[frozenset[str]], units: Units) -> set[int]:
    """The lines that begin with a batch which simmered, or took in one that did, and has not cooled since; `verbs` are
    those of each line."""
    hot: set[int] = set()
    found: set[int] = set()
    scalds, cools = rules().verbs["scalds"], rules().verbs["cools"] | rules().verbs["drains"]
    in_hand: dict[int, tuple[int, int]] = {}  # of each component, its last line so far and the batch of that

    def work(line: int, batch: int) -> None:
        action = recipe.actions[line]
        if batch in hot:
            found.add(line)
        if action.work.verb in scalds:
            hot.add(batch)
        elif not verbs[line].isdisjoint(cools) or action.work.station in _COLD:
            hot.discard(batch)
        in_hand[action.component] = line, batch

    for line, events in groupby(recipe.history.happenings, lambda event: event.action):
        last, batch = in_hand.get(recipe.actions[line].component, (line, -1))
        for plain in range(last + 1, line):  # a line without any clause goes on with the batch in hand
            work(plain, batch)
        for event in events:
            if event.other in hot and not _a_little(recipe, event, units):
                hot.add(event.batch)
            batch = event.other if event.kind == "by-product" else event.batch
        work(line, batch)
    for component, (last, batch) in list(in_hand.items()):
        for action in recipe.actions[last + 1 :]:
            if action.component == component:
                work(action.number, batch)
    return found


def _a_little(recipe: Recipe, event: Happening, units: Units) -> bool:
    """Whether so little of a batch goes in that it heats nothing: 2 tbsp of the water that chickpeas boiled in."""
    product = recipe.history.products[event.other]
    spans = [taking.span for taking in recipe.takings if (taking.action, taking.product) == (event.action, product)]
    for read in recipe.actions[event.action].reads:
        measure = read.share.measure if isinstance(read, Reference) and read.share else None
        if measure is not None and read.clause.span in spans:
            amount = base(measure, units)
            return amount is not None and amount.hi <= _LITTLE
    return False
