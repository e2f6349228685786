"""Words between a number and a name that are no unit, but nearly one: `1 T oil`, `2 tbps sugar`."""

from __future__ import annotations

from tamis.diagnostics import Fix
from tamis.reading.clause import leaves
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.clause import Node, Reading
    from tamis.reading.food import Parts

_SHORTEST = 3


def check_units(reading: Reading, parts: Parts) -> None:
    """Raise for a letter that is no unit, and for a misspelt unit before a food that is known."""
    if not any(leaf[0] in ("NUMBER", "NUMWORD", "MISWRITTEN") for leaf in leaves(parts.measure)):
        return
    words = list(leaves(parts.name))
    if len(words) < 2 or words[0][0] not in ("WORD", "INTO", "PREP"):
        return
    first = words[0]
    span = Span(reading.inner + first[2], reading.inner + first[3])
    long_form = reading.kitchen.units.unclear.get(first[1])
    if long_form:
        fix = Fix(span, long_form, f"write `{long_form}`") if first[1] in ("T", "t") else None
        raise reading.fail(
            "unit-unclear", span, f"“{first[1]}” alone is no unit", f"write `{long_form}` if that is meant", fix
        )
    near = _meant(reading, words)
    if near:
        fix = Fix(span, near, f"write `{near}`")
        raise reading.fail("unit-unknown", span, f"no unit is called “{first[1]}”", f"did you mean `{near}`?", fix)


def _meant(reading: Reading, words: list[Node]) -> str:
    """The unit that a word is spelt nearly like; "" if it is nothing of the kind."""
    kitchen, word = reading.kitchen, words[0][1].lower()
    if len(word) < _SHORTEST or word in reading.words.how:
        return ""
    rest = reading.keys([leaf for leaf in words[1:] if leaf[0] != "OF"])
    if not kitchen.larder.find(rest) or kitchen.larder.find((word, *rest)) or kitchen.cupboard.find((word, *rest)):
        return ""
    return unit_meant(reading, word)


def unit_meant(reading: Reading, word: str) -> str:
    """The unit that a misspelt word is near to, as cooks write it; "" if none is."""
    near = reading.kitchen.units.near(word) or ""
    unit = reading.kitchen.units.get(near)
    if unit is None or unit.kind not in ("mass", "volume", "nominal"):
        return ""
    return unit.id if unit.id.isalpha() else near
