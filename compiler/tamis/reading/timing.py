"""Clauses about time: times and cues."""

from __future__ import annotations

from itertools import takewhile

from tamis.kitchen.food import FROM_TAP
from tamis.quantity.duration import Duration, at_least, window
from tamis.quantity.measure import Measure
from tamis.reading.clause import child, end_of, is_leaf, leaves, start_of
from tamis.reading.clauses import Cue, Read, Setting, Time, Tool
from tamis.reading.durations import duration, is_more, many_ends, stretch
from tamis.reading.measured import ONE
from tamis.reading.opening_verb import verb_of
from tamis.reading.quantities import one_measure, unit_of
from tamis.reading.soundness import check_name, check_text, lapses
from tamis.reading.temperatures import check_neighbours, damp, one_of, scales, temperatures
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.verbs import Verb
    from tamis.quantity.units import UnitKind
    from tamis.reading.clause import Node, NodeKind, Reading


class _Work:
    """What a clause of time says, gathered from its parts."""

    __slots__ = (
        "before", "cue", "each", "hands", "length", "more", "per", "plus", "setting", "sides", "verb", "verb_text",
        "where",
    )  # fmt: skip

    def __init__(self) -> None:
        self.verb: Verb | None = None
        self.verb_text = ""
        self.length: Duration | None = None
        self.more = self.sides = self.each = False
        self.per: Measure | None = None
        self.plus: Duration | None = None
        self.hands: bool | None = None
        self.setting: Setting | None = None
        self.cue: list[Node] = []
        self.where: list[Node] = []
        self.before = ""


