"""Clauses about time and heat: times, cues, settings and targets."""

from __future__ import annotations

from tamis.quantity.duration import Duration, at_least, window
from tamis.quantity.measure import Measure
from tamis.reading.clause import child, end_of, first_leaf, is_leaf, leaves, start_of
from tamis.reading.clauses import Cue, Read, Setting, Target, Time, Tool, VerbUse
from tamis.reading.durations import duration, is_more, many_ends, stretch
from tamis.reading.measured import MEASURES, ONE, read_measure
from tamis.reading.quantities import one_measure, unit_of
from tamis.reading.soundness import check_name, check_text
from tamis.reading.temperatures import check_neighbours, damp, scales, temperatures
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING, Literal
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.verbs import Verb
    from tamis.quantity.amount import Amount
    from tamis.quantity.units import UnitKind
    from tamis.reading.clause import Node, NodeKind, Reading


class _Work:
    """What a clause of time says, gathered from its parts."""

    __slots__ = (
        "cue", "each", "hands", "length", "more", "per", "plus", "setting", "sides", "verb", "verb_text", "where",
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


def read_time(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`knead for 5 min`, `20 min per 500 g`, `3 min on each side`, `bake for 20 min at 200 °C`.

    What stands beside the time is a record of its own: what to look for, where it is done."""
    work = _Work()
    for at, node in enumerate(children):
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
    )
    return (*places, time, cue) if cue else (*places, time)


def _time_part(reading: Reading, work: _Work, node: Node, rest: Sequence[Node]) -> None:
    kind = node[0]
    if kind in _LENGTHS:
        _length_part(reading, work, node)
    elif kind in ("scales", "heat", "ROOM", "STATE"):
        _heat_part(reading, work, node, rest)
    elif kind in ("weight", "COUNT"):
        _rate_part(reading, work, node)
    elif kind in ("verb", "VERBFOOD"):
        work.verb, work.verb_text = verb_of(reading, node, rest)
    elif kind == "plus":
        work.plus = duration(reading, node[1][1])
    elif kind in ("EACH", "SIDE", "PERSIDE"):
        work.each, work.sides = kind == "EACH", kind != "EACH"
    elif kind == "BEFORE":  # what is done an hour before roasting needs nobody in that hour
        work.hands = False
    elif kind == "ATTENTION":
        work.hands = node[1].lower() in reading.words.hands
    else:
        _beside(reading, work, node, rest)


def _heat_part(reading: Reading, work: _Work, node: Node, rest: Sequence[Node]) -> None:
    """How hot it is meanwhile: one heat, told perhaps in several scales."""
    if work.setting:
        message = "two heats in one clause: only one can hold"
        raise reading.fail("clause-role", reading.span([node]), message, "give each a clause and a time of its own")
    if node[0] == "heat":
        work.setting = heat_of(reading, node)
    elif node[0] == "STATE":
        work.setting = Setting(reading.clause, "heat", word=node[1], text=reading.text)
    elif node[0] == "ROOM":
        work.setting = Setting(reading.clause, "room", word=node[1])
    else:
        first = scales(reading, node)
        check_neighbours(reading, node, first, rest[1:])
        moist = damp(reading, rest)
        work.setting = Setting(reading.clause, "temperature", *first, text=reading.text, moist=moist)


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
    elif node[0] == "text":
        check_text(reading, node[1])


_WEIGHTS: frozenset[UnitKind] = frozenset(("mass", "volume"))
# What says nothing by itself, or is read with what follows it.
_SMALL: frozenset[NodeKind] = frozenset(("FOR", "AT", "PREP", "INTO", "ONHEAT", "COMMA", "ARTICLE", "ANY", "OR", "PER"))
_LENGTHS: frozenset[NodeKind] = frozenset(("duration", "OVERNIGHT", "stretch", "MORE", "LONGER"))


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
    else:
        latest = stretch(reading, node) if kind == "stretch" else None
        one_end = work.length.single or work.length.window
        if not one_end or (latest and not (latest.single or latest.window)):
            raise many_ends(reading, node)
        work.length = window(work.length.lo, latest.hi) if latest and latest.hi else at_least(work.length.lo)


def verb_of(reading: Reading, node: Node, rest: Sequence[Node]) -> tuple[Verb | None, str]:
    """The verb that a clause opens with, as the list knows it: with what follows, `leave to cool` is to cool."""
    first = first_leaf(node)
    alone = reading.kitchen.verbs.get(first[1].lower())
    if alone is not None and not alone.lets:
        return alone, first[1]
    words = reading.keys(rest)
    found = reading.kitchen.verbs.match(words, 0)
    if found is None:
        return reading.kitchen.verbs.get(first[1].lower()), first[1]
    end = start_of(node)
    for leaf in _leaves_until(rest, found[1]):
        end = leaf[3]
    return found[0], reading.text[start_of(node) : end]


def _leaves_until(rest: Sequence[Node], words: int) -> list[Node]:
    """The leaves that hold the first so many words."""
    kept, seen = [], 0
    for leaf in leaves(rest):
        if seen >= words:
            break
        kept.append(leaf)
        seen += len(leaf[1].split())
    return kept


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


# ---- heat


def read_setting(reading: Reading, children: Sequence[Node]) -> tuple[Read | VerbUse, ...]:
    """`at 180 °C / 160 °C fan`, `over medium heat`, `on low speed`, `off the heat`, `at room temperature`; the work
    that it opens with comes first."""
    if children[0][0] == "verb":
        verb, text = verb_of(reading, children[0], children)
        setting = _setting(reading, [node for node in children[1:] if node[0] not in ("ANY", "COMMA", "PREP", "INTO")])
        if verb is None:
            return (setting,)
        return (VerbUse(verb, text, Span(reading.inner, reading.inner + len(text))), setting)
    return (_setting(reading, children),)


def _setting(reading: Reading, children: Sequence[Node]) -> Setting:
    text = reading.text
    for at, node in enumerate(children):
        kind = node[0]
        if kind == "scales":
            check_neighbours(reading, node, scales(reading, node), children[at + 1 :])
            moist = damp(reading, children)
            return Setting(reading.clause, "temperature", *scales(reading, node), text=text, moist=moist)
        if kind == "heat":
            return heat_of(reading, node)
        if kind == "OFFHEAT":
            return Setting(reading.clause, "off", text=text)
        if kind == "ROOM":
            return Setting(reading.clause, "room", word=reading.said([*children]), text=text)
        if kind == "BELOWBOIL":
            return Setting(reading.clause, "heat", word=reading.said([node]), text=text)
    after = children[children[0][0] == "AT" :]
    return Setting(reading.clause, "heat", word=reading.said(after), text=text)


def heat_of(reading: Reading, node: Node) -> Setting:
    """`over medium heat`, `on low speed`, `high heat`: the level, and of what."""
    words = [(leaf[0], leaf[1].lower()) for leaf in leaves(node[1])]
    speed = any(text in reading.words.speed for _, text in words)
    known = [leaf for leaf in leaves(node[1]) if leaf[0] in ("SETWORD", "NUMBER")]
    range_ = len(known) > 1 and not {"TO", "OR"}.isdisjoint(part[0] for part in node[1])  # `low to medium heat`
    level = reading.said([known[0], known[-1] if range_ else known[0]]).lower() if known else ""
    if known and known[0][0] == "NUMBER":  # `speed 2` is the number of a knob
        reading.numbers.add(known[0][2])
    return Setting(reading.clause, "speed" if speed else "heat", word=level, text=reading.text)


def read_target(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """What is to be reached, and the time behind its comma: `to 94 °C, about 20 min`."""
    length = child(children, "duration")
    if length is None:
        return _target(reading, children)
    before = children[: children.index(length) - 1]
    reached = [
        read._replace(text=reading.said(before)) if isinstance(read, Target) else read
        for read in _target(reading, before)
    ]
    return (*reached, Time(reading.clause, duration(reading, length), text=reading.said([length])))


def _target(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`to 230 °C`, `to the boil`, `to 200 ml`, `to 38 × 6 cm`, `4 mm thick`, `in a single layer`."""
    text, clause = reading.text, reading.clause
    place = child(children, "place")
    if children[0][0] == "BY":  # `reduce by half`
        check_text(reading, children[1:])
        return (Target(clause, "state", word=text.strip(), text=text),)
    if child(children, "LAYER"):
        read_measure(reading, [node for node in children if node[0] in MEASURES])
        layer = Target(clause, "size", text=text)
        return (*_tools_in(reading, place), layer) if place else (layer,)
    sights = [node for node in children if node[0] == "sight"]
    found = temperatures(sights)
    check_name(reading, sights)
    level = _level(reading, sights)
    if level:
        return (level,)
    if found:
        return (Target(clause, "temperature", _one_of(reading, found), text=text),)
    weight = next((node for sight in sights for node in sight[1] if node[0] == "weight"), None)
    if weight and children[0][0] == "TO" and _opens(sights[0], weight):
        return (Target(clause, "measure", measure=one_measure(reading, weight), text=text),)
    if any(leaf[0] in ("LENGTH", "TIMES", "INCH") for leaf in leaves(children)):
        check_name(reading, children)
        return (Target(clause, "size", text=text),)
    after = children[children[0][0] == "TO" :]
    check_text(reading, after)
    return (Target(clause, "state", word=reading.said(after), text=text),)


def _level(reading: Reading, sights: Sequence[Node]) -> Setting | None:
    """`to low`, `to a high heat`: nothing but the level that the heat is turned to; `to medium rare` is a state."""
    parts = [node for sight in sights for node in sight[1]]
    words = [leaf[1].lower() for leaf in parts if is_leaf(leaf)]
    known = reading.words
    at = [n for n, word in enumerate(words) if word in known.levels]
    of_heat = bool(words) and words[-1] in known.heats
    if (
        not at
        or len(words) < len(parts)
        or not (of_heat or (known.levels | known.joins | known.articles).issuperset(words))
    ):
        return None
    kind: Literal["speed", "heat"] = "speed" if words[-1] in known.speed else "heat"
    return Setting(reading.clause, kind, word=" ".join(words[at[0] : at[-1] + 1]), text=reading.text)


def _opens(sight: Node, weight: Node) -> bool:
    """Whether a measure comes first in what is to be reached, but for small words: `to about 2 l`."""
    return weight in sight[1] and sight[1].index(weight) <= 1


def _tools_in(reading: Reading, place: Node) -> list[Tool]:
    words = [leaf for leaf in leaves(place[1])]
    found = reading.kitchen.cupboard.find(reading.keys(place[1][1:]))
    if found is None:
        return []
    name = reading.text[words[1][2] : words[-1][3]]
    if words[1][1].lower() in reading.words.articles and len(words) > 2:
        name = reading.text[words[2][2] : words[-1][3]]
    span = Span(reading.inner + words[1][2] - 1, reading.inner + words[-1][3] + 1)
    clause = Clause(name, span, reading.kitchen.language)
    return [Tool(clause, name, found.item, preposition=words[0][1].lower())]


_OVENS: frozenset[NodeKind] = frozenset(("FAN", "GAS"))


def _one_of(reading: Reading, found: list[Node]) -> Amount:
    """The temperature of a cue or a target; two that do not say the same are asked about."""
    first, fan = scales(reading, found[0])
    for node in found[1:]:
        if any(leaf[0] in _OVENS for leaf in leaves(node[1])):  # `to 220 °C, fan 200 °C, gas 7`
            check_neighbours(reading, node, (first, fan), node[1])
            continue
        other = scales(reading, node)[0]
        if abs(other.lo - first.lo) > 1 or abs(other.hi - first.hi) > 1:
            message = "two temperatures in one clause: only one can be reached"
            hint = "give each a clause of its own, and a line of its own where another food is meant"
            raise reading.fail("clause-role", reading.span([node]), message, hint)
    return first


# ---- what to look for


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
    length = child(nodes, "duration")
    end = nodes[: nodes.index(length) - 1] if length else nodes
    return Cue(
        reading.clause,
        reading.text[start_of(nodes[0]) : end_of(end[-1])],
        _one_of(reading, found) if found else None,
        duration(reading, length) if length else None,
    )
