"""What stands in a kitchen, found at the end of a phrase.

`with 2 forks` and `with 2 eggs` differ in one noun, so the nouns of the kitchen are a list: `equipment.toml`
in `grammar/`. A cook describes pieces freely (*a heavy 3-litre pan*, *a well-greased loaf tin*), so only the
noun at the end must be known; the words before it are adjectives. The longest noun wins: a mixer bowl is no
bowl.

The same list knows the trade's counts (clove, sprig, can), which are units between a number and a name.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any, Literal

from tamis.kitchen.seconds import seconds
from tamis.quantity.near import Known, nearest
from tamis.record import NamedTuple
from tamis.string_tables import tables

Station = Literal["oven", "grill", "ring", "mixer", "fridge", "freezer", "bath", ""]
EquipmentKind = Literal["vessel", "tool", "surface", "lining", "lid", "station"]

_LONGEST = 4
"""Words in the longest name of the list; a test holds the two together."""


class Equipment(NamedTuple):
    """A piece of equipment, under the name that the equipment list shows."""

    name: str
    kind: EquipmentKind
    plural: str = ""
    station: Station = ""
    """Where it is heated, cooled or driven, or the station that it is; empty for none."""
    count_unit: bool = False
    """Also one of the counts: a unit after a number and before a name (`1 jar passata`)."""
    heats: int = 0
    """Longer heating of the oven with it inside, in seconds; common practice."""
    part_of: str = ""
    """The piece that it comes with, and so isn't listed apart."""
    general: bool = False
    """With *the* it may be any vessel that goes to the same place: *the pot* of a casserole."""
    round: bool = False
    """Round unless the recipe says something else; common practice."""


class FoundEquipment(NamedTuple):
    """A piece as a cook named it: with the words before the noun, and as one or several."""

    item: Equipment
    adjectives: tuple[str, ...]
    several: bool


class Cupboard:
    """All the equipment and the count words, found by name in singular or plural."""

    __slots__ = ("_by_name", "_counts", "_holders", "_known", "_tins")

    def __init__(self) -> None:
        self._by_name: dict[str, tuple[Equipment, bool]] = {}
        self._counts: dict[str, str] = {}
        self._tins: tuple[str, ...] = ()
        self._holders: frozenset[str] = frozenset()
        self._known: Known | None = None

    @classmethod
    def load(cls, text: str) -> Cupboard:
        """Equipment from the text of `equipment.toml`. It ships with the compiler: a fault in it raises."""
        said = tables(text)
        cupboard = cls()
        cupboard._add_counts(said.pop("counts", {}), said.pop("plurals", {}))
        for kind, table in said.items():
            for name, facts in table.items():
                cupboard._add(name, kind, facts)
        return cupboard

    def _add_counts(self, groups: dict[str, str], odd: dict[str, str]) -> None:
        self._tins = tuple(groups.get("tins", "").split(", "))
        self._holders = frozenset(", ".join(groups.get(name, "") for name in ("blocks", "packs", "tins")).split(", "))
        for words in groups.values():
            for word in words.split(", "):
                self._counts[word] = self._counts[odd.get(word) or plural(word)] = word

    def _add(self, name: str, kind: Any, text: str) -> None:
        facts: dict[str, Any] = dict(fact.partition(" ")[::2] for fact in text.split(", ") if fact)
        others = facts.pop("also", "")
        item = Equipment(
            name,
            kind,
            facts.pop("plural", "") or plural(name),
            facts.pop("station", ""),
            name in self._counts,
            seconds(facts.pop("heats", "0 s")),
            facts.pop("part_of", ""),
            "general" in facts,
            facts.pop("round", None) is not None,
        )
        facts.pop("general", None)
        if facts:
            raise ValueError(f"{name!r} has facts that nobody knows: {', '.join(facts)}")
        self._put(name, item.plural, item)
        for other in others.split(" or ") if others else ():
            self._put(other, plural(other), item)

    def _put(self, one: str, many: str, item: Equipment) -> None:
        if one in self._by_name:
            raise ValueError(f"the equipment {one!r} stands twice")
        self._by_name[many] = (item, True)
        self._by_name[one] = (item, False)

    def __iter__(self) -> Iterator[Equipment]:
        """Each piece once, in the order of the file."""
        return iter(dict.fromkeys(item for item, _ in self._by_name.values()))

    def get(self, name: str) -> Equipment | None:
        """The piece of this name, singular or plural, without adjectives."""
        found = self._by_name.get(name)
        return found[0] if found else None

    def find(self, words: Sequence[str]) -> FoundEquipment | None:
        """The piece that the last words name, by the longest noun; the words before it are adjectives."""
        plain = [word.lower().replace("’", "'") for word in words]
        for start in range(max(0, len(plain) - _LONGEST), len(plain)):
            found = self._by_name.get(" ".join(plain[start:]))
            if found:
                return FoundEquipment(found[0], tuple(plain[:start]), found[1])
        return None

    def near(self, name: str) -> str | None:
        """The name that a misspelt one may have meant, or None."""
        if self._known is None:
            self._known = Known(self._by_name)
        return nearest(name.lower(), self._known)

    def count_word(self, word: str) -> str | None:
        """The singular of one of the trade's count words, or None: `cloves` gives `clove`."""
        return self._counts.get(word)

    def holds(self, word: str) -> bool:
        """Whether a count word (singular) after a weight is what that much food is sold as: `200 g block feta`."""
        return word in self._holders

    def is_tin(self, word: str) -> bool:
        """Whether a count word (singular) is what preserved food is sold in: a tin, a jar."""
        return word in self._tins


def plural(noun: str) -> str:
    """The plural of a regular noun or phrase: `dish` gives `dishes`."""
    if noun.endswith(("s", "x", "z", "ch", "sh")):
        return noun + "es"
    if noun.endswith("y") and noun[-2] not in "aeiou":
        return noun[:-1] + "ies"
    return noun + "s"
