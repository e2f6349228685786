"""Batches: food in the cook's hands while a component is worked through, and the names it answers to."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.called import Keys
from tamis.model.mass import NOTHING, ONE, Mass, minus, plus, times, with_its_rest
from tamis.model.pile import Pile
from tamis.model.words import before_joint, model_words, plain
from tamis.quantity.nouns import nouns
from tamis.reading.tables import tables
from tamis.record import NamedTuple, made
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal, Protocol

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from tamis.kitchen.equipment import Station
    from tamis.kitchen.food import Show
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.called import Key
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient


Origin = Literal[
    "present", "component", "set-aside", "named", "share", "part", "left", "by-product", "meanwhile", "used-recipe"
]
"""How a batch came to be open."""
_ANIMALS: tuple[Show, ...] = ("meat", "fish")
"""Food that is called by the animal."""


class Food(NamedTuple):
    """One ingredient within a batch: which use it came by, the words of its name, its goods (and how they are shown)
    if known."""

    use: int
    words: tuple[str, ...]
    goods: str
    show: Show | None
    mass: Mass

    @classmethod
    def known_as(cls, use: int, words: tuple[str, ...], goods: Goods | None, mass: Mass) -> Food:
        """The food of goods, or of something that no goods are known for."""
        return made(cls, (use, words, goods.id if goods else "", goods.show if goods else None, mass))

    @classmethod
    def of(cls, use: int, food: Ingredient, words: tuple[str, ...], mass: Mass, kitchen: Kitchen) -> Food:
        """The food of an ingredient clause, by the words of its name; juice and zest are called so, not by the fruit. A
        part of what is unsafe raw, such as the yolks of eggs, stays so."""
        language = kitchen.language
        said = tuple(food.part.split())
        part = said[-1] if said and not before_joint(said, language) else ""
        words, of = plain(f"{food.name} {part}", language) if part else words, model_words(language).of
        named_so = food.goods is not None and food.goods.show in _ANIMALS  # a leg of lamb is the leg, and the lamb
        if not of.isdisjoint(words) and not named_so:
            at = next((at for at, word in enumerate(words) if at and word in of), len(words))
            measured = food.goods is not None and kitchen.cupboard.count_word(words[at - 1])  # a blade of mace
            words = words[at + 1 :] if measured and at + 1 < len(words) else words[:at]
        goods = food.goods
        if goods and part:
            goods = part_of_goods(goods, part, kitchen) or goods if goods.hazard else None
        return cls.known_as(use, words, goods, mass)

    def keys(self) -> list[Key]:
        """By what it can be found."""
        words = self.words
        found: list[Key] = [("food", words)]
        if not self.goods:
            found += [("word", word) for word in words]
            return found
        if words:
            found.append(("word", words[-1]))
        found += (("goods", self.goods), ("show", self.show or ""))
        if self.show in _ANIMALS:
            found += [("animal", word) for word in words]
        return found


def part_of_goods(goods: Goods, part: str, kitchen: Kitchen) -> Goods | None:
    """What a part of the goods is by itself: the yolk of an egg."""
    forms = (part, nouns(kitchen.language).singular(part))
    found = next((own.id for own in goods.parts if own.id.rpartition("-")[2] in forms), "")
    return kitchen.larder.get(found) if found else None


class Home(Protocol):
    """Where a batch lies open."""

    def share(self, batch: Batch) -> None:
        """A share of it is taken."""


class Batch:
    """Food worked on as one. `share` is the part of the batch it was parted from (1 for a whole one).

    `last` is the action that worked on it last, `origin` how it came to be open, `home` where it lies open, `left` how
    much of it a share has not yet taken, `shared` whether one has, `taken_at` where the last of it went, `rest_of` the
    use whose written measure it is the rest of and `rest_was` how much of that it was at first, `measure` how much it
    is as the text or its recipe says, `number` how many batches began before it, `lifted_from` the batch out of which
    it was lifted, `lifted_out` what was lifted out of it, `measured` the uses that were in it when it was measured,
    `vessel` the noun of what it was put into.
    """

    __slots__ = (
        "_label", "early", "foods", "home", "keys", "last", "left", "lifted_from", "lifted_out", "mass", "measure",
        "measured", "names", "number", "on_heat", "origin", "pieces", "product", "products", "rest_of", "rest_was",
        "shared", "span", "station", "sure", "taken_at", "vessel",
    )  # fmt: skip

    def __init__(self, origin: Origin, number: int) -> None:
        self.origin: Origin = origin
        self.number = number
        self.names: Pile[tuple[str, ...]] = Pile()
        self._label: tuple[str, ...] = ()
        self.foods: Pile[Food] = Pile()
        self.keys: Keys[Batch] = Keys()
        self.products: list[int] = []
        self.mass: Mass = NOTHING
        self.last: int | None = None
        self.early = False
        self.pieces: tuple[Amount, str] | None = None
        self.on_heat = False
        self.sure = True
        self.station: Station = ""
        self.left = ONE
        self.shared = False
        self.home: Home | None = None
        self.product: int | None = None
        self.taken_at: Span | None = None
        self.span: Span = Span(0, 0)
        self.rest_of: int | None = None
        self.rest_was = ONE
        self.measure: Measure | None = None
        self.measured: frozenset[int] = frozenset()
        self.lifted_from: Batch | None = None
        self.lifted_out: Batch | None = None
        self.vessel = ""

    def call(self, words: tuple[str, ...]) -> None:
        """Give it a name."""
        self.names.add(words)
        self.keys.add(_name_keys(words))
        self._label = words

    def add(self, food: Food) -> None:
        """Food goes in."""
        self.foods.add(food)
        self.keys.add(food.keys())
        self.mass = plus(self.mass, food.mass)
        if food.mass.hi or food.mass.unknown:
            self.measure = None

    def take_in(self, other: Batch, fraction: Fraction | None, whole: bool) -> None:
        """Another batch, or a part of it, joins: its foods and names can be found here from now on. `whole`: all that
        was left of it."""
        self.foods.join(other.foods)
        self.names.join(other.names)
        self.keys.join(other.keys)
        self._label = other._label or self._label
        self.measured |= other.measured
        self.vessel = self.vessel or other.vessel
        self.measure = None
        if fraction is None:
            self.mass = plus(self.mass, Mass(unknown=(" ".join(other.label),), uncounted=other.mass.uncounted))
        else:
            before = with_its_rest(self.mass, " ".join(other.label)) if whole else self.mass
            self.mass = plus(before, times(other.mass, fraction))
        if other.product is not None:
            self.products.append(other.product)

    def share(self) -> None:
        """A part of it is taken."""
        self.shared = True
        if self.home:
            self.home.share(self)

    def remove(self, words: tuple[str, ...], kitchen: Kitchen) -> list[Food]:
        """Food that is fished out or thrown away leaves; tells what was found."""
        if not self.keys.has(any_of(words, kitchen)):
            return []
        gone = [food for food in self.foods if matches_food(words, food, kitchen)]
        gone = gone or [food for food in self.foods if is_of_kind(words, food, kitchen)]
        if gone:
            self.hold([food for food in self.foods if food not in gone])
        self.mass = without(self.mass, gone, self.measured)
        return gone

    def let_go(self, foods: Sequence[Food], words: tuple[str, ...]) -> tuple[tuple[str, ...], ...]:
        """Foods leave it, and it is not called so any more; returns the names that are gone."""
        names = tuple([name for name in self.names if name == words])
        if names:
            self.names = Pile([name for name in self.names if name != words])
            self._label = () if self._label == words else self._label
        self.hold([food for food in self.foods if food not in foods])
        self.mass = without(self.mass, foods, self.measured)
        return names

    @property
    def label(self) -> tuple[str, ...]:
        """What a message calls it: its last given name, else its first food."""
        if self._label:
            return self._label
        return next((food.words for food in self.foods), ("batch",))

    def hold(self, foods: Sequence[Food]) -> None:
        """These foods and no others are in it."""
        self.foods = Pile(foods)
        self.keys = Keys()
        for name in self.names:
            self.keys.add(_name_keys(name))
        for food in foods:
            self.keys.add(food.keys())

    def is_named(self, words: tuple[str, ...]) -> bool:
        """Whether this is a name of it, or of what went into it."""
        return self.keys.has((("name", words),))


def without(mass: Mass, foods: Iterable[Food], measured: frozenset[int]) -> Mass:
    """What is left when foods go; what lay in it when it was `measured` (by uses) is not in that measure any more."""
    for food in foods:
        if food.use not in measured:
            mass = minus(mass, food.mass)
    return mass


def _name_keys(name: tuple[str, ...]) -> list[Key]:
    return [("name", name), ("word", name[-1])] if name else [("name", name)]


def called_so(words: tuple[str, ...]) -> list[Key]:
    """A name, or the whole name of a food."""
    return [("name", words), ("food", words)]


def answering(words: tuple[str, ...], kitchen: Kitchen) -> list[Key]:
    """What `[the X]` can mean: a name, a food, the last word of one, or another name for the same goods."""
    keys = called_so(words)
    if len(words) == 1:
        keys.append(("word", words[0]))
    found = kitchen.larder.find(words) if words else None
    if found is not None:
        keys.append(("goods", found.goods.id))
    return keys


def of_kind(words: tuple[str, ...], kitchen: Kitchen) -> list[Key]:
    """*The pasta*, *the meat*, *the chicken*: food of that kind."""
    if len(words) != 1:
        return []
    kinds = sorted(tables(kitchen.language).kinds.get(words[0], ()))
    return [*((key, kind) for kind in kinds for key in ("show", "goods")), ("animal", words[0])]


def any_of(words: tuple[str, ...], kitchen: Kitchen) -> list[Key]:
    """All that a name can mean: what is called so, and food of that kind."""
    return [*answering(words, kitchen), *of_kind(words, kitchen)]


def is_of_kind(words: tuple[str, ...], food: Food, kitchen: Kitchen) -> bool:
    """Spaghetti is *the pasta*; chicken thighs are *the meat* and *the chicken*."""
    goods = kitchen.larder.get(food.goods) if food.goods and len(words) == 1 else None
    if goods is None:
        return False
    kinds = tables(kitchen.language).kinds.get(words[0], ())
    by_animal = goods.show in _ANIMALS and words[0] in food.words
    return goods.show in kinds or goods.id in kinds or by_animal


def matches_food(words: tuple[str, ...], food: Food, kitchen: Kitchen) -> bool:
    """A food answers to its name, to its last word, and to another name for the same goods."""
    if words == food.words or (len(words) == 1 and food.words[-1:] == words):
        return True
    if len(words) == 1 and words[0] in food.words and not food.goods:
        return True
    if not food.goods or not words:
        return False
    found = kitchen.larder.find(words)
    return found is not None and found.goods.id == food.goods
