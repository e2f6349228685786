"""What a batch carries while the flow is traced: its hazards, each on its way, and every food that was ever in it.

Food that is fished out or strained off leaves the batch, but not what it left in it: raw chicken taken out of its
marinade leaves a marinade that held raw chicken, and celery strained out of a stock leaves its allergen.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.kitchen.words import singular
from tamis.safety.hazards import FLESH
from tamis.safety.records import Item

if TYPE_CHECKING:
    from collections.abc import Callable

Key = tuple[str, int, str]

_NOTHING = Fraction(0)
_MOST_STEPS = 12
"""Of a longer way to the dish nobody reads more than the beginning."""


class State:
    """One batch. `uses` and `recipes` are the ingredient uses and used recipes in it, in order of arrival;
    `dough` and `eggs` grams of flour and egg, `own_…` of those those that did not come with another batch."""

    __slots__ = ("dough", "eggs", "items", "name", "own_dough", "own_eggs", "recipes", "uses")

    def __init__(self) -> None:
        self.items: dict[Key, Item] = {}
        self.uses: dict[int, str] = {}
        self.recipes: dict[str, None] = {}
        self.name = ""
        self.dough = self.eggs = _NOTHING
        self.own_dough = self.own_eggs = _NOTHING

    def put(self, item: Item) -> None:
        """A hazard goes in; of two of one food, the one that is not cleared stays."""
        key = (item.hazard, item.use, item.form)
        there = self.items.get(key)
        if there is None or there.cleared:
            self.items[key] = item

    def take_in(self, other: State, step: str, change: Callable[[Item], Item] = lambda item: item) -> None:
        """Another batch goes in, as it is now."""
        for item in other.items.values():
            if step and len(item.path) < _MOST_STEPS and step not in item.path:
                item = item._replace(path=(*item.path, step))
            self.put(change(item))
        for use, goods in other.uses.items():
            self.uses.setdefault(use, goods)
        self.recipes.update(other.recipes)
        if other.dough:
            self.dough += other.dough
        if other.eggs:
            self.eggs += other.eggs

    def raw_flesh(self) -> Item | None:
        """The first meat, fish or poultry in it that is still raw."""
        found = (item for item in self.items.values() if item.cleared is None and item.hazard in FLESH)
        return next((item for item in found if item.form != "contact"), None)


def parted(item: Item, name: str) -> Item:
    """A hazard in a by-product: the food itself if it is called so, else what it left behind."""
    last = singular(name.lower().split()[-1]) if name.split() else ""
    same = last == singular(item.food.lower().split()[-1])
    if same or item.cleared or item.form == "contact" or item.hazard not in FLESH:
        return item
    return item._replace(form="juices")
