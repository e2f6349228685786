"""What stands in a kitchen, found at the end of a phrase.

`with 2 forks` and `with 2 eggs` differ in one noun, so the nouns of the kitchen are a list: `equipment.toml`
in `grammar/`. A cook describes pieces freely (*a heavy 3-litre pan*, *a well-greased loaf tin*), so only the
noun at the end must be known; the words before it are adjectives. The longest noun wins: a mixer bowl is no
bowl.

The same list knows the trade's counts (clove, sprig, can), which are units between a number and a name. What is read
at a start is `grammar/saved/<language>/equipment.txt`, which make_equipment makes; a piece becomes an `Equipment` when
it is first asked for.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from tamis.patterns import pattern
from tamis.quantity.nouns import Where, nouns
from tamis.record import NamedTuple
from tamis.saved import Saved, facts, saved
from tamis.typed import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    from tamis.quantity.near import Known

Station = Literal["oven", "grill", "ring", "mixer", "fridge", "freezer", "bath", ""]
EquipmentKind = Literal["vessel", "tool", "surface", "lining", "lid", "station"]
MADE_READY: tuple[EquipmentKind, ...] = ("vessel", "surface", "lining")
"""What is greased, lined or dusted before food comes into it or on to it."""
HOLDS: tuple[EquipmentKind, ...] = ("vessel", "surface")
"""What food lies in or on."""
COLD: tuple[Station, ...] = ("fridge", "freezer")
"""Where food is kept cold."""

# What a kitchen keeps of phrases that were asked for: enough for a library.
_MOST_KEPT = 20_000
WORDS = pattern(r"[^\W\d_]+")
"""Letters in a row: by the first of a name it is looked for in a text."""
LONGEST = 4
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
    grows: bool = False
    """More food takes more of them: what food is baked, set or served in, and what is used by the piece."""
    oven_holds: int = 0
    """So many go into a domestic oven at once; common practice. 0 where nobody says."""


class FoundEquipment(NamedTuple):
    """A piece as a cook named it: with the words before the noun, and as one or several."""

    item: Equipment
    adjectives: tuple[str, ...]
    several: bool


class Cupboard:
    """All the equipment and the count words, found by name in singular or plural."""

    __slots__ = (
        "_counts", "_facts", "_find", "_heads", "_holders", "_known", "_made", "_names", "_orders", "_rows", "_several",
        "_tins",
    )  # fmt: skip

    def __init__(self, rows: Saved, language: str) -> None:
        self._orders: tuple[Where, ...] = nouns(language).orders
        self._rows = rows
        self._names = rows.names("names")
        """The id of the piece of each name, singular and plural."""
        self._counts = rows.names("counts")
        """The singular of each of the trade's count words, singular and plural."""
        self._facts = rows.names("facts")
        self._several = rows.names("several")
        self._holders = frozenset(rows.row("holders"))
        self._tins = frozenset(rows.row("tins"))
        self._heads: frozenset[str] | None = None
        self._made: dict[str, Equipment] = {}
        self._known: Known | None = None
        self._find = lru_cache(_MOST_KEPT)(self._find_asked)

    @classmethod
    def load(cls, language: str) -> Cupboard:
        """The equipment in the words of a language."""
        return cls(saved(language, "equipment"), language)

    def __iter__(self) -> Iterator[Equipment]:
        """Each piece once, in the order of the file."""
        return map(self._piece, dict.fromkeys(map(self._names.__getitem__, self.names)))

    def of_id(self, id: str) -> Equipment | None:
        """The piece that the data call so, whatever a cook calls it."""
        return self._piece(id) if id in self._facts else None

    def get(self, name: str) -> Equipment | None:
        """The piece of this name, singular or plural, without adjectives."""
        id = self._names.get(name)
        return None if id is None else self._piece(id)

    def find(self, words: Sequence[str]) -> FoundEquipment | None:
        """The piece that the last words name (in some languages the first), by the longest noun; the others are
        adjectives."""
        return self._find(tuple(words))

    def _find_asked(self, words: tuple[str, ...]) -> FoundEquipment | None:
        plain = [word.lower().replace("’", "'") for word in words]
        for order in self._orders:
            for size in range(min(LONGEST, len(plain)), 0, -1):
                found = self._at(plain, len(plain) - size if order == "before" else 0, size)
                if found is not None:
                    return found
        if len(self._orders) > 1:  # with adjectives on both sides: *grand saladier froid*
            for size in range(min(LONGEST, len(plain) - 2), 0, -1):
                for at in range(1, len(plain) - size):
                    found = self._at(plain, at, size)
                    if found is not None:
                        return found
        return None

    def _at(self, plain: Sequence[str], at: int, size: int) -> FoundEquipment | None:
        """The piece that so many words at a place name."""
        name = " ".join(plain[at : at + size])
        id = self._names.get(name)
        if id is None:
            return None
        return FoundEquipment(self._piece(id), (*plain[:at], *plain[at + size :]), name in self._several)

    def near(self, name: str) -> str | None:
        """The name that a misspelt one may have meant, or None."""
        from tamis.quantity.near import Known, nearest

        if self._known is None:
            self._known = Known(self.names)
        return nearest(name.lower(), self._known)

    def count_word(self, word: str) -> str | None:
        """The singular of one of the trade's count words, or None: `cloves` gives `clove`."""
        return self._counts.get(word)

    @property
    def names(self) -> list[str]:
        """The names of the pieces, singular and plural, in the order of the file."""
        return self._rows.row("in order")

    @property
    def counts(self) -> list[str]:
        """The count words, singular and plural, in the order of the file."""
        return self._rows.row("counts in order")

    def holds(self, word: str) -> bool:
        """Whether a count word (singular) after a weight is what that much food is sold as: `200 g block feta`."""
        return word in self._holders

    def is_tin(self, word: str) -> bool:
        """Whether a count word (singular) is what preserved food is sold in: a tin, a jar."""
        return word in self._tins

    def may_be_in(self, text: str) -> bool:
        """Whether a word stands in the text that begins the name of a piece; if none does, no piece is named there."""
        if self._heads is None:
            self._heads = frozenset(self._rows.row("heads"))
        return not self._heads.isdisjoint(WORDS.findall(text.lower()))

    def _piece(self, id: str) -> Equipment:
        made = self._made.get(id)
        if made is None:
            said: dict[str, Any] = facts(self._facts[id])
            made = self._made[id] = Equipment(id, **said)
        return made
