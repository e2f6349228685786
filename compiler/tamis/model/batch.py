"""Batches: food in the cook's hands while a component is worked through, and the names it answers to."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.mass import NOTHING, ONE, minus, plus, times
from tamis.model.pile import Pile
from tamis.model.recipe import Mass
from tamis.model.words import before_joint, model_words, plain
from tamis.reading.tables import tables
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.equipment import Station
    from tamis.kitchen.house import Kitchen
    from tamis.model.opened import Opened
    from tamis.quantity.amount import Amount
    from tamis.quantity.measure import Measure
    from tamis.reading.clauses import Ingredient


Origin = Literal[
    "present", "component", "set-aside", "named", "share", "part", "left", "by-product", "meanwhile", "used-recipe"
]
"""How a batch came to be open."""


class Food:
    """One ingredient within a batch: which use it came by, the words of its name, its goods if known."""

    __slots__ = ("goods", "mass", "use", "words")

    def __init__(self, use: int, words: tuple[str, ...], goods: str, mass: Mass) -> None:
        self.use = use
        self.words = words
        self.goods = goods
        self.mass = mass

    @classmethod
    def of(cls, use: int, food: Ingredient, mass: Mass, language: str) -> Food:
        """The food of an ingredient clause; juice and zest are called so, not by the fruit."""
        said = tuple(food.part.split())
        part = said[-1] if said and not before_joint(said, language) else ""
        words, of = plain(f"{food.name} {part}", language), model_words(language).of
        words = words[: next((at for at, word in enumerate(words) if at and word in of), len(words))]
        return cls(use, words, food.goods.id if food.goods and not part else "", mass)


class Batch:
    """Food worked on as one. `share` is the part of the batch it was parted from (1 for a whole one).

    `last` is the action that worked on it last, `origin` how it came to be open, `home` where it lies open, `left` how
    much of it a share has not yet taken, `shared` whether one has, `taken_at` where the last of it went, `rest_of` the
    use whose written measure it is the rest of, `measure` how much it is as the text or its recipe says.
    """

    __slots__ = (
        "_label", "early", "foods", "home", "last", "left", "mass", "measure", "names", "on_heat", "origin", "pieces",
        "product", "products", "rest_of", "shared", "span", "station", "taken_at",
    )  # fmt: skip

    def __init__(self, origin: Origin = "present") -> None:
        self.origin: Origin = origin
        self.names: Pile[tuple[str, ...]] = Pile()
        self._label: tuple[str, ...] = ()
        self.foods: Pile[Food] = Pile()
        self.products: list[int] = []
        self.mass: Mass = NOTHING
        self.last: int | None = None
        self.early = False
        self.pieces: tuple[Amount, str] | None = None
        self.on_heat = False
        self.station: Station = ""
        self.left = ONE
        self.shared = False
        self.home: Opened | None = None
        self.product: int | None = None
        self.taken_at: Span | None = None
        self.span: Span = Span(0, 0)
        self.rest_of: int | None = None
        self.measure: Measure | None = None

    def call(self, words: tuple[str, ...]) -> None:
        """Give it a name."""
        self.names.add(words)
        self._label = words

    def add(self, food: Food) -> None:
        """Food goes in."""
        self.foods.add(food)
        self.mass = plus(self.mass, food.mass)

    def take_in(self, other: Batch, fraction: Fraction | None) -> None:
        """Another batch, or a part of it, joins: its foods and names can be found here from now on."""
        self.foods.join(other.foods)
        self.names.join(other.names)
        self._label = other._label or self._label
        if fraction is None:
            self.mass = plus(self.mass, Mass(unknown=(" ".join(other.label),), uncounted=other.mass.uncounted))
        else:
            self.mass = plus(self.mass, times(other.mass, fraction))
        if other.product is not None:
            self.products.append(other.product)

    def share(self) -> None:
        """A part of it is taken."""
        self.shared = True
        if self.home:
            self.home.share(self)

    def remove(self, words: tuple[str, ...], kitchen: Kitchen) -> bool:
        """Food that is fished out or thrown away leaves; tells whether any was found."""
        gone = [food for food in self.foods if matches_food(words, food, kitchen)]
        gone = gone or [food for food in self.foods if is_of_kind(words, food, kitchen)]
        if gone:
            self.foods = Pile(food for food in self.foods if food not in gone)
        for food in gone:
            self.mass = minus(self.mass, food.mass)
        return bool(gone)

    @property
    def label(self) -> tuple[str, ...]:
        """What a message calls it: its last given name, else its first food."""
        if self._label:
            return self._label
        return next((food.words for food in self.foods), ("batch",))

    def is_called(self, words: tuple[str, ...]) -> bool:
        """Whether this is its name, or the whole name of a food in it."""
        return words in self.names or any(food.words == words for food in self.foods)

    def answers_to(self, words: tuple[str, ...], kitchen: Kitchen) -> bool:
        """Whether `[the X]` can mean this batch: a name of it, or one of its foods, or the last word of one."""
        if words in self.names or (len(words) == 1 and any(name[-1] == words[0] for name in self.names if name)):
            return True
        return any(matches_food(words, food, kitchen) for food in self.foods)

    def holds_kind(self, words: tuple[str, ...], kitchen: Kitchen) -> bool:
        """Whether a food of it is of this kind."""
        return any(is_of_kind(words, food, kitchen) for food in self.foods)


def is_of_kind(words: tuple[str, ...], food: Food, kitchen: Kitchen) -> bool:
    """Spaghetti is *the pasta*; chicken thighs are *the meat* and *the chicken*."""
    goods = kitchen.larder.get(food.goods) if food.goods and len(words) == 1 else None
    if goods is None:
        return False
    kinds = tables(kitchen.language).kinds.get(words[0], ())
    by_animal = goods.show in ("meat", "fish") and words[0] in food.words
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
