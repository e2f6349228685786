"""What must be declared of a batch: the allergens of everything that was ever in it, by the lists that the law knows.

The goods carry words (wheat, almond, crustacean); a list groups them under the names it declares. Food that comes as
an alternative, or that may be left out, is told apart: a guest can then ask for the dish without it.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.records import Allergen, Declared, Part

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe, Supply
    from tamis.safety.state import State


class Source(NamedTuple):
    """One food of a batch: its name, its words, the kind of animal food it is; `known` if the goods list it."""

    name: str
    allergens: tuple[str, ...]
    animal: str
    optional: bool = False
    instead: bool = False
    known: bool = True
    use: int = -1


def sources(state: State, recipe: Recipe, used: Mapping[str, Supply], kitchen: Kitchen) -> list[Source]:
    """All the foods of a batch, its alternatives and used recipes included."""
    found: list[Source] = []
    for use, goods in state.uses.items():
        found.extend(of_use(recipe, use, kitchen.larder.get(goods) if goods else None))
    for stem in state.recipes:
        supply = used[stem]
        found.append(Source(supply.title, supply.allergens, ""))
        found.extend(Source(supply.title, (), animal) for animal in supply.animal)
        found.extend(Source(name, (), "", known=False) for name in supply.unknown)
    return found


def of_use(recipe: Recipe, use: int, goods: Goods | None = None) -> Iterator[Source]:
    """The foods of one use: itself and what may be taken instead."""
    food = recipe.uses[use].ingredient
    own = goods or food.goods
    optional = food.optional or food.purpose == "if needed"
    if own is None:
        yield Source(food.name, (), "", optional, known=False, use=use)
    else:
        yield Source(food.name, own.allergens, own.animal, optional, use=use)
    for other in food.alternatives:
        if other.goods is None:
            yield Source(other.name, (), "", optional, True, False, use)
        else:
            yield Source(other.name, other.goods.allergens, other.goods.animal, optional, True, use=use)


def part_of(name: str, found: Iterable[Source], lists: Iterable[str]) -> Part:
    """What must be declared of a batch with these foods."""
    foods = list(found)
    declared = tuple(Declared(list_, tuple(_declare(list_, foods))) for list_ in lists)
    unknown = tuple(dict.fromkeys(food.name for food in foods if not food.known))
    return Part(name, declared, unknown)


def _declare(list_: str, foods: list[Source]) -> Iterator[Allergen]:
    suspect = [food for food in foods if food.allergens]
    kinds = {food.allergens for food in suspect}
    for name, words in rules().allergens[list_].items():
        hits = {kind for kind in kinds if not words.isdisjoint(kind)}
        if not hits:
            continue
        bearing = [food for food in suspect if food.allergens in hits]
        needed = [food for food in bearing if not food.instead] or bearing
        names = tuple(dict.fromkeys(food.name for food in needed))
        yield Allergen(name, names, all(food.optional for food in needed), all(food.instead for food in bearing))


def lists_of(kitchen: Kitchen) -> tuple[str, ...]:
    """The lists that a house declares by: its own choice, else that of its authority."""
    safety = kitchen.settings.safety
    chosen = safety.allergens or ("eu" if safety.authority == "uk" else "us")
    return ("us", "eu") if chosen == "both" else (chosen,)
