"""Whether a dish spoils at room temperature when it is done: what it is then tells, not what went into it.

Food of animals spoils, raw or cooked, and so do vegetables and starch once they are cooked, and leaves, tomatoes and
melons once they are cut (US FDA Food Code, 1-201.10(B)). What was baked or fried so dry that flour and sugar outweigh
its moisture keeps, and so does what lies in sugar or vinegar. `[keeping]` in `grammar/safety.toml` holds the foods and
the figures.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.hazards import FLESH, comes_ready
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence, Set

    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Recipe, Supply, Use
    from tamis.safety.records import HazardKind
    from tamis.safety.state import State
    from tamis.safety.words import States

_ALWAYS: frozenset[HazardKind] = FLESH | {"rice", "pulses", "kidney-beans"}


class Cooked(NamedTuple):
    """The uses that were heated: in liquid or steam, and by dry heat."""

    wet: Set[int] = frozenset()
    dry: Set[int] = frozenset()


class Mixture:
    """What was mixed and heated together, in grams: flour and meal, fat, sugar, vinegar, moisture (`animal`: that of
    food of animals), and all of it. `baked` tells that dry heat met it, `steamed` that a part met only wet heat."""

    __slots__ = ("all", "animal", "baked", "fat", "flesh", "flour", "moist", "spoils", "steamed", "sugar", "vinegar")

    def __init__(self) -> None:
        self.all = self.flour = self.fat = self.sugar = self.vinegar = self.moist = self.animal = Fraction(0)
        self.spoils = self.baked = self.steamed = self.flesh = False

    def put(self, use: Use, goods: Goods, cooked: bool, wet: bool, cut: bool = False) -> None:
        """A food goes in that was cooked, perhaps by wet heat alone, or cut."""
        mass, lists = use.mass.hi, rules().goods
        self.all += mass
        animal = _of_animals(goods)
        self.flesh |= animal and goods.animal in ("meat", "fish")
        starch = goods.role == "flour" or goods.id in lists["meals"]
        if starch:
            self.flour += mass
        elif goods.role == "sugar":
            self.sugar += mass
        elif goods.role == "fat":
            self.fat += mass
        elif goods.id in lists["acids"]:
            self.vinegar += mass
        elif animal or goods.show == "vegetable" or (goods.show == "liquid" and goods.role != "flavour"):
            self.moist += mass
            self.animal += mass if animal else 0
        self.steamed |= wet and (starch or animal)
        plant = goods.show == "vegetable" or goods.id in lists["starches"]
        self.spoils |= animal or (cooked and plant) or (starch and wet) or (cut and goods.id in lists["cut"])

    @property
    def dough(self) -> bool:
        """Whether there is so much flour in it that somebody may taste it raw: no sauce, no roux, nothing dusted."""
        if self.flesh or not self.flour or self.flour < self.all * rules().keeping["dough"]:
            return False
        return self.moist > 0 or self.flour > self.fat

    @property
    def keeps(self) -> bool:
        """Whether it is too dry, too sweet or too sour to spoil."""
        figures = rules().keeping
        if self.baked and not self.steamed and self.flour * figures["flour"] + self.sugar >= self.moist:
            return True
        sour = 0 if self.animal else self.vinegar * figures["vinegar"]
        return self.sugar + sour >= self.moist * figures["sugar"] and self.sugar + sour > 0


def spoils(recipe: Recipe, dish: State, used: Mapping[str, Supply], mixtures: Sequence[Mixture]) -> bool:
    """Whether anything in the dish must not stand about."""
    if any(item.hazard in _ALWAYS for item in dish.items.values()) or any(used[stem].spoils for stem in dish.recipes):
        return True
    return any(mixture.flesh or (mixture.spoils and not mixture.keeps) for mixture in mixtures)


def mixtures_of(recipe: Recipe, dish: State, cooked: Cooked, verbs: Sequence[frozenset[str]]) -> list[Mixture]:
    """The dish's foods by what they were mixed with: a filling apart from its pastry, cream from the cake under it."""
    found: dict[tuple[int, bool], Mixture] = {}
    into = _mixed_into(recipe, verbs)
    states = safety_words(recipe.language).states
    for index in dish.uses:
        use = recipe.uses[index]
        goods = use.ingredient.goods
        if goods is None:
            continue
        wet, dry = index in cooked.wet, index in cooked.dry
        mixture = found.setdefault((into[use.component], wet or dry), Mixture())
        mixture.baked |= dry
        cut = _is_cut(use, verbs[use.action], states)
        mixture.put(use, goods, wet or dry or comes_ready(use.ingredient, states), wet and not dry, cut)
    return list(found.values())


def _is_cut(use: Use, verbs: frozenset[str], states: States) -> bool:
    """Whether a food is cut before it goes in, or by its line."""
    food = use.ingredient
    said = {*food.states, *food.preparation.lower().replace(",", " ").split()}
    return not said.isdisjoint(states.cut) or not verbs.isdisjoint(rules().verbs["cuts"])


def _of_animals(goods: Goods) -> bool:
    """Food of animals that spoils: not fat, hard cheese, honey or fish sauce."""
    animal = goods.animal in ("meat", "fish", "dairy", "egg")
    return animal and goods.role != "fat" and goods.id not in rules().goods["keeps"]


def _mixed_into(recipe: Recipe, verbs: Sequence[frozenset[str]]) -> list[int]:
    """For each component, the one that what it makes is mixed into in the end; itself if it is only laid there."""
    into, mixed = list(range(len(recipe.components))), _mixed(recipe, verbs)
    for taking in reversed(recipe.takings):
        made = recipe.products[taking.product]
        target = recipe.actions[taking.action].component
        if made.kind != "used-recipe" and made.component != target and mixed[taking.action]:
            into[made.component] = into[target]
    return into


def _mixed(recipe: Recipe, verbs: Sequence[frozenset[str]]) -> list[bool]:
    """Of each line whether it or one behind it in its component mixes or stands on the heat, before an oven."""
    merges = rules().verbs["merges"]
    found = [False] * len(recipe.actions)
    later: dict[int, bool] = {}
    for action in reversed(recipe.actions):
        if action.work.station == "oven" and not action.heats:
            later[action.component] = False
        elif action.work.station == "ring" or not verbs[action.number].isdisjoint(merges):
            later[action.component] = True
        found[action.number] = later.get(action.component, False)
    return found
