"""Whether a dish spoils at room temperature when it is done: what it is then tells, not what went into it.

Food of animals spoils, raw or cooked, and so do vegetables and starch once they are cooked, and leaves, tomatoes and
melons once they are cut (US FDA Food Code, 1-201.10(B)). What was baked or fried so dry that flour and sugar outweigh
its moisture keeps, and so does what lies in sugar or vinegar, or was boiled down with sugar until hardly any moisture
was left. `[keeping]` in `grammar/safety.toml` holds the foods and the figures.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.hazards import FLESH, comes_ready
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence, Set

    from tamis.kitchen.goods import Goods
    from tamis.model.history import Hands
    from tamis.model.recipe import Recipe, Supply, Use
    from tamis.safety.records import HazardKind
    from tamis.safety.state import State
    from tamis.safety.words import States

_ALWAYS: frozenset[HazardKind] = FLESH | {"rice", "pulses", "kidney-beans"}


_Key = tuple[int, bool]
"""What a food ends in: the component, and whether it was heated."""


class Cooked(NamedTuple):
    """The uses that were heated: in liquid or steam, by dry heat, and those of them that were boiled down with sugar
    until no moisture counts any more."""

    wet: Set[int] = frozenset()
    dry: Set[int] = frozenset()
    candied: Set[int] = frozenset()


class Mixture:
    """What was mixed and heated together, in grams: flour and meal, fat, sugar, vinegar, moisture (`animal`: that of
    food of animals), and all of it. `baked` tells that dry heat met it, `steamed` that a part met only wet heat.
    `whole` is this and what it was mixed with afterwards."""

    __slots__ = (
        "all",
        "animal",
        "baked",
        "fat",
        "flesh",
        "flour",
        "moist",
        "spoils",
        "steamed",
        "sugar",
        "vinegar",
        "whole",
    )

    def __init__(self) -> None:
        self.all = self.flour = self.fat = self.sugar = self.vinegar = self.moist = self.animal = Fraction(0)
        self.spoils = self.baked = self.steamed = self.flesh = False
        self.whole: Mixture | None = None

    def put(self, use: Use, goods: Goods, cooked: bool, wet: bool, cut: bool = False, candied: bool = False) -> None:
        """A food goes in that was cooked, perhaps by wet heat alone, or cut, or boiled down with sugar."""
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
            self.moist += 0 if candied else mass
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
        """Whether it is too dry, too sweet or too sour to spoil, by itself or with what it was mixed with."""
        figures = rules().keeping
        if self.baked and not self.steamed and self.flour * figures["flour"] + self.sugar >= self.moist:
            return True
        sour = 0 if self.animal else self.vinegar * figures["vinegar"]
        if self.sugar + sour >= self.moist * figures["sugar"] and self.sugar + sour > 0:
            return True
        return self.whole is not None and self.whole.keeps

    def with_later(self, other: Mixture) -> Mixture:
        """It and what is mixed into it later: no oven has seen the two together."""
        whole = Mixture()
        for part in ("all", "flour", "fat", "sugar", "vinegar", "moist", "animal"):
            setattr(whole, part, getattr(self, part) + getattr(other, part))
        return whole


def spoils(
    recipe: Recipe, dish: State, used: Mapping[str, Supply], mixtures: Sequence[Mixture], candied: Set[int]
) -> bool:
    """Whether anything in the dish must not stand about."""
    items = dish.items.values()
    if any(item.hazard in FLESH or (item.hazard in _ALWAYS and item.use not in candied) for item in items):
        return True
    if any(used[stem].spoils for stem in dish.recipes):
        return True
    return any(mixture.flesh or (mixture.spoils and not mixture.keeps) for mixture in mixtures)


def boiled_down(recipe: Recipe, uses: Iterable[int]) -> bool:
    """Whether there is so much sugar among foods in a pan that the degrees of a syrup are theirs: those of deep fat, or
    of a caramel under a flan, say nothing of what is moist."""
    mixture = Mixture()
    for index in uses:
        use = recipe.uses[index]
        goods = use.ingredient.goods
        if goods is not None and goods.role != "water":
            mixture.put(use, goods, cooked=True, wet=False)
    share = rules().keeping["boiled"]
    return not mixture.flesh and mixture.sugar > 0 and mixture.sugar >= (mixture.moist + mixture.flour) * share


class Mixing(NamedTuple):
    """What tells which foods of a recipe are mixed with which: the verbs of its lines, `into` of each component the one
    that it is mixed into in the end, and what each line has in hand."""

    recipe: Recipe
    verbs: Sequence[frozenset[str]]
    into: Sequence[int]
    hands: Hands


def mixing_of(recipe: Recipe, verbs: Sequence[frozenset[str]]) -> Mixing:
    """Worked out once for a recipe, however many of its batches are asked about."""
    return Mixing(recipe, verbs, _mixed_into(recipe, verbs), recipe.history.hands(len(recipe.actions)))


def mixtures_of(mixing: Mixing, dish: State, cooked: Cooked) -> list[Mixture]:
    """The dish's foods by what they were mixed with: a filling apart from its pastry, cream from the cake under it."""
    found: dict[_Key, Mixture] = {}
    keys: dict[int, _Key] = {}
    recipe, verbs, into, _ = mixing
    states = safety_words(recipe.language).states
    for index in dish.uses:
        use = recipe.uses[index]
        goods = use.ingredient.goods
        if goods is None:
            continue
        wet, dry = index in cooked.wet, index in cooked.dry
        keys[index] = key = (into[use.component], wet or dry)
        mixture = found.setdefault(key, Mixture())
        mixture.baked |= dry
        cut, ready = _is_cut(use, verbs[use.action], states), comes_ready(use.ingredient, states)
        mixture.put(use, goods, wet or dry or ready, wet and not dry, cut, index in cooked.candied)
    _mix_later(mixing, found, keys)
    return list(found.values())


def _mix_later(mixing: Mixing, found: Mapping[_Key, Mixture], keys: Mapping[int, _Key]) -> None:
    """What was heated, and what was mixed into it cold: potatoes worked into a fondant lie in its sugar."""
    recipe, verbs, _, hands = mixing
    mixes = rules().verbs["mixes"] | rules().verbs["kneads"]
    for (component, hot), mixture in found.items():
        cold = found.get((component, False))
        if not hot or cold is None or (mixture.keeps and cold.keeps):
            continue
        whole = mixture.with_later(cold)
        lines = {recipe.uses[use].action for use, key in keys.items() if key[0] == component} if whole.keeps else ()
        if any(not verbs[line].isdisjoint(mixes) and _both(hands[line].uses, keys, component) for line in lines):
            mixture.whole = cold.whole = whole


def _both(uses: Iterable[int], keys: Mapping[int, _Key], component: int) -> bool:
    """Whether heated and cold food of a component are in hand together."""
    return {keys[use] for use in uses if use in keys}.issuperset(((component, True), (component, False)))


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
