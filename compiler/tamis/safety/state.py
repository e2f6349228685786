"""What a batch carries while the flow is traced: its hazards, each on its way, and every food that was ever in it.

Food that is fished out or strained off leaves the batch, but not what it left in it: raw chicken taken out of its
marinade leaves a marinade that held raw chicken, and celery strained out of a stock leaves its allergen.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.model.pile import Pile
from tamis.quantity.nouns import nouns
from tamis.safety.hazards import FLESH
from tamis.safety.records import Item
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Iterable, Mapping

    from tamis.safety.records import HazardKind

Key = tuple[str, int, str]

_NOTHING = Fraction(0)
_MOST_STEPS = 12
"""Of a longer way to the dish nobody reads more than the beginning."""


class State:
    """One batch. `foods` and `recipes` are the foods (each by its first use, with the part of it that went in) and used
    recipes in it, in order of arrival; `dough` and `eggs` grams of flour and egg, `own_…` of those those that did not
    come with another batch. `kinds` are those of all hazards that ever came in; `syrup` are the words to which it was
    boiled, while it is a hot syrup."""

    __slots__ = (
        "_came", "_cooked", "_counted", "_items", "_stale", "_uses", "dough", "eggs", "foods", "kinds", "name",
        "own_dough", "own_eggs", "recipes", "syrup",
    )  # fmt: skip

    def __init__(self) -> None:
        self._came: Pile[Item] = Pile()
        self._items: dict[Key, Item] = {}
        self._counted = 0
        self._stale = False
        self._uses: Pile[int] = Pile()
        self._cooked = {True: 0, False: 0}
        self.foods: dict[Hashable, int] = {}
        self.kinds: set[HazardKind] = set()
        self.recipes: dict[str, None] = {}
        self.name = self.syrup = ""
        self.dough = self.eggs = _NOTHING
        self.own_dough = self.own_eggs = _NOTHING

    @property
    def items(self) -> Mapping[Key, Item]:
        """The hazards in it, worked out when somebody asks; of two of one food, the one that is not cleared stays."""
        if self._stale:
            for item, way in self._came.walk(self._counted):
                key = _key(item)
                there = self._items.get(key)
                if there is None or there.cleared:
                    self._items[key] = _further(item, way) if way else item
            self._counted, self._stale = len(self._came), False
        return self._items

    @property
    def uses(self) -> Iterable[int]:
        """All the uses of ingredients in it."""
        return dict.fromkeys(self._uses)

    def cook(self, dry: bool) -> Iterable[int]:
        """The uses that are cooked now, dry or wet, and were not yet so: those that came in since the last time."""
        before, self._cooked[dry] = self._cooked[dry], len(self._uses)
        return [use for use, _ in self._uses.walk(before)]

    def add(self, use: int, same: Hashable) -> None:
        """A use goes in; foods that are the `same` are declared once."""
        self._uses.add(use)
        self.foods.setdefault(same, use)

    def put(self, item: Item) -> None:
        """A hazard goes in."""
        self._came.add(item)
        self.kinds.add(item.hazard)
        self._stale = True

    def change(self, change: Callable[[Item], Item]) -> None:
        """Something happens to every hazard in it."""
        self._items = {key: change(item) for key, item in self.items.items()}
        self._came = Pile(self._items.values())
        self._counted = len(self._came)

    def take_in(self, other: State, step: str, change: Callable[[Item], Item] | None = None) -> None:
        """Another batch goes in, as it is now; `change` is what becomes of its hazards here, not in itself."""
        came = other._came if change is None else Pile(change(item) for item in other.items.values())
        self._came.join(came, step)
        self._stale = True
        self._mix(other)

    def part_from(self, other: State, language: str) -> None:
        """It was parted from another batch as that is now, and carries its hazards on."""
        for item in other.items.values():
            self.put(parted(_further(item, (self.name,)), self.name, language))
        self._mix(other)

    def lift_out(self, other: State, uses: frozenset[int]) -> None:
        """Some foods were lifted out of another batch: raw flesh counts in the one that it lies in, and what it left in
        the other."""
        for item in other.items.values():
            further = _further(item, (self.name,))
            self.put(further if item.use in uses else left_behind(further))
        other.change(lambda item: left_behind(item) if item.use in uses else item)
        self._mix(other)

    def part_of(self, other: State, uses: frozenset[int]) -> None:
        """It is a part that these foods of another batch have by nature: what holds of them holds of it."""
        for item in other.items.values():
            if item.use in uses:
                self.put(_further(item, (self.name,)))
        self._mix(other)

    def _mix(self, other: State) -> None:
        self._uses.join(other._uses)
        self.kinds |= other.kinds
        for food, use in other.foods.items():
            self.foods.setdefault(food, use)
        self.recipes.update(other.recipes)
        self.syrup = self.syrup or other.syrup
        if other.dough:
            self.dough += other.dough
        if other.eggs:
            self.eggs += other.eggs

    def raw_flesh(self) -> Item | None:
        """The first meat, fish or poultry in it that is still raw."""
        if self.kinds.isdisjoint(FLESH):
            return None
        for item in self.items.values():
            if item.hazard in FLESH and item.cleared is None and item.form != "contact":
                return item
        return None


def _key(item: Item) -> Key:
    """Of one food each hazard is told once: yolk and white of an egg are one."""
    return item.hazard, item.use, "piece" if item.form == "white" else item.form


def _further(item: Item, way: tuple[str, ...]) -> Item:
    """A hazard after these steps on its way to the dish."""
    new = [step for step in way if step and step not in item.path]
    path = (*item.path, *new)[:_MOST_STEPS]
    return item._replace(path=path) if len(path) > len(item.path) else item


def parted(item: Item, name: str, language: str) -> Item:
    """A hazard in a by-product: the food itself if it is called so, else what it left behind."""
    singular = nouns(language).singular
    last = singular(name.lower().split()[-1]) if name.split() else ""
    same = last == singular(item.food.lower().split()[-1])
    return item if same else left_behind(item)


def left_behind(item: Item) -> Item:
    """What raw flesh leaves where it lay."""
    if item.cleared or item.form == "contact" or item.hazard not in FLESH:
        return item
    return item._replace(form="juices")
