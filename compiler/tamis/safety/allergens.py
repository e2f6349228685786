"""What must be declared of a batch: the allergens of everything that was ever in it, by the lists that the law knows.

The goods carry words (wheat, almond, crustacean); a list groups them under the names it declares. Food that comes as
an alternative, or that may be left out, is told apart: a guest can then ask for the dish without it.
"""

from __future__ import annotations

from tamis.record import NamedTuple
from tamis.safety.data import AllergenList, rules
from tamis.safety.doubts import called_like
from tamis.safety.records import Allergen, Declared, Part
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Supply
    from tamis.reading.clauses import Ingredient
    from tamis.safety.state import State


class Source(NamedTuple):
    """One food of a batch: its name, its words, the kind of animal food it is, its `id` in the goods; `known` if they
    list it, `dish` if it is all that another recipe makes."""

    name: str
    allergens: tuple[str, ...]
    animal: str
    optional: bool = False
    instead: bool = False
    known: bool = True
    use: int = -1
    id: str = ""
    dish: bool = False


class Foods:
    """The foods of a recipe's batches. Most batches end in another one, so each use is looked at once for all."""

    __slots__ = ("_kitchen", "_of_use", "_recipe", "_used")

    def __init__(self, recipe: Recipe, used: Mapping[str, Supply], kitchen: Kitchen) -> None:
        self._recipe = recipe
        self._used = used
        self._kitchen = kitchen
        self._of_use: dict[int, list[Source]] = {}

    def of_batch(self, state: State) -> list[Source]:
        """All the foods of a batch, its alternatives and used recipes included."""
        found: list[Source] = []
        for use in state.foods.values():
            found += self._of_use.get(use) or self.of_use(use)
        for stem in state.recipes:
            supply = self._used[stem]
            found.append(Source(supply.title, supply.allergens, "", dish=True))
            found.extend(Source(supply.title, (), animal) for animal in supply.animal)
            found.extend(Source(name, (), "", known=False) for name in supply.unknown)
        return found

    def of_use(self, use: int) -> list[Source]:
        """The foods of one use: itself, which bears what a part of it does, and what may be taken instead."""
        food = self._recipe.uses[use].ingredient
        needed = safety_words(self._kitchen.language).purposes.needed
        found = self._of_use[use] = _of_use(food, use, needed)
        like = None if food.goods else called_like(food, self._kitchen)
        if like is not None and like.allergens:
            name = f"{food.name}, if it is a kind of {like.name}"
            found.append(Source(name, like.allergens, "", food.optional or food.purpose in needed, use=use))
        return found


def _of_use(food: Ingredient, use: int, needed: frozenset[str]) -> list[Source]:
    optional = food.optional or food.purpose in needed
    alternatives = [_source(other, other.goods, use, optional, True) for other in food.alternatives]
    return [_source(food, food.goods, use, optional, False), *alternatives]


def _source(food: Ingredient, goods: Goods | None, use: int, optional: bool, instead: bool) -> Source:
    if goods is None:
        return Source(food.name, (), "", optional, instead, False, use)
    return Source(food.name, goods.allergens, goods.animal, optional, instead, True, use, goods.id)


def part_of(name: str, foods: list[Source], lists: Iterable[AllergenList], missing: tuple[str, ...] = ()) -> Part:
    """What must be declared of a batch with these foods; of what is `missing` nothing is known."""
    suspect = [food for food in foods if food.allergens]
    there = {word for food in suspect for word in food.allergens}
    declared = tuple([Declared(list_, tuple(_declare(list_, suspect, there))) for list_ in lists])
    unknown = tuple(dict.fromkeys([food.name for food in foods if not food.known]))
    return Part(name, declared, unknown, missing)


def _declare(list_: AllergenList, suspect: list[Source], there: set[str]) -> Iterator[Allergen]:
    names = rules().allergens[list_].items() if there else ()
    for name, words in names:
        if words.isdisjoint(there):
            continue
        bearing = [food for food in suspect if not words.isdisjoint(food.allergens)]
        needed = [food for food in bearing if not food.instead] or bearing
        said = tuple(dict.fromkeys([food.name for food in needed]))
        yield Allergen(name, said, all([food.optional for food in needed]), all([food.instead for food in bearing]))


def lists_of(kitchen: Kitchen) -> tuple[AllergenList, ...]:
    """The lists that a house declares by: its own choice, else that of its authority."""
    safety = kitchen.settings.safety
    chosen = safety.allergens or ("eu" if safety.authority == "uk" else "us")
    return ("us", "eu") if chosen == "both" else (chosen,)
