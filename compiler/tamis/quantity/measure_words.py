"""The words of a printed measure: its unit, one or several, and what stands between two of them.

They are words of the recipe's language, for a scaled recipe is a cook's text again: `units.toml` and `measures.toml`
in `grammar/words/<language>/`.
"""

from __future__ import annotations

from functools import cache

from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.typed import Literal
from tamis.words import own_names, word_tables

UnitPrefix = Literal["us", "australian", "japanese", "imp"]

# Printed in decimals; all other units in kitchen fractions.
DECIMAL = frozenset({"g", "kg", "mg", "ml", "cl", "dl", "l", "mm", "cm", "metre"})
# Abbreviations stay as they are, however many.
NO_PLURAL = DECIMAL - {"metre"} | {"s", "min", "h", "oz", "lb", "fl_oz", "tsp", "tbsp"}
FIRST_WORDS: dict[UnitPrefix, str] = {"us": "US", "australian": "Australian", "japanese": "Japanese", "imp": "imperial"}


class MeasureWords(NamedTuple):
    """How measures are put together; each says where its parts go: `scant {measure}`."""

    plus: str
    between: str
    scant: str
    generous: str
    about: str
    less: str
    percent: str
    per: str
    per_of: str
    own_weight: str
    flour: str
    weight: str
    weight_s: str


@cache
def measure_words(language: str) -> MeasureWords:
    """The words of a language, read once."""
    return MeasureWords(**word_tables(language, "measures")["measures"])


def unit_words(unit: str, many: bool, language: str) -> str:
    """A unit or count word as printed after a number: "fl oz", "cups", "US tbsp", "bunches"."""
    own = _own_words(language).get(unit)
    if own is not None:
        return own[many]
    first, _, rest = unit.partition("_")
    if rest and first in FIRST_WORDS:
        return f"{FIRST_WORDS[first]} {unit_words(rest, many, language)}"
    words = unit.replace("_", " ")
    return nouns(language).plural(words) if many and unit not in NO_PLURAL and rest not in NO_PLURAL else words


@cache
def _own_words(language: str) -> dict[str, tuple[str, str]]:
    """What a language calls units and count words, one and several, where its words are not those of the data."""
    units, equipment = own_names(language, "units"), own_names(language, "equipment")
    words = {}
    for unit, text in units.get("names", {}).items():
        one = text.partition(", ")[0]
        words[unit] = one, units.get("plurals", {}).get(one, one)
    for count, text in equipment.get("counts", {}).items():
        one = text.partition(", ")[0]
        words[count] = one, equipment.get("plurals", {}).get(one) or nouns(language).plural(one)
    return words
