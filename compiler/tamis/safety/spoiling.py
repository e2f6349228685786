"""Whether a dish spoils at room temperature when it is done: what it is then tells, not what went into it.

Food of animals spoils, raw or cooked, and so do vegetables and starch once they are cooked, and leaves, tomatoes and
melons once they are cut (US FDA Food Code, 1-201.10(B)). What was baked or fried so dry that flour and sugar outweigh
its moisture keeps, and so does what lies in sugar or vinegar, or was boiled down with sugar until hardly any moisture
was left. `[keeping]` in `grammar/safety.toml` holds the foods and the figures.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import total
from tamis.record import NamedTuple
from tamis.safety.data import rules
from tamis.safety.hazards import FLESH, comes_ready
from tamis.safety.words import safety_words
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence, Set

    from tamis.kitchen.goods import Goods
    from tamis.model.history import Hands
    from tamis.model.recipe import Recipe, Supply, Use
    from tamis.safety.records import HazardKind
    from tamis.safety.state import State
    from tamis.safety.words import States

_ALWAYS: frozenset[HazardKind] = FLESH | {"rice", "pulses", "kidney-beans"}


_NOTHING = (Fraction(0),)
_Part = Literal["flour", "fat", "sugar", "vinegar", "moist", ""]
_Key = tuple[int, bool]
"""What a food ends in: the component, and whether it was heated."""


class Cooked(NamedTuple):
    """The uses that were heated: in liquid or steam, by dry heat, and those of them that were boiled down with sugar
    until no moisture counts any more."""

    wet: Set[int] = frozenset()
    dry: Set[int] = frozenset()
    candied: Set[int] = frozenset()


class Mixture:
    """What was mixed and heated together, in grams: flour and meal, fat, sugar, vinegar, moisture, and what is none of
    these. `animal` tells that some of the moisture is in food of animals, `baked` that dry heat met it, `steamed` that
    a part met only wet heat, `within` that what it was mixed with afterwards keeps it."""

    __slots__ = ("_masses", "_sums", "animal", "baked", "flesh", "spoils", "steamed", "within")

    def __init__(self) -> None:
        self._masses: dict[_Part, list[Fraction]] = {}
        self._sums: dict[_Part, Fraction] = {}  # added up when they are asked for: most are not
        self.spoils = self.baked = self.steamed = self.flesh = self.animal = False
        self.within = False

    def put(self, use: Use, goods: Goods, wet: bool, candied: bool = False) -> None:
        """A food goes in, perhaps cooked by wet heat alone, or boiled down with sugar."""
        part = _part(goods)
        if _of_animals(goods):
            self.flesh |= goods.animal in ("meat", "fish")
            self.animal |= part == "moist" and bool(use.mass.hi)
            self.spoils, self.steamed = True, self.steamed or wet
        elif wet and part == "flour":
            self.spoils = self.steamed = True
        self._masses.setdefault("" if candied and part == "moist" else part, []).append(use.mass.hi)

    def grams(self, part: _Part) -> Fraction:
        """How much of it there is."""
        masses = self._masses.get(part, _NOTHING)
        if len(masses) == 1:
            return masses[0]
        found = self._sums.get(part)
        if found is None:
            found = self._sums[part] = total(masses)
        return found

    @property
    def dough(self) -> bool:
        """Whether there is so much flour in it that somebody may taste it raw: no sauce, no roux, nothing dusted."""
        flour = self.grams("flour")
        if self.flesh or not flour or flour < total(map(self.grams, self._masses)) * rules().keeping["dough"]:
            return False
        return self.grams("moist") > 0 or flour > self.grams("fat")

    @property
    def keeps(self) -> bool:
        """Whether it is too dry, too sweet or too sour to spoil, by itself or with what it was mixed with."""
        if self.baked and not self.steamed and self._is_dry:
            return True
        if ("sugar" in self._masses or "vinegar" in self._masses) and self._is_preserved:
            return True
        return self.within

    @property
    def _is_dry(self) -> bool:
        flour = self.grams("flour") * rules().keeping["flour"]
        return flour + self.grams("sugar") >= self.grams("moist")

    @property
    def _is_preserved(self) -> bool:
        figures = rules().keeping
        keeping = self.grams("sugar")
        if not self.animal:
            keeping += self.grams("vinegar") * figures["vinegar"]
        return keeping > 0 and keeping >= self.grams("moist") * figures["sugar"]

    def with_later(self, other: Mixture) -> Mixture:
        """It and what is mixed into it later: no oven has seen the two together."""
        whole = Mixture()
        for mixture in (self, other):
            for part, masses in mixture._masses.items():
                whole._masses.setdefault(part, []).extend(masses)
            whole.animal |= mixture.animal
        return whole


def _part(goods: Goods) -> _Part:
    """What a food counts as."""
    lists = rules().goods
    if goods.role == "flour" or goods.id in lists["meals"]:
        return "flour"
    if goods.role == "sugar" or goods.role == "fat":
        return goods.role
    if goods.id in lists["acids"]:
        return "vinegar"
    liquid = goods.show == "liquid" and goods.role != "flavour"
    return "moist" if liquid or goods.show == "vegetable" or _of_animals(goods) else ""


def spoils(
    recipe: Recipe, dish: State, used: Mapping[str, Supply], mixtures: Sequence[Mixture], candied: Set[int]
) -> bool:
    """Whether anything in the dish must not stand about."""
    for item in dish.items.values() if not dish.kinds.isdisjoint(_ALWAYS) else ():
        if item.hazard in FLESH or (item.hazard in _ALWAYS and item.use not in candied):
            return True
    if any([used[stem].spoils for stem in dish.recipes]):
        return True
    return any([mixture.flesh or (mixture.spoils and not mixture.keeps) for mixture in mixtures])


def boiled_down(recipe: Recipe, uses: Iterable[int]) -> bool:
    """Whether there is so much sugar among foods in a pan that the degrees of a syrup are theirs: those of deep fat, or
    of a caramel under a flan, say nothing of what is moist."""
    mixture = Mixture()
    for index in uses:
        use = recipe.uses[index]
        goods = use.ingredient.goods
        if goods is not None and goods.role != "water":
            mixture.put(use, goods, wet=False)
    share, sugar = rules().keeping["boiled"], mixture.grams("sugar")
    return not mixture.flesh and sugar > 0 and sugar >= (mixture.grams("moist") + mixture.grams("flour")) * share


class Mixing(NamedTuple):
    """What tells which foods of a recipe are mixed with which: the verbs of its lines, `into` of each component the one
    that it is mixed into in the end, and what each line has in hand."""

    recipe: Recipe
    verbs: Sequence[frozenset[str]]
    into: Sequence[int]
    hands: Hands


def mixing_of(recipe: Recipe, verbs: Sequence[frozenset[str]], hands: Hands) -> Mixing:
    """Worked out once for a recipe, however many of its batches are asked about."""
    return Mixing(recipe, verbs, _mixed_into(recipe, verbs), hands)


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
        mixture = found.get(key)
        if mixture is None:
            mixture = found[key] = Mixture()
        mixture.baked |= dry
        mixture.put(use, goods, wet and not dry, index in cooked.candied)
        mixture.spoils = mixture.spoils or _spoils(use, goods, wet or dry, verbs[use.action], states)
    _mix_later(mixing, found, keys)
    return list(found.values())


def _mix_later(mixing: Mixing, found: Mapping[_Key, Mixture], keys: Mapping[int, _Key]) -> None:
    """What was heated, and what was mixed into it cold: potatoes worked into a fondant lie in its sugar."""
    recipe, verbs, _, hands = mixing
    mixes = rules().verbs["mixes"], rules().verbs["kneads"]
    for (component, hot), mixture in found.items():
        cold = found.get((component, False))
        if not hot or cold is None or all([one.keeps for one in (mixture, cold) if one.spoils]):
            continue
        whole = mixture.with_later(cold)
        lines = {recipe.uses[use].action for use, key in keys.items() if key[0] == component} if whole.keeps else ()
        mixed = [line for line in lines if not all([verbs[line].isdisjoint(verb) for verb in mixes])]
        if any(_both(hands[line].uses, keys, component) for line in mixed):
            mixture.within = cold.within = True


def _both(uses: Iterable[int], keys: Mapping[int, _Key], component: int) -> bool:
    """Whether heated and cold food of a component are in hand together."""
    return {keys[use] for use in uses if use in keys}.issuperset(((component, True), (component, False)))


def _spoils(use: Use, goods: Goods, heated: bool, verbs: frozenset[str], states: States) -> bool:
    """Whether a plant spoils once it was heated, or cut by its line."""
    lists = rules().goods
    plant = goods.show == "vegetable" or goods.id in lists["starches"]
    if plant and (heated or comes_ready(use.ingredient, states)):
        return True
    return goods.id in lists["cut"] and is_cut(use, verbs, states)


def is_cut(use: Use, verbs: frozenset[str], states: States) -> bool:
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
