"""Clauses about heat and about what is reached by it: settings and targets."""

from __future__ import annotations

from tamis.kitchen.equipment import HOLDS
from tamis.reading.clause import child, is_leaf, leaves
from tamis.reading.clauses import Read, Setting, Target, Time, Tool, VerbUse
from tamis.reading.durations import duration
from tamis.reading.measured import MEASURES, read_measure
from tamis.reading.opening_verb import verb_of
from tamis.reading.quantities import one_measure
from tamis.reading.soundness import check_name, check_text, lapses
from tamis.reading.temperatures import check_neighbours, damp, one_of, scales, temperatures
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_setting(reading: Reading, children: Sequence[Node]) -> tuple[Read | VerbUse, ...]:
    """`at 180 °C / 160 °C fan`, `over medium heat`, `on low speed`, `off the heat`, `at room temperature`; the work
    that it opens with comes first."""
    if children[0][0] == "verb":
        verb, text = verb_of(reading, children[0], children)
        setting = setting_of(
            reading, [node for node in children[1:] if node[0] not in ("ANY", "COMMA", "PREP", "INTO")]
        )
        if verb is None:
            return (setting,)
        return (VerbUse(verb, text, Span(reading.inner, reading.inner + len(text))), setting)
    return (setting_of(reading, children),)


def setting_of(reading: Reading, children: Sequence[Node]) -> Setting:
    """The heat or speed that these nodes say."""
    text = reading.text
    for at, node in enumerate(children):
        kind = node[0]
        if kind == "scales":
            check_neighbours(reading, node, scales(reading, node), children[at + 1 :])
            moist = damp(reading, children)
            where = reading.span([node])
            first = scales(reading, node)
            return Setting(reading.clause, "temperature", *first, text=text, moist=moist, degrees_span=where)
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
    """`over medium heat`, `on a very low speed`, `high heat`: the level as written, and of what."""
    words = list(leaves(node[1]))
    speed = any(leaf[1].lower() in reading.words.speed for leaf in words)
    level = [leaf for leaf in words if leaf[0] != "HEATNOUN"]
    if level and level[0][0] == "NUMBER":  # `speed 2` is the number of a knob
        reading.numbers.add(level[0][2])
    word = reading.said([level[0], level[-1]]).lower() if level else ""
    where = reading.span([node])
    return Setting(reading.clause, "speed" if speed else "heat", word=word, text=reading.text, degrees_span=where)


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
    lapses(reading, sights)
    level = _level(reading, sights)
    if level:
        return (level,)
    if found:
        reached, where = one_of(reading, found), reading.span(found[:1])
        return (Target(clause, "temperature", reached, text=text, degrees_span=where),)
    weight = next((node for sight in sights for node in sight[1] if node[0] == "weight"), None)
    if weight and children[0][0] == "TO" and _opens(sights[0], weight):
        return (Target(clause, "measure", measure=one_measure(reading, weight), text=text),)
    if any(leaf[0] in ("LENGTH", "TIMES", "INCH") for leaf in leaves(children)):
        check_name(reading, children)
        return (Target(clause, "size", text=text),)
    after = children[children[0][0] == "TO" :]
    check_text(reading, after)
    piece = _moved_to(reading, after) if children[0][0] == "TO" else None
    return (piece or Target(clause, "state", word=reading.said(after), text=text),)


def _moved_to(reading: Reading, nodes: Sequence[Node]) -> Tool | None:
    """`to a bowl of iced water`: a place for the food, and nothing that it is worked to."""
    words = list(leaves(nodes))
    if not words or words[0][1].lower() not in reading.words.articles or len(words) < 2:
        return None
    of = next((at for at, leaf in enumerate(words) if leaf[1].lower() in reading.words.of), len(words))
    found = reading.kitchen.cupboard.find(reading.keys(words[1:of]))
    if found is None or found.item.kind not in HOLDS:
        return None
    holds = reading.said(words[of + 1 :]) if of + 1 < len(words) else ""
    name, preposition = reading.said(words[1:of]), reading.text.split()[0].lower()
    return Tool(reading.clause, name, found.item, found.adjectives, preposition=preposition, contains=holds)


def _level(reading: Reading, sights: Sequence[Node]) -> Setting | None:
    """`to low`, `to a high heat`: nothing but the level that the heat is turned to; `to medium rare` is a state."""
    parts = [node for sight in sights for node in sight[1]]
    words = [leaf[1].lower() for leaf in parts if is_leaf(leaf)]
    known = reading.words
    at = [n for n, word in enumerate(words) if word in known.levels]
    first = next((n for n, word in enumerate(words) if word not in known.articles), 0)
    of_heat = bool(words) and words[-1] in known.heats
    if (
        not at
        or len(words) < len(parts)
        or not (of_heat or (known.levels | known.joins | known.articles | known.degrees).issuperset(words))
    ):
        return None
    kind: Literal["speed", "heat"] = "speed" if words[-1] in known.speed else "heat"
    return Setting(reading.clause, kind, word=" ".join(words[first : at[-1] + 1]), text=reading.text)


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
