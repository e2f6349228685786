"""Clauses as most are: `200 g flour, sifted`, `bake for 20–25 min at 180 °C`, `until golden`, `in a 24 cm round tin`.

What is read here in a few steps the readers of each role would read in many; a test holds the two to the same record.
"""

from __future__ import annotations

from tamis.reading.clause import end_of, leaves, start_of
from tamis.reading.clauses import Cue, Ingredient, Setting, Time, Tool
from tamis.reading.durations import seconds_of
from tamis.reading.measured import may_be_unit
from tamis.reading.quantities import amount, measures
from tamis.reading.soundness import LENGTHS
from tamis.reading.temperatures import scales
from tamis.record import made
from tamis.source import NOWHERE, Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, NodeKind, Reading


def usual_food(reading: Reading, children: Sequence[Node]) -> Ingredient | None:
    """A weight, a known name and perhaps free words; None for any other ingredient clause."""
    if len(children) not in (2, 4):
        return None
    weighed, name = children[0], children[1]
    if weighed[0] != "weighed" or len(weighed[1]) != 1 or name[0] != "food":
        return None
    words = leaves(name[1])
    first = words[0]
    found = reading.kitchen.larder.find(reading.keys(words))
    if found is None or found.piece_word or may_be_unit(reading, first, len(words) == 1):
        return None
    preparation = ""
    prepared: tuple[Span, ...] = ()
    if len(children) == 4:
        if not _is_free(children[2], children[3]):
            return None
        preparation, span = _said(reading, start_of(children[3]), end_of(children[3]))
        prepared = (span,)
    weight = weighed[1][0]
    called, name_span = _said(reading, first[2], words[-1][3])
    measure, measure_span = _said(reading, start_of(weight), end_of(weight))
    return Ingredient(
        reading.clause,
        called,
        name_span,
        found.goods,
        found.states,
        "",
        measures(reading, weight),
        measure,
        preparation=preparation,
        measure_span=measure_span,
        preparation_spans=prepared,
    )


def _said(reading: Reading, start: int, end: int) -> tuple[str, Span]:
    """The words at a place of the clause, and where they stand in the file."""
    inner = reading.inner
    return reading.text[start:end], made(Span, (inner + start, inner + end))


def _is_free(comma: Node, preparation: Node) -> bool:
    """Whether these are a comma and words with no number or time among them."""
    if comma[0] != "COMMA" or preparation[0] != "preparation" or len(preparation[1]) != 1:
        return False
    text = preparation[1][0]
    if text[0] != "said":
        return False
    return not any([part[1].__class__ is list or part[0] in LENGTHS for part in text[1]])


def usual_time(reading: Reading, children: Sequence[Node]) -> Time | None:
    """A verb of one word, a number or a range in one unit of time, perhaps a temperature; None for any other time."""
    verb, said, at = None, "", 0
    if children[0][0] == "verb":
        words = children[0][1]
        verb = reading.kitchen.verbs.get(words[0][1].lower()) if len(words) == 1 else None
        if verb is None or verb.lets:
            return None
        said, at = words[0][1], 1
    if children[at][0] == "FOR":
        at += 1
    length, rest = children[at], children[at + 1 :]
    if length[0] != "duration" or (rest and (len(rest) > 2 or rest[0][0] != "AT" or rest[1][0] != "scales")):
        return None
    duration = seconds_of(reading, length)
    if duration is None:
        return None
    setting = None
    if rest:
        where = reading.span(rest[1:])
        heat = scales(reading, rest[1])
        setting = Setting(reading.clause, "temperature", *heat, text=reading.text, degrees_span=where)
    return Time(reading.clause, duration, verb, said, setting=setting, text=reading.text)


def usual_cue(reading: Reading, children: Sequence[Node]) -> Cue | None:
    """`until` and words with no number among them; None for any other cue."""
    if len(children) != 2 or children[1][0] != "sight":
        return None
    words = children[1][1]
    if any([word[1].__class__ is list for word in words]):
        return None
    return Cue(reading.clause, reading.text[start_of(children[0]) : words[-1][3]])


def usual_tool(reading: Reading, children: Sequence[Node]) -> Tool | None:
    """One piece with its size and adjectives, `in a 24 cm round tin`; None for any other equipment."""
    if len(children) != 3 or children[0][0] != "PREP" or children[2][0] != "tool":
        return None
    before, name = children[1], children[2]
    size = _size(reading, before) if before[0] == "sized" else None
    words = leaves(name[1])
    if size is None or words[0][1] in reading.words.lengths or any([word[0] in _NUMBERED for word in words]):
        return None
    found = reading.kitchen.cupboard.find(reading.keys(name[1]))
    if found is None:
        return None
    said = reading.text[words[0][2] : words[-1][3]]
    names = said.lower().split() if found.adjectives else ()
    return Tool(
        reading.clause,
        said,
        found.item,
        tuple([word for word in found.adjectives if word in names]),
        size=size[0],
        preposition=children[0][1].lower(),
        size_span=size[1],
    )


_NUMBERED: frozenset[NodeKind] = frozenset(("NUMBER", "ADJCOMMA"))
"""What words that describe a piece may hold and make more of than a name: `a wide, heavy pan`, `a 3-litre pan`."""


def _size(reading: Reading, sized: Node) -> tuple[str, Span] | None:
    """What *a 24 cm* says of the size, and where; None where several are counted, or more is said."""
    counted, *more = sized[1]
    if counted[0] != "counted" or len(counted[1]) != 1 or counted[1][0][0] != "ARTICLE":
        return None
    if not more:
        return "", NOWHERE
    length = more[0][1][0] if more[0][0] == "size" and len(more[0][1]) == 1 else None
    if len(more) > 1 or length is None or length[0] != "length":
        return None
    amount(reading, length[1][0])
    return _said(reading, start_of(length), end_of(length))