def read_time(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`knead for 5 min`, `20 min per 500 g`, `3 min on each side`, `bake for 20 min at 200 °C`.

    What stands beside the time is a record of its own: what to look for, where it is done."""
    work = _Work()
    for at, node in enumerate(children):
        if node[0] == "PREP":
            _check_no_food(reading, children[at + 1 :])
        if node[0] not in _SMALL:
            _time_part(reading, work, node, children[at:])
    assert work.length is not None
    places = tuple(tool for node in work.where for tool in _place(reading, node))
    cue = cue_of(reading, work.cue) if work.cue else None
    told_apart = work.per or work.plus or work.sides or work.each or work.more or work.setting or work.hands is not None
    if cue and not told_apart:  # `simmer for 1 h, until tender` says the same as `simmer [until tender, 1 h]`
        return (*places, cue._replace(duration=work.length, verb=work.verb, verb_text=work.verb_text))
    time = Time(
        reading.clause,
        work.length,
        work.verb,
        work.verb_text,
        work.per,
        work.sides,
        work.more,
        work.setting,
        work.hands,
        reading.text,
        work.each,
        work.plus,
        before=work.before,
    )
    return (*places, time, cue) if cue else (*places, time)


def _time_part(reading: Reading, work: _Work, node: Node, rest: Sequence[Node]) -> None:
    kind = node[0]
    if kind in _LENGTHS:
        _length_part(reading, work, node)
    elif kind in ("scales", "heat", "ROOM", "STATE", "OFFHEAT"):
        _heat_part(reading, work, node, rest)
    elif kind in ("weight", "COUNT"):
        _rate_part(reading, work, node)
    elif kind in ("verb", "VERBFOOD"):
        work.verb, work.verb_text = verb_of(reading, node, rest)
    elif kind == "plus":
        work.plus = duration(reading, node[1][1])
    elif kind == "turned":
        work.plus = duration(reading, next(part for part in node[1] if part[0] == "duration"))
    elif kind in ("EACH", "SIDE", "PERSIDE"):
        work.each, work.sides = kind == "EACH", kind != "EACH"
    elif kind == "BEFORE":  # what is done an hour before roasting needs nobody in that hour
        work.hands = False
        work.before = reading.said([*takewhile(lambda node: node[0] != "COMMA", rest[1:])])
    elif kind == "ATTENTION":
        work.hands = node[1].lower() in reading.words.hands
    else:
        _beside(reading, work, node, rest)


def _heat_part(reading: Reading, work: _Work, node: Node, rest: Sequence[Node]) -> None:
    """How hot it is meanwhile: one heat, told perhaps in several scales."""
    if work.setting:
        message = "two heat settings in one bracket: only one can hold"
        raise reading.fail("clause-role", reading.span([node]), message, "give each a bracket and a time of its own")
    if node[0] == "heat":
        from tamis.reading.heat import heat_of

        work.setting = heat_of(reading, node)
    elif node[0] == "STATE":
        where = reading.span([node])
        work.setting = Setting(reading.clause, "heat", word=node[1], text=reading.text, degrees_span=where)
    elif node[0] == "ROOM":
        work.setting = Setting(reading.clause, "room", word=node[1])
    elif node[0] == "OFFHEAT":
        work.setting = Setting(reading.clause, "off", text=reading.text)
    else:
        first = scales(reading, node)
        check_neighbours(reading, node, first, rest[1:])
        moist = damp(reading, rest)
        where = reading.span([node])
        work.setting = Setting(
            reading.clause, "temperature", *first, text=reading.text, moist=moist, degrees_span=where
        )


def _rate_part(reading: Reading, work: _Work, node: Node) -> None:
    """The weight that the time goes by: `20 min per 500 g`, `20 min per lb`."""
    if node[0] == "weight":
        work.per = one_measure(reading, node)
        return
    unit = unit_of(reading, node)
    if unit is None or unit.kind not in _WEIGHTS:
        weight, piece = (example(reading.kitchen.language, key) for key in ("by_weight", "by_piece"))
        hint = f"a time by weight is {weight}; by piece, {piece}"
        raise reading.fail("unit-unknown", reading.span([node]), f"no weight is called “{node[1]}”", hint)
    work.per = Measure(ONE, unit.id)


def _beside(reading: Reading, work: _Work, node: Node, rest: Sequence[Node]) -> None:
    """What stands beside the time: what to look for, a place, words."""
    if node[0] in ("UNTIL", "ORUNTIL"):
        work.cue = [node, rest[1]]
    elif node[0] in ("where", "there"):
        work.where.append(node)
        if hot := child(node[1], "scales"):
            _heat_part(reading, work, hot, rest)
    elif node[0] == "text":
        words = [leaf[1] for leaf in node[1][:2] if is_leaf(leaf)]
        if len(words) > 1 and words[0] in reading.words.beside and words[1] not in reading.words.the:
            _check_no_food(reading, [("text", node[1][1:])])  # for 5 min, with garlic
        check_text(reading, node[1])


def _check_no_food(reading: Reading, behind: Sequence[Node]) -> None:
    """Raise for a food behind a preposition, which nothing would measure: `for 5 min in butter`. Water and ice are no
    loss."""
    free = behind[0][1] if behind and behind[0][0] == "text" else [*takewhile(lambda node: node[0] == "ANY", behind)]
    words = leaves(free)
    for at in range(len(words)):
        found = reading.kitchen.larder.find(reading.keys(words[at:]))
        if found is not None:
            if found.goods.merchant != FROM_TAP:
                hint = "give it a bracket of its own, with its measure, before the time"
                span = reading.span(words[at:])
                raise reading.fail("clause-role", span, "a food inside a time: nothing measures it", hint)
            return


_WEIGHTS: frozenset[UnitKind] = frozenset(("mass", "volume"))
# What says nothing by itself, or is read with what follows it.
_SMALL: frozenset[NodeKind] = frozenset(("FOR", "AT", "PREP", "INTO", "ONHEAT", "COMMA", "ARTICLE", "ANY", "OR", "PER"))
_LENGTHS: frozenset[NodeKind] = frozenset(("duration", "OVERNIGHT", "stretch", "bound", "MORE", "LONGER"))


def _length_part(reading: Reading, work: _Work, node: Node) -> None:
    """The time itself, and what is said of its end: `, up to 16 h`, `, or longer`."""
    kind = node[0]
    if kind == "duration":
        work.length = duration(reading, node)
        work.more = work.more or is_more(reading, node)
    elif kind == "OVERNIGHT":
        work.length = stretch(reading, ("stretch", [node]))
    elif kind == "MORE":
        work.more = True
    elif work.length is None:
        return
    elif kind == "bound":
        work.length = _either(work.length, duration(reading, ("duration", node[1])))
    else:
        latest = stretch(reading, node) if kind == "stretch" else None
        one_end = work.length.single or work.length.window
        if not one_end or (latest and not (latest.single or latest.window)):
            raise many_ends(reading, node)
        if latest and latest.hi is not None and latest.hi < work.length.lo:
            said, hint = reading.text.strip(), "the shorter time comes first"
            raise reading.fail("range-reversed", reading.clause.span, f"“{said}” ends before it begins", hint)
        work.length = window(work.length.lo, latest.hi) if latest and latest.hi else at_least(work.length.lo)


def _either(one: Duration, other: Duration) -> Duration:
    """`for 3 h, or overnight`, `for at least 2 h, preferably for 8 h`: from the shorter to the longer;
    without end where the last word has none."""
    lo = min(one.lo, other.lo or one.lo)
    return at_least(lo) if other.hi is None else window(lo, max(other.hi, one.hi or other.hi))


def _place(reading: Reading, node: Node) -> list[Tool]:
    """The station or vessel of `leave in the fridge overnight`; other places are just words."""
    tools = [leaf for leaf in leaves(node[1]) if leaf[0] in ("TOOL", "COUNTTOOL")]
    found = reading.kitchen.cupboard.find(tuple(tools[-1][1].lower().split())) if tools else None
    if found is None:
        return []
    definite = child(node[1], "THE") is not None or child(node[1], "PREPTHE") is not None
    leaf = tools[-1]
    clause = Clause(leaf[1], Span(reading.inner + leaf[2] - 1, reading.inner + leaf[3] + 1), reading.kitchen.language)
    return [Tool(clause, leaf[1], found.item, preposition=node[1][0][1].lower(), definite=definite)]


def read_cue(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`until golden, about 5 min`: what to look for, a temperature in it, and the time after its comma."""
    if children[0][0] == "verb":
        verb, text = verb_of(reading, children[0], children)
        return (cue_of(reading, children[1:])._replace(verb=verb, verb_text=text),)
    return (cue_of(reading, children),)


def cue_of(reading: Reading, nodes: Sequence[Node]) -> Cue:
    """What to look for, by the nodes from *until* on."""
    sights = [node for node in nodes if node[0] == "sight"]
    found = temperatures(sights)
    check_name(reading, sights)
    tests = [stretch(reading, ("stretch", node[1])) for node in lapses(reading, sights, of_a_test=True)]
    length = child(nodes, "duration")
    end = nodes[: nodes.index(length) - 1] if length else nodes
    return Cue(
        reading.clause,
        reading.text[start_of(nodes[0]) : end_of(end[-1])],
        one_of(reading, found, sights) if found else None,
        duration(reading, length) if length else None,
        test=tests[0] if tests else None,
    )
