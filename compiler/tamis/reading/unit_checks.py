"""Words between a number and a name that are no unit, but nearly one: `1 T oil`, `2 tbps sugar`."""

from __future__ import annotations

from tamis.diagnostics import Fix
from tamis.patterns import pattern
from tamis.reading.clause import Unreadable, leaves
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.clause import Node, Reading
    from tamis.reading.food_parts import Parts

_SHORTEST = 3
_LONG = 8
"""Letters of a word in which two slips are likely."""
_CLOCK = pattern(r"([^\W\d_]+)(\d+)")


def check_units(reading: Reading, parts: Parts) -> None:
    """Raise for a letter that is no unit, and for a misspelt unit before a food that is known: of a name that is not
    known as a whole."""
    if not any(leaf[0] in ("NUMBER", "NUMWORD", "MISWRITTEN") for leaf in leaves(parts.measure)):
        return
    words = leaves(parts.name)
    if words:
        _check_slip(reading, parts, words)
    if not words or words[0][0] not in ("WORD", "COUNT", "INTO", "PREP"):
        return
    first = words[0]
    if first[1] in reading.words.lengths and words[-1][1].lower().split(" ")[-1] in reading.words.by_length:
        return
    span = Span(reading.inner + first[2], reading.inner + first[3])
    long_form = reading.kitchen.units.unclear.get(first[1])
    if long_form:
        fix = Fix(span, long_form, f"write `{long_form}`") if first[1] in ("T", "t") else None
        raise reading.fail(
            "unit-unclear", span, f"“{first[1]}” is not clear as a unit", f"write `{long_form}` if that is meant", fix
        )
    near = _meant(reading, words) if len(words) > 1 and first[0] != "COUNT" else ""
    if near:
        raise misspelt(reading, span, first[1], near)


def _check_slip(reading: Reading, parts: Parts, words: list[Node]) -> None:
    """Raise for a usual slip, of one word or of two: `500 gr onions`, `3 table spoons oil`."""
    number = [leaf for leaf in leaves(parts.measure) if leaf[0] == "NUMBER"]
    if number:
        whole = Span(reading.inner + number[-1][2], reading.inner + words[0][3])
        if found := clock(reading, number[-1][1].strip(), words[0][1], whole):
            raise found
    words = words[int(len(words) > 1 and words[0][1].lower() in reading.words.how) :]
    for size in (2, 1):
        first, last = words[0], words[min(size, len(words)) - 1]
        said = reading.text[first[2] : last[3]]
        meant = reading.kitchen.units.misspelt(said)
        if meant and not reading.kitchen.larder.find(reading.keys(words)):
            span = Span(reading.inner + first[2], reading.inner + last[3])
            raise misspelt(reading, span, said, meant)


def clock(reading: Reading, hours: str, rest: str, span: Span) -> Unreadable | None:
    """What is said of `1h30`: hours and minutes written without their spaces."""
    found = None if rest.isalpha() else _CLOCK.match(rest)
    unit = reading.kitchen.units.get(found[1]) if found else None
    if found is None or unit is None or unit.kind != "time":
        return None
    written = f"{hours} {found[1]} {found[2]} min"
    fix = Fix(span, written, f"write `{written}`")
    return reading.fail(
        "unit-unknown", span, f"“{hours}{rest}” is not a time that can be read", f"write `{written}`", fix
    )


def misspelt(reading: Reading, span: Span, said: str, meant: str) -> Unreadable:
    """What is said of a misspelt unit."""
    fix = Fix(span, meant, f"write `{meant}`")
    return reading.fail("unit-unknown", span, f"no unit is called “{said}”", f"did you mean `{meant}`?", fix)


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
    from tamis.quantity.near import distance

    near = reading.kitchen.units.near(word) or ""
    unit = reading.kitchen.units.get(near)
    if unit is None or unit.kind not in ("mass", "volume", "nominal"):
        return ""
    slips = 1 + (len(word) >= _LONG)
    if not reading.kitchen.units.misspelt(word) and distance(word, near, slips) > slips:  # layers are no liters
        return ""
    return unit.id if unit.id.isalpha() else near
