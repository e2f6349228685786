"""An ingredient clause taken apart: what stands before the measure, the measure, the name, and what follows."""

from __future__ import annotations

from tamis.reading.clause import child
from tamis.reading.clauses import Share
from tamis.reading.measured import MEASURES, NAMES, read_measure
from tamis.reading.quantities import as_one, one_number
from tamis.record import NamedTuple, made
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading

PREPOSITIONS = frozenset(("PREP", "INTO", "ONHEAT"))


class Parts(NamedTuple):
    """An ingredient clause taken apart; nodes as they stand."""

    preposition: str
    part: str
    share: Share | None
    measure: tuple[Node, ...]
    percent: Node | None
    name: tuple[Node, ...]
    tail: tuple[Node, ...]
    definite: bool


def parts_of(reading: Reading, children: Sequence[Node]) -> Parts:
    """The parts of an ingredient or an unmeasured food."""
    at, end = 0, len(children)
    preposition = part = ""
    share = percent = None
    definite = False
    if children[0][0] in PREPOSITIONS:
        preposition = children[0][1].lower()
        at = 1
    if children[at][0] == "OFTHE":  # some of a food
        at += 1
    taken = next((n for n in range(at, end) if children[n][0] in ("PART", "PARTTHE")), -1)
    if taken >= 0:
        part, definite = _part(reading, children[at : taken + 1]), children[taken][0] == "PARTTHE"
        at = taken + 1
        if at < end and children[at][0] == "THE":
            definite = True
            at += 1
    elif children[at][0] == "share":
        share = _share(reading, children[at])
        at += 1
    elif children[at][0] == "percent":
        percent = children[at]
        at += 1
    first = at
    while at < end and (children[at][0] in MEASURES or (children[at][0] == "OF" and at > first)):
        at += 1
    measure = tuple(children[first:at])
    first, last_name = at, at - 1
    for n in range(at, end):
        kind = children[n][0]
        if kind in NAMES or kind == "VERBFOOD":
            last_name = n
        elif kind not in ("bracket", "OF"):  # what may stand between two names
            break
    name, tail = tuple(children[first : last_name + 1]), tuple(children[last_name + 1 :])
    strength = child(tail, "strength") if tail and percent is None and not measure else None
    if strength is not None:
        percent, at = strength, tail.index(strength)
        tail = (*tail[: at - 1], *tail[at + 1 :])
    return made(Parts, (preposition, part, share, measure, percent, name, tail, definite))


def _part(reading: Reading, nodes: Sequence[Node]) -> str:
    """`juice of`, `the zest and juice of`, `the beaten whites of`: what is taken off the food."""
    small = reading.words.the | reading.words.of | reading.words.of_the
    return " ".join(word for word in reading.said(nodes).lower().split() if word not in small)


def _share(reading: Reading, node: Node) -> Share:
    """`half of`, `two thirds of`, `3 tbsp of`, before a measure."""
    weighed = child(node[1], "weighed")
    if weighed is not None:
        said = read_measure(reading, [weighed])
        return Share("measure", measure=as_one(reading, said.measures))
    if child(node[1], "SOME") is not None:
        message = f"“{reading.said([node])}” a measure: how much of it goes in here?"
        hint = "write how much: `half of`, `100 g of` …"
        raise reading.fail("number-unclear", reading.span([node]), message, hint)
    number, part = child(node[1], "count"), child(node[1], "FRACTION")
    assert part is not None
    value = reading.words.fractions[part[1].lower()]
    if number:
        value *= one_number(reading, number)
    return Share("fraction", value)


def is_manner(reading: Reading, name: Sequence[Node]) -> bool:
    """Whether a name is of the cook or of a place in the work: `with floured hands`, `on one side`."""
    return reading.words.tells_manner(reading.keys(name)[-1])
