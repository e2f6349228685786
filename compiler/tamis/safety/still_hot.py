"""What is still hot from simmering when a line works on it, batch by batch: cold sauce beside a hot soup is cold."""

from __future__ import annotations

from itertools import groupby

from tamis.quantity.measure import base
from tamis.reading.clauses import Reference
from tamis.safety.data import rules
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

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
    for lines, batch in _at_the_end(recipe, in_hand):
        for line in lines:
            work(line, batch)
    return found


def _at_the_end(recipe: Recipe, in_hand: Mapping[int, tuple[int, int]]) -> list[tuple[list[int], int]]:
    """The lines of each component after its last in which anything happened, and the batch that they work on."""
    behind: dict[int, list[int]] = {component: [] for component in in_hand}
    for action in recipe.actions:
        if action.component in in_hand and action.number > in_hand[action.component][0]:
            behind[action.component].append(action.number)
    return [(lines, in_hand[component][1]) for component, lines in behind.items()]


def _a_little(recipe: Recipe, event: Happening, units: Units) -> bool:
    """Whether so little of a batch goes in that it heats nothing: 2 tbsp of the water that chickpeas boiled in."""
    product = recipe.history.products[event.other]
    action = recipe.actions[event.action]
    takings = (recipe.takings[taking] for taking in action.takings)
    spans = {taking.span for taking in takings if taking.product == product}
    for read in action.reads:
        measure = read.share.measure if isinstance(read, Reference) and read.share else None
        if measure is not None and read.clause.span in spans:
            amount = base(measure, units)
            return amount is not None and amount.hi <= _LITTLE
    return False
