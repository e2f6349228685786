"""What the safety checks know of a recipe."""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.food import Hazard
from tamis.kitchen.settings import Authority
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.safety.data import AllergenList

HazardKind = Hazard | Literal["stuffing", "cured-pork", "leftover", "cut"]
"""What the goods bring, and what becomes of it; what comes cooked, and plants that spoil once they are cut."""
Form = Literal["piece", "small", "fine", "whole", "large", "juices", "stuffing", "contact", "film", "white"]
"""How raw food lies in a batch: fine is chopped so or thinly sliced, whole is an egg as it is or a bird, large a bird;
juices are parted from raw food, contact is what a tool has touched, and a film is egg that other food was dipped in,
white that of an egg alone."""
ClearedBy = Literal["temperature", "held", "cue", "boiled", "baked", "fried", "heated"]
Served = Literal["", "raw", "uncooked"]
CautionKey = Literal[
    "raw-meat", "served-raw", "served-raw-keeps", "raw-fish", "soft-egg", "raw-dough", "unfinished", "honey", "nuts",
    "beans", "sprouts", "raw-milk", "rice", "garlic-oil", "jars", "leftovers", "leftovers-cold", "steam", "hot-oil",
    "hot-sugar", "stick-blender", "blender", "hot-tin", "flame", "bones",
]  # fmt: skip


class Clearing(NamedTuple):
    """Where a hazard ended: the action, the words that end it, and by what."""

    action: int
    words: str
    by: ClearedBy


class Item(NamedTuple):
    """One hazard within a batch.

    `hazard` is its kind, `food` what the cook calls it, `use` the ingredient use it came by (-1: a used recipe's).
    `path` names the batches it went through, `core` the hottest temperature stated for it, `wet`, `fried` and `boiled`
    the seconds it simmered, fried and boiled, `soaked` those it soaked. `bound` is an egg in a dough or batter.
    """

    hazard: HazardKind
    food: str
    use: int
    span: Span
    form: Form = "piece"
    path: tuple[str, ...] = ()
    cleared: Clearing | None = None
    core: Fraction | None = None
    wet: int = 0
    fried: int = 0
    boiled: int = 0
    soaked: int = 0
    heated: bool = False
    bound: bool = False
    cured: bool = False


class Allergen(NamedTuple):
    """One allergen as a list declares it, with the foods it comes from. `optional`: all of them may be left out.
    `instead`: only foods given as an alternative have it."""

    name: str
    foods: tuple[str, ...]
    optional: bool = False
    instead: bool = False


class Declared(NamedTuple):
    """The allergens of the dish or of a component by one list (us, eu)."""

    list: AllergenList
    allergens: tuple[Allergen, ...]


class Part(NamedTuple):
    """A component by its name, with what must be declared of it and foods of which nothing is known; `missing` are the
    words of what may be food and could not be read."""

    name: str
    declared: tuple[Declared, ...]
    unknown: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()

    @property
    def not_known(self) -> tuple[str, ...]:
        """All of which nothing is known."""
        return (*self.unknown, *self.missing)


class Wait(NamedTuple):
    """Risky food that stands: the action, the food, and the °C it is held at (None: the room's, or as warm as nobody
    says where it is `kept_warm`). `use` is the food's."""

    action: int
    food: str
    span: Span
    celsius: Fraction | None = None
    kept_warm: bool = False
    use: int = -1


class Caution(NamedTuple):
    """A caution that the recipe's own clauses call for: its key and words, their source, the action (None: all)."""

    key: CautionKey
    text: str
    source: str = ""
    action: int | None = None


class Doubt(NamedTuple):
    """An unknown food that is called like one with a hazard: that, the name of the known food where it is true of this
    one too, and the degrees that the text asks for."""

    food: str
    hazard: HazardKind
    like: str
    span: Span
    heat: str = ""


class Contradiction(NamedTuple):
    """A tag that promises what a food breaks; `optional` if the food may be left out."""

    tag: str
    food: str
    why: str
    span: Span
    optional: bool = False


Verdict = Literal["agrees", "contradicted", "unknown", "unchecked"]


class Claim(NamedTuple):
    """A tag that promises something, and what comes of it: all that is known agrees, the foods contradict it, nothing
    tells it of them, or nothing looks at such a promise. `promise` is its name in the data, if it is there."""

    tag: str
    verdict: Verdict
    foods: tuple[str, ...] = ()
    promise: str = ""


class Safety(NamedTuple):
    """All of it. `items` are the hazards that reach the dish, cleared or not; `rest` those whose limit asks for a rest
    that the recipe doesn't give; `waits` are food that spoils and stands too long, `halves` raw food that is
    cooked in part, cooled and finished later, `tepid` cooked food that is heated again and only until it is warm,
    `oil_waits` garlic in oil kept outside the fridge; `served` is the header's word (raw, uncooked) if it is a known
    one; `animal` and `words` are the kinds of animal food and the goods' own words for allergens in the dish; `spoils`
    if it must not stand about; `doubts` are unknown foods with the name of a raw one."""

    authority: Authority
    items: tuple[Item, ...] = ()
    short_rest: tuple[Item, ...] = ()
    waits: tuple[Wait, ...] = ()
    halves: tuple[Wait, ...] = ()
    tepid: tuple[Item, ...] = ()
    oil_waits: tuple[Wait, ...] = ()
    dish: Part = Part("", ())
    parts: tuple[Part, ...] = ()
    contradictions: tuple[Contradiction, ...] = ()
    claims: tuple[Claim, ...] = ()
    cautions: tuple[Caution, ...] = ()
    served: Served = ""
    animal: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    spoils: bool = False
    doubts: tuple[Doubt, ...] = ()

    @property
    def unproved(self) -> tuple[Claim, ...]:
        """The promises that hold only if some foods keep them of which nothing is known."""
        return tuple([claim for claim in self.claims if claim.verdict == "unknown"])

    @property
    def unchecked(self) -> tuple[Claim, ...]:
        """The promises at which nothing looks, or which no recipe can prove."""
        return tuple([claim for claim in self.claims if claim.verdict == "unchecked"])

    @property
    def open(self) -> tuple[Item, ...]:
        """Hazards that reach the dish and that nothing cleared."""
        return tuple(item for item in self.items if item.cleared is None)
