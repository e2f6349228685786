"""The usual cautions, where a recipe's own clauses call for them.

A page that warns of everything warns of nothing: each caution has its own condition, and is said once, at the first
line that calls for it.
"""

from __future__ import annotations

from tamis.safety.data import rules
from tamis.safety.hazards import FLESH
from tamis.safety.records import Caution
from tamis.safety.signs import (
    hot_oil,
    hot_sugar,
    oil_with_garlic,
    plain_nuts,
    scalding_steam,
    shelf_jars,
    syrup_lines,
    with_sugar,
    words_of,
)
from tamis.safety.warmth import eaten_cold
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.kitchen.food import Hazard
    from tamis.model.recipe import Action, Recipe, Use
    from tamis.safety.records import CautionKey, HazardKind, Item, Served
    from tamis.safety.spoiling import Mixing, Mixture
    from tamis.safety.state import State

_FLOUR: frozenset[HazardKind] = frozenset(("raw-flour",))
_CURED: HazardKind = "cured-pork"
_RAW = FLESH - {_CURED}
_RICE: frozenset[Hazard] = frozenset(("rice",))
_BY_HAZARD: dict[Hazard, CautionKey] = {
    "honey": "honey",
    "kidney-beans": "beans",
    "rice": "rice",
    "raw-milk": "raw-milk",
}


def cautions(
    mixing: Mixing, dish: State, served: Served, mixtures: Sequence[Mixture], spoils: bool
) -> tuple[Caution, ...]:
    """All of them, those of the whole dish last; `mixtures` are what was mixed together, `spoils` tells whether the
    dish must not stand about."""
    found = [*_of_actions(mixing, dish), *_of_food(mixing, dish, served, mixtures, spoils)]
    first: dict[str, Caution] = {}
    for caution in found:
        first.setdefault(caution.key, caution)
    return tuple(sorted(first.values(), key=lambda c: (c.action is None, c.action or 0)))


def caution(key: CautionKey, action: int | None = None) -> Caution:
    """A caution of the data, its source parted from its words."""
    text, _, source = rules().cautions[key].partition(" [")
    return Caution(key, text, source.rstrip("]"), action)


def _of_actions(mixing: Mixing, dish: State) -> Iterator[Caution]:
    recipe, verbs, _, hands = mixing
    ids = rules().verbs
    roasted: set[int] = set()
    sweet, syrups = with_sugar(recipe), syrup_lines(recipe, verbs, hands)
    steam = safety_words(recipe.language).purposes.steam
    wet = any([use.ingredient.purpose in steam or _is_water(use) for use in recipe.uses])
    for action, said in zip(recipe.actions, verbs, strict=True):
        at = action.number
        if wet and action.uses and scalding_steam(recipe, action):
            yield caution("steam", at)
        if hot_oil(recipe, action, said):
            yield caution("hot-oil", at)
        elif at in syrups or (action.component in sweet and hot_sugar(recipe, action)):
            yield caution("hot-sugar", at)
        if recipe.places.lines[at].hot and not said.isdisjoint(ids["blends"]):
            open_pan = any(tool.equipment.id in rules().equipment["open-blenders"] for tool in action.tools)
            yield caution("stick-blender" if open_pan else "blender", at)
        if not said.isdisjoint(ids["flames"]):
            yield caution("flame", at)
        if action.work.station in ("oven", "grill"):
            roasted.add(action.component)
        if action.component in roasted and not said.isdisjoint(ids["tips"]) and _hot_tin(action, dish, recipe.language):
            yield caution("hot-tin", at)


def _is_water(use: Use) -> bool:
    goods = use.ingredient.goods
    return goods is not None and goods.role == "water"


def _hot_tin(action: Action, dish: State, language: str) -> bool:
    """Fat in a tin that comes out of the oven and is handled."""
    said = words_of(action)
    fat = any(word in said for word in safety_words(language).signs.fat)
    return fat and any(item.hazard in FLESH for item in dish.items.values())


def _of_food(
    mixing: Mixing, dish: State, served: Served, mixtures: Sequence[Mixture], spoils: bool
) -> Iterator[Caution]:
    recipe = mixing.recipe
    items = list(dish.items.values())
    kinds = {item.hazard for item in items}
    if not kinds.isdisjoint(_RAW):
        yield caution("raw-meat", _first(recipe, items, FLESH))
    if served == "raw":
        yield caution("served-raw" if spoils else "served-raw-keeps")
        if any(item.hazard == "fish" and item.cleared is None for item in items):
            yield caution("raw-fish")
    if served == "uncooked":
        yield caution("unfinished")
    if any(item.hazard == "egg" and _soft(item) for item in items):
        yield caution("soft-egg")
    batter = kinds.isdisjoint(FLESH) and any([item.hazard == "egg" and item.bound for item in items])
    if "raw-flour" in kinds and (batter or any(mixture.dough for mixture in mixtures)):
        yield caution("raw-dough", _most_flour(recipe, items))
    yield from _named(items, recipe, dish, spoils)
    if spoils:
        cold = served == "uncooked" or eaten_cold(recipe, dish, mixing.hands)
        yield caution("leftovers-cold" if cold else "leftovers")
    if "fish" in kinds:
        yield caution("bones")
    if plain_nuts(recipe, dish, mixing.hands):
        yield caution("nuts")


def _named(items: list[Item], recipe: Recipe, dish: State, spoils: bool) -> Iterator[Caution]:
    kinds = {item.hazard for item in items} | (_RICE & _served_beside(recipe))
    for hazard, key in _BY_HAZARD.items():
        if hazard in kinds:
            yield caution(key)
    if any(item.hazard == "sprouts" and not item.cleared for item in items):
        yield caution("sprouts")
    if oil_with_garlic(recipe, dish):
        yield caution("garlic-oil")
    if shelf_jars(recipe, spoils):
        yield caution("jars")


def _served_beside(recipe: Recipe) -> set[Hazard]:
    """The hazards of what comes to table with the dish and is cooked elsewhere: `boiled rice, to serve`."""
    beside = safety_words(recipe.language).purposes.beside
    foods = [use.ingredient for use in recipe.uses if use.ingredient.purpose]
    return {food.goods.hazard for food in foods if food.goods is not None and food.purpose in beside}


def _soft(item: Item) -> bool:
    return item.cleared is None and item.heated and item.form == "whole"


def _first(recipe: Recipe, items: list[Item], kinds: frozenset[HazardKind]) -> int | None:
    """The first action in which one of these foods goes in."""
    at = [recipe.uses[item.use].action for item in items if item.hazard in kinds and item.use >= 0]
    return min(at, default=None)


def _most_flour(recipe: Recipe, items: list[Item]) -> int | None:
    """The action in which most of the flour goes in: not that of the spoonful on the raisins."""
    uses = [recipe.uses[item.use] for item in items if item.hazard in _FLOUR and item.use >= 0]
    most = max(uses, key=lambda use: (use.mass.hi, -use.action), default=None)
    return most.action if most else None
