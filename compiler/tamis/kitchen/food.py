"""What is known of one food, read from the generated list.

The list holds figures as a cook would read them in a source ("125 g/cup"); the arithmetic needs exact
grams per millilitre. The two meet here and nowhere else, and only for a food that a recipe names.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from tamis.record import NamedTuple
from tamis.string_tables import exact
from tamis.typed import Any, Literal

Raw = Mapping[str, Any]

# The closed lists of the goods: their head in grammar/sources tells what each is for. A test holds the two together.
Show = Literal[
    "liquid", "powder", "spice", "solid", "piece", "meat", "fish", "vegetable", "fruit", "herb", "cheese", "grain",
    "nut",
]  # fmt: skip
Hazard = Literal[
    "", "poultry", "minced-meat", "whole-meat", "pork", "fish", "shellfish", "egg", "raw-flour", "rice", "pulses",
    "kidney-beans", "poison-raw", "poison", "sprouts", "raw-milk", "honey", "garlic-in-oil",
]  # fmt: skip
Animal = Literal["", "meat", "fish", "dairy", "egg", "honey", "gelatine"]
Role = Literal["", "flour", "water", "salt", "yeast", "sugar", "fat", "egg", "milk", "starter", "flavour"]

FERMENTING: tuple[Role, ...] = ("yeast", "starter")
FROM_TAP: Literal["tap"] = "tap"
"""The merchant of what is not bought; without an amount it is there to boil, steam or cool in."""

GoodsKey = Literal[
    "id", "name", "plural", "aliases", "keys", "states", "densities", "pieces", "parts", "liquid", "show", "allergens",
    "hazard", "animal", "flour", "salt", "leavener", "role", "merchant", "water", "refuse", "pack", "price", "of",
    "like", "kind", "sorts",
]  # fmt: skip
"""What a table or an item says of a food."""
PLAIN: Literal["plain"] = "plain"
"""The state of a food as it is sold, a piece of no said size."""

CUP = Fraction(473176473, 2000000)  # millilitres; NIST Handbook 44, Appendix C: half a US liquid pint
MILLILITRES = {
    "ml": Fraction(1),
    "l": Fraction(1000),
    "cup": CUP,
    "tbsp": CUP / 16,
    "tsp": CUP / 48,
    "fl_oz": CUP / 8,
}


class Density(NamedTuple):
    """Grams per millilitre of a food in one state ("" for the food as it is sold), as the sources give it.

    `usual` is the figure of the first source named (USDA where there is one), `lo` and `hi` are the least
    and the greatest of all. `analogy` says that a neighbour lends the figure.
    """

    state: str
    lo: Fraction
    hi: Fraction
    source: str
    analogy: bool
    usual: Fraction


class Piece(NamedTuple):
    """Grams of one piece without its refuse; `word` is the count noun or size ("" for a plain piece)."""

    word: str
    lo: Fraction
    hi: Fraction
    source: str
    analogy: bool
    usual: Fraction


class Part(NamedTuple):
    """What one plain piece of a food parts into: the id of the part and its grams."""

    id: str
    lo: Fraction
    hi: Fraction
    source: str


class Goods(NamedTuple):
    """One food. The head of ``grammar/sources/goods.toml`` explains its keys and their closed lists."""

    id: str
    name: str
    plural: str
    aliases: tuple[str, ...]
    liquid: bool
    show: Show
    states: frozenset[str]
    densities: tuple[Density, ...]
    pieces: tuple[Piece, ...]
    parts: tuple[Part, ...]
    allergens: tuple[str, ...]
    hazard: Hazard
    animal: Animal
    flour: bool
    salt: bool
    leavener: bool
    role: Role
    merchant: str
    water: Fraction | None
    water_source: str
    refuse: Fraction | None
    refuse_source: str
    pack: str
    price: str

    @property
    def wet(self) -> bool:
        """Whether it is a liquid, and no fat: what food boils in."""
        return self.liquid and self.role != "fat"


def amount(text: str) -> Fraction:
    """Return the number of ``"50"`` or ``"50 g"``, or the g/ml of ``"125 g/cup"`` (US measures), exactly."""
    number, slash, unit = text.partition(" g/")
    value = exact(number.removesuffix(" g"))
    return value / MILLILITRES[unit.replace(" ", "_")] if slash else value


def _density(row: Sequence[Any]) -> Density:
    state, lo, hi, usual, source, analogy = row
    return Density(state, amount(lo), amount(hi), source, bool(analogy), amount(usual))


def _piece(row: Sequence[Any]) -> Piece:
    word, lo, hi, usual, source, analogy = row
    return Piece(word, amount(lo), amount(hi), source, bool(analogy), amount(usual))


def _part(row: Sequence[Any]) -> Part:
    id, lo, hi, _, source, _ = row
    return Part(id, amount(lo), amount(hi), source)


def _sourced(raw: Raw, key: str) -> tuple[Fraction | None, str]:
    pair = raw.get(key)
    return (exact(pair[0]), pair[1]) if pair else (None, "")


def whole(items: Mapping[str, Raw], id: str) -> Raw:
    """Return the item of this id; a sort of another food with the facts that it shares with it."""
    item = items[id]
    other = item.get("of")
    if other is None:
        return item
    shared = dict(items[other])
    shared.pop("plural", None)
    shared.pop("aliases", None)
    return shared | dict(item)


def read_goods(raw: Raw, states: frozenset[str]) -> Goods:
    """Return the record of one item of the list; `states` are its states with the groups spelt out."""
    water, water_source = _sourced(raw, "water")
    refuse, refuse_source = _sourced(raw, "refuse")
    return Goods(
        id=raw["id"],
        name=raw["name"],
        plural=raw.get("plural", ""),
        aliases=tuple(raw.get("aliases", ())),
        liquid=raw.get("liquid", False),
        show=raw.get("show", "solid"),
        states=states,
        densities=tuple(map(_density, raw.get("densities", ()))),
        pieces=tuple(map(_piece, raw.get("pieces", ()))),
        parts=tuple(map(_part, raw.get("parts", ()))),
        allergens=tuple(raw.get("allergens", ())),
        hazard=raw.get("hazard", ""),
        animal=raw.get("animal", ""),
        flour=raw.get("flour", False),
        salt=raw.get("salt", False),
        leavener=raw.get("leavener", False),
        role=raw.get("role", ""),
        merchant=raw.get("merchant", ""),
        water=water,
        water_source=water_source,
        refuse=refuse,
        refuse_source=refuse_source,
        pack=raw.get("pack", ""),
        price=raw.get("price", ""),
    )
