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
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.string_tables import tables
from tamis.words import own_names

Station = Literal["oven", "grill", "ring", "mixer", "fridge", "freezer", "bath", ""]
EquipmentKind = Literal["vessel", "tool", "surface", "lining", "lid", "station"]

_LONGEST = 4
"""Words in the longest name of the list; a test holds the two together."""


class Equipment(NamedTuple):
    """A piece of equipment: by what the data call it, and under the name that the equipment list shows."""

    id: str
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
    """All the equipment and the count words, found by name in singular or plural.

    The names are those of the file, which are English and the ids, or those of `words/<language>/equipment.toml`.
    """

    __slots__ = ("_by_id", "_by_name", "_count_ids", "_counts", "_holders", "_known", "_names", "_nouns", "_tins")

    def __init__(self, language: str = "en") -> None:
        self._nouns = nouns(language)
        self._names = own_names(language, "equipment")
        self._by_id: dict[str, Equipment] = {}
        self._by_name: dict[str, tuple[Equipment, bool]] = {}
        self._counts: dict[str, str] = {}
        self._count_ids: frozenset[str] = frozenset()
        self._tins: tuple[str, ...] = ()
        self._holders: frozenset[str] = frozenset()
        self._known: Known | None = None

    @classmethod
    def load(cls, text: str, language: str = "en") -> Cupboard:
        """Equipment from the text of `equipment.toml`. It ships with the compiler: a fault in it raises."""
        said = tables(text)
        cupboard = cls(language)
        cupboard._add_counts(said.pop("counts", {}))
        for kind, table in said.items():
            for name, facts in table.items():
                cupboard._add(name, kind, facts)
        return cupboard

    def _add_counts(self, groups: dict[str, str]) -> None:
        blocks, packs, tins = (tuple(groups.get(name, "").split(", ")) for name in ("blocks", "packs", "tins"))
        self._tins = tins
        self._holders = frozenset((*blocks, *packs, *tins))
        own = self._names.get("counts")
        self._count_ids = frozenset(", ".join(groups.values()).split(", "))
        for word in ", ".join(groups.values()).split(", "):
            for name in _listed(own.get(word, "")) if own is not None else (word,):
                self._counts[name] = self._counts[self._several(name)] = word

    def _add(self, id: str, kind: Any, text: str) -> None:
        facts: dict[str, Any] = dict(fact.partition(" ")[::2] for fact in text.split(", ") if fact)
        names = (id, *_listed(facts.pop("also", ""), " / "))
        plural = facts.pop("plural", "")
        own = self._names.get("names")
        if own is not None:
            names, plural = _listed(own.get(id, "")), ""
        name = names[0] if names else id
        item = Equipment(
            id=id,
            name=name,
            kind=kind,
            plural=plural or self._several(name),
            station=facts.pop("station", ""),
            count_unit=id in self._count_ids,
            heats=seconds(facts.pop("heats", "0 s")),
            part_of=facts.pop("part_of", ""),
            general=facts.pop("general", None) is not None,
            round=facts.pop("round", None) is not None,
        )
        if facts:
            raise ValueError(f"{id!r} has facts that nobody knows: {', '.join(facts)}")
        self._by_id[id] = item
        for name in names:
            self._put(name, self._several(name) if name != item.name else item.plural, item)

    def _several(self, name: str) -> str:
        return self._names.get("plurals", {}).get(name) or self._nouns.plural(name)

    def _put(self, one: str, many: str, item: Equipment) -> None:
        if one in self._by_name:
            raise ValueError(f"the equipment {one!r} stands twice")
        self._by_name[many] = (item, True)
        self._by_name[one] = (item, False)

    def __iter__(self) -> Iterator[Equipment]:
        """Each piece once, in the order of the file."""
        return iter(dict.fromkeys(item for item, _ in self._by_name.values()))

    def of_id(self, id: str) -> Equipment | None:
        """The piece that the data call so, whatever a cook calls it."""
        return self._by_id.get(id)

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


def _listed(text: str, between: str = ", ") -> tuple[str, ...]:
    return tuple(text.split(between)) if text else ()
