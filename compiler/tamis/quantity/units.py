"""Units as a cook spells them.

"1 Tbsp", "1 tablespoon" and "1 tbs." are one thing, "1 T" is a guess, and what a cup holds depends on the
house. So every spelling leads to one `Unit` with an exact worth, ambiguous letters lead nowhere (but `near`
knows what was probably meant), and a house's choice of cup and spoons is made once, when the units are
loaded.

All data comes from grammar/units.json, which make_units writes.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import cache

from tamis.assets import asset_text, json_of
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import word_lists, word_tables

if TYPE_CHECKING:
    from tamis.quantity.near import Known

UnitKind = Literal["mass", "volume", "time", "length", "temperature", "nominal"]
System = Literal["metric", "us", "imperial", ""]
Cup = Literal["us", "metric", "label", "imperial", "japanese"]
SpoonSet = Literal["us", "metric", "label", "imperial", "australian"]

# What "cup" can mean in a house, and which spoons stand beside that cup if the house does not say.
CUPS: dict[Cup, tuple[str, SpoonSet]] = {
    "us": ("us_cup", "us"),
    "metric": ("metric_cup", "metric"),
    "label": ("label_cup", "label"),
    "imperial": ("imp_cup", "imperial"),
    "japanese": ("japanese_cup", "metric"),
}
# What "tbsp" can mean, and the teaspoon that belongs to it.
SPOONS: dict[SpoonSet, tuple[str, str]] = {
    "us": ("us_tbsp", "us_tsp"),
    "metric": ("metric_tbsp", "metric_tsp"),
    "label": ("label_tbsp", "label_tsp"),
    "imperial": ("imp_tbsp", "imp_tsp"),
    "australian": ("australian_tbsp", "metric_tsp"),
}


class Unit(NamedTuple):
    """One unit of measure.

    `kind` is mass, volume, time, length, temperature or nominal (no standard size); `factor` is its exact
    worth in g, ml, s, mm or kelvin (1 and without meaning for nominal); `system` is metric, us, imperial
    or "".
    """

    id: str
    kind: UnitKind
    factor: Fraction
    system: System


class Units:
    """The units of one house: every spelling, exact factors, and what `cup`, `tbsp` and `tsp` mean here.

    `unclear` are letters that are no unit because they could be two, with the long form of what was probably meant.
    """

    __slots__ = ("_by_id", "_by_name", "_known", "_misspelt", "language", "unclear")

    def __init__(self, by_id: dict[str, Unit], by_name: dict[str, str], language: str) -> None:
        self.language = language
        self.unclear = word_tables(language, "units")["unclear"]
        self._by_id = by_id
        self._by_name = by_name
        self._known: Known | None = None
        self._misspelt: dict[str, str] | None = None

    @classmethod
    def load(cls, text: str, language: str, cup: Cup = "us", tbsp: SpoonSet | Literal[""] = "") -> Units:
        """Read the text of units.json. A language may have names of its own for a unit instead of those there.

        `cup` is a key of CUPS; `tbsp` a key of SPOONS, or "" for the spoons that stand beside the cup. Raises
        KeyError for another choice: whoever reads the house's settings checks it against those first.
        """
        own: Mapping[str, Sequence[str]] = word_lists(language, "units").get("names", {})
        by_id: dict[str, Unit] = {}
        by_name: dict[str, str] = {}
        for row in json_of(text):
            top, _, bottom = row["factor"].partition("/")
            unit = Unit(row["id"], row["kind"], Fraction(int(top), int(bottom)), row["system"])
            by_id[unit.id] = unit
            for name in own.get(unit.id, row["names"]):
                by_name[name] = unit.id
        chosen_cup, beside = CUPS[cup]
        chosen = (chosen_cup, *SPOONS[tbsp or beside])
        for plain, exact in zip(("cup", "tbsp", "tsp"), chosen, strict=True):
            by_id[plain] = by_id[exact]._replace(id=plain)
        return cls(by_id, by_name, language)

    @property
    def spellings(self) -> dict[str, str]:
        """Every spelling, each with the id of its unit."""
        return self._by_name

    def get(self, name: str) -> Unit | None:
        """The unit of an id or a spelling, or None. Full stops and doubled spaces do not matter."""
        found = self._by_id.get(name)
        if found is None:
            found = self._by_id.get(self._by_name.get(_tidy(name), ""))
        return found

    def near(self, name: str) -> str | None:
        """The spelling that was probably meant by one that is no unit, or None if nothing is near.

        An ambiguous letter gives its long form; then come the usual slips, and the nearest spelling, if at most a third
        of it differs.
        """
        from tamis.quantity.near import Known, nearest

        if name in self.unclear:
            return self.unclear[name]
        if slip := self.misspelt(name):
            return slip
        if self._known is None:
            self._known = Known(self._by_name)
        return nearest(_tidy(name), self._known)

    def misspelt(self, name: str) -> str | None:
        """The unit that is meant by a usual slip (gr, tps) or by a sign that is no unit here (′)."""
        if self._misspelt is None:
            lists: Mapping[str, Sequence[str]] = word_lists(self.language, "units").get("misspelt", {})
            self._misspelt = {slip: unit for unit, slips in lists.items() for slip in slips}
        return self._misspelt.get(_tidy(name.translate(_PRIMES)).lower())

    def names(self, kind: str = "") -> list[str]:
        """All spellings of a kind ("" for every kind), longest first, equal lengths by the alphabet."""
        names = [name for name, unit in self._by_name.items() if not kind or self._by_id[unit].kind == kind]
        return sorted(names, key=lambda name: (-len(name), name))

    def pattern(self, kind: str = "") -> str:
        """A regular expression for the spellings of a kind, with the same rules on case as `get`.

        It captures no group and does not look at what stands around it.
        """
        names = self.names(kind)
        long = "|".join(_escaped(name) for name in names if len(name) > 1)
        short = "|".join(name for name in names if len(name) == 1)
        return f"(?:(?i:{long})|{short})" if short else f"(?i:{long})"


def shipped(language: str, cup: Cup = "us", tbsp: SpoonSet | Literal[""] = "") -> Units:
    """The units that ship with the compiler, in the words of a language and for a house's cup and spoons: one object
    for each choice, whether it was named or not."""
    return _shipped(language, cup, tbsp)


@cache
def _shipped(language: str, cup: Cup, tbsp: SpoonSet | Literal[""]) -> Units:
    return Units.load(asset_text("grammar/units.json"), language, cup, tbsp)


# The signs that stand for minutes and seconds, as they are typed.
_PRIMES = str.maketrans({"'": "′", "’": "′", '"': "″", "”": "″"})


def _escaped(name: str) -> str:
    return re.escape(name).replace(r"\ ", r"\.?[ \t\u00a0]+")


def _tidy(name: str) -> str:
    words = " ".join(name.replace(".", " ").split())
    return words if len(words) < 2 else words.lower()
