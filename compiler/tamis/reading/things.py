"""Clauses about things: what is referred to, and equipment."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.reading.clause import child, first_leaf, is_leaf, leaves
from tamis.reading.clauses import Division, Manner, Read, Reference, Setting, Share, Time, Tool
from tamis.reading.durations import duration, stretch
from tamis.reading.food_parts import PREPOSITIONS, is_manner
from tamis.reading.measured import MEASURES, NAMES, Measured, bracketed, check_held, read_measure, with_unit
from tamis.reading.quantities import amount, as_one, one_measure, one_number
from tamis.reading.soundness import LENGTHS, check_name, check_text
from tamis.reading.temperatures import check_neighbours, scales, temperatures
from tamis.source import NOWHERE, Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.kitchen.equipment import FoundEquipment
    from tamis.quantity.duration import Duration
    from tamis.reading.clause import Node, NodeKind, Reading


def preposition_of(children: Sequence[Node]) -> tuple[str, list[Node]]:
    """The preposition that a clause opens with, and what follows it: of one with its article in it, the article."""
    if children[0][0] == "PREPTHE":
        return children[0][1].lower(), [("THE", *children[0][1:]), *children[1:]]
    if children[0][0] in _OPENING:
        return children[0][1].lower(), list(children[1:])
    return "", list(children)


_OPENING = PREPOSITIONS | {"TO", "ALONG", "OF"}

# ---- references


def read_reference(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...] | None:
    """`the poolish`, `a third of the milk`, `with the rest of the cream, whipped`; None for `in the pride of the
    dough`, which is no place."""
    preposition, nodes = preposition_of(children)
    share = None
    if nodes and nodes[0][0] == "of_it":
        of_it = nodes.pop(0)[1]
        share = _share(reading, of_it)
    elif nodes and nodes[0][0] == "THE":
        nodes.pop(0)
        if len(nodes) > 1 and nodes[1][0] == "OF":  # `in the middle of the dough`
            if reading.keys(nodes[-1:])[-1] in reading.words.ways:  # with the palm of your hand
                return (Manner(reading.clause),)
            if reading.keys(nodes[:1])[-1] not in reading.words.places:
                return None
            nodes = nodes[3:]
    if nodes and nodes[0][0] == "count":  # `the 12 shells`
        some = Measure(amount(reading, nodes.pop(0)), "")
        if preposition and is_manner(reading, nodes[:1]):  # down one side
            return (Manner(reading.clause, some),)
        share = Share("measure", measure=some)
    if nodes and nodes[0][0] == "SAME":
        nodes.pop(0)
    after = [node for node in nodes if node[0] in _AFTER]
    name = [node for node in nodes if node not in after]
    check_text(reading, after)
    check_name(reading, name)
    said = [node for node in after if node[0] != "COMMA"]
    bracket = child(after, "bracket")
    if share and share.kind == "some" and bracket:  # `a splash of its water (about 150 ml)`
        also = bracketed(reading, Measured(), bracket).also
        share = Share("measure", measure=as_one(reading, also)) if also else share
    if not name and not (share and share.kind == "rest"):  # `the rest` is of what was shared last
        message, dough = f"“{reading.text.strip()}” names nothing", example(reading.kitchen.language, "the_dough")
        raise reading.fail("clause-role", reading.clause.span, message, f"write what is meant: {dough}")
    return (
        Reference(
            reading.clause,
            reading.said(name),
            reading.span(name),
            share,
            preposition,
            reading.said(said) if said else "",
        ),
    )


_AFTER: frozenset[NodeKind] = frozenset(("bracket", "COMMA", "preparation", "purpose", "optional", "FOR", "text"))


def _share(reading: Reading, nodes: Sequence[Node]) -> Share:
    """The part of something that is there: `half`, `another third`, `2 tbsp of`, `the rest of`, `all but 2 tbsp of`."""
    kinds = [node[0] for node in nodes]
    part = child(nodes, "FRACTION")
    if "REST" in kinds:
        return _of_the_rest(reading, nodes, part)
    if "ALLBUT" in kinds:
        return _all_but(reading, nodes, part)
    read = read_measure(reading, [node for node in nodes if node[0] in MEASURES or node[0] == "size"])
    if read.measures and not read.pieces:
        read.size = ""  # 2 cm of the ginger
    check_held(reading, read, _SHARES_HOLD)
    if part:
        return _fraction(reading, nodes, part)
    if "ALL" in kinds or kinds[0] == "EACH":
        return Share("all")
    some = child(nodes, "SOME")
    if some:
        return Share("some")
    words = [node for node in nodes if node[0] in NAMES]
    if words:
        read, left = with_unit(reading, read, [*words, child(nodes, "OF") or words[-1]])
        part = next((leaf for leaf in leaves(left) if leaf[1].lower() in reading.words.fractions), None)
        if part:  # 30 over half of the sauce
            message = f"“{part[1]}” is a share, and “{reading.said(nodes[:1])}” before it an amount"
            raise reading.fail("clause-role", reading.span([part]), message, "write one of them")
    if read.vague or not read.measures:
        return Share("some")
    measure = as_one(reading, read.measures)
    unit = reading.kitchen.units.get(measure.unit) if measure.unit else None
    if measure.unit in reading.words.no_size or (unit is not None and unit.kind == "nominal"):  # a splash of it
        return Share("some", measure=None if read.article else measure)
    if not measure.unit and measure.amount.single and 0 < measure.amount.lo < 1:  # `1/3 of the cream`
        return Share("fraction", measure.amount.lo)
    return Share("measure", measure=measure, also=read.also)


_SHARES_HOLD = frozenset(("also",))  # 120 ml (1/2 cup) of the syrup


def _all_but(reading: Reading, nodes: Sequence[Node], part: Node | None) -> Share:
    """`all but 2 tbsp of`, `all but a third of`, `all but a little of`."""
    if nodes[1][0] in ("weight", "count"):
        return Share("but", measure=measure_of(reading, nodes[1]))
    return Share("fraction", 1 - _fraction(reading, nodes, part).fraction) if part else Share("some")


def _of_the_rest(reading: Reading, nodes: Sequence[Node], part: Node | None) -> Share:
    """`the rest of`, `the remaining third of`, and a share of it: `half of the remaining`."""
    if part is not None and nodes.index(part) < nodes.index(child(nodes, "REST") or part):
        return _fraction(reading, nodes, part)._replace(of_rest=True)
    return Share("rest", reading.words.fractions[part[1].lower()] if part else Fraction(1))


def _fraction(reading: Reading, nodes: Sequence[Node], part: Node) -> Share:
    hedges = child(nodes, "hedges")
    another = hedges is not None and child(hedges[1], "ANOTHER") is not None
    value = reading.words.fractions[part[1].lower()]
    number = child(nodes, "count")
    if number:
        value *= one_number(reading, number)
    if value > 1:
        message = f"“{reading.said([nodes[0], part])}” is more than the whole"
        raise reading.fail("number-unclear", reading.span([nodes[0], part]), message, "a share is at most all of it")
    return Share("fraction", value, another=another)


def measure_of(reading: Reading, node: Node) -> Measure:
    """A weight, or so many pieces."""
    return one_measure(reading, node) if node[0] == "weight" else Measure(amount(reading, node), "")


# ---- equipment


def read_tool(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """A piece of equipment with its number, size and adjectives; a time behind it is a record of its own."""
    from tamis.reading.tool_sizes import counted_as, cut_off, number_and_size, within

    if preposition_of(children)[0] and (filled := _hollows(reading, children)):
        return filled
    preposition, nodes = preposition_of(children)
    definite = bool(nodes) and nodes[0][0] == "THE"
    same = child(nodes, "SAME") is not None
    nodes = [node for node in nodes if node[0] not in ("THE", "SAME")] if definite or same else nodes
    at = next(n for n, node in enumerate(nodes) if node[0] in NAMES)
    counts = [("counted", [node]) if node[0] == "count" else node for node in nodes[:at] if node[0] != "hedges"]
    measured = read_measure(reading, counts)
    cut = child(nodes[:at], "plies") or first_leaf(nodes[at])
    if cut[0] == "plies" or cut[1] in reading.words.lengths:
        measured, nodes, at = *cut_off(reading, measured, cut, nodes[at:]), 0
    size = child(nodes[:at], "size") or child(nodes[:at], "weight")
    behind = child(nodes[at:], "of_size") or child(nodes[at:], "of_weight")
    name, holding, rest = _named(reading, [node for node in nodes[at:] if node is not behind])
    found = _whole(reading, name, holding) or reading.kitchen.cupboard.find(reading.keys(_plain(name)))
    assert found is not None
    check_name(reading, [*name, *holding, *([size] if size else [])])
    check_held(reading, measured, _TOOLS_HOLD)
    if measured.pieces:
        counted_as(reading, measured.pieces)
    number, said_size = number_and_size(reading, measured, found)
    size_span = within(reading, measured, said_size)
    if not said_size:
        inside = size or next((node for node in name for node in _sizes(node)), None)
        said_size, size_span = (reading.said([inside]), reading.span([inside])) if inside else ("", NOWHERE)
    if behind is not None:  # a tin of 24 cm
        check_name(reading, [behind])
        said_size, size_span = reading.said(behind[1][1:]), reading.span(behind[1][1:])
    words, length = _rest(reading, rest, measured) if rest else ("", None)
    if not said_size and (inside := _size_behind(rest)):
        said_size, size_span = reading.said([inside]), reading.span([inside])
    said = reading.said(_behind_comma(name))
    told = reading.said(_plain(name)).lower().replace(",", " ").split()  # both sides of it: a large, heavy pan
    adjectives = tuple([word for word in found.adjectives if word in told])
    divides = preposition in reading.words.into and found.item.kind == "vessel" and number > 1
    tool = Tool(
        reading.clause,
        said,
        found.item,
        adjectives,
        number,
        said_size,
        preposition,
        definite or same,
        divides,
        reading.said(holding) if holding else "",
        words=words,
        size_span=size_span,
        several=found.several and number == 1 and not measured.pieces and not said.endswith(found.item.name),
    )
    if not rest:
        return (tool,)
    more: list[Read] = [*_beside(reading, rest), *_set(reading, child(rest, "heat")), *_heated(reading, rest)]
    return (tool, *more, Time(reading.clause, length, text=reading.text)) if length else (tool, *more)


def _set(reading: Reading, heat: Node | None) -> tuple[Read, ...]:
    """How hot the tool is set, if that is said."""
    if heat is None:
        return ()
    from tamis.reading.heat import heat_of

    return (heat_of(reading, heat),)


def _hollows(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`between the 12 holes of a muffin tin`: the tin, and as many pieces; nothing for any other clause."""
    at = next((n for n, node in enumerate(children) if node[0] == "strange"), 0)
    measure = [node for node in children[1:at] if node[0] in MEASURES or node[0] == "count"]
    if not at or not measure or [node[0] for node in children[at + 1 : at + 2]] != ["OF"]:
        return ()
    if nouns(reading.kitchen.language).singular(reading.keys([children[at]])[-1]) not in reading.words.hollows:
        return ()
    counts = [("counted", [node]) if node[0] == "count" else node for node in measure]
    read = read_measure(reading, counts)
    check_held(reading, read)
    tin = read_tool(reading, children[at + 2 :])
    preposition = preposition_of(children)[0]
    tools = tuple(tool._replace(preposition=preposition) if isinstance(tool, Tool) else tool for tool in tin)
    return (*tools, Division(reading.clause, read.pieces, reading.said([children[at]]), text=reading.text))


def _beside(reading: Reading, rest: Sequence[Node]) -> list[Tool]:
    """The second piece of `on a rack in a roasting tin`, `on a tray lined with baking paper`."""
    tools = []
    small = reading.words.articles | reading.words.the
    for opener, node in pairwise(rest):
        words = [leaf for leaf in leaves([node]) if leaf[1].lower() not in small]
        if is_leaf(node) or opener[0] not in _BESIDE or not words:
            continue
        of = next((n for n, leaf in enumerate(words) if leaf[1].lower() in reading.words.of), len(words))
        found = reading.kitchen.cupboard.find(reading.keys(words[:of]))
        if not found and of + 1 < len(words):  # a double layer of muslin
            words, of = words[of + 1 :], len(words) - of - 1
            found = reading.kitchen.cupboard.find(reading.keys(words))
        if found:
            name = reading.said(words[:of])
            span = Span(reading.inner + words[0][2] - 1, reading.inner + words[of - 1][3] + 1)
            clause = Clause(name, span, reading.kitchen.language)
            holds = reading.said(words[of + 1 :])
            preposition = opener[1].lower().split(" ")[-1]
            tools.append(Tool(clause, name, found.item, found.adjectives, preposition=preposition, contains=holds))
    return tools


_BESIDE = PREPOSITIONS | {"DONEWITH"}


def _heated(reading: Reading, rest: Sequence[Node]) -> list[Setting]:
    """How hot it is: `in a moderate oven (350 °F)`, `in a slow oven, 300 °F`, `in the oven at 180 °C`."""
    if child(rest, "scales"):
        from tamis.reading.heat import setting_of

        return [setting_of(reading, rest)]
    found = temperatures([part for node in rest if node[0] == "bracket" for part in node[1]])
    if not found:
        return []
    first = scales(reading, found[0])
    for node in found[1:]:
        check_neighbours(reading, node, first, node[1])
    where = reading.span(found[:1])
    return [Setting(reading.clause, "temperature", *first, text=reading.text, degrees_span=where)]


def _plain(nodes: Sequence[Node]) -> list[Node]:
    return [leaf for leaf in leaves(nodes) if leaf[0] not in _NUMBERS]


_NUMBERS = frozenset(("NUMBER", "RANGE", "MASS", "VOLUME", "LENGTH", "TIMES", "PERCENT", "ADJCOMMA"))


def _sizes(node: Node) -> list[Node]:
    """The first measure within a name: `heavy 3-litre pan`."""
    if is_leaf(node):
        return []
    if node[0] in ("weight", "size", "length"):
        return [node]
    return [found for part in node[1] for found in _sizes(part)][:1]


def _size_behind(rest: Sequence[Node]) -> Node | None:
    """The size of each that stands in round brackets: `5 jars (330 ml each)`."""
    notes = [note for node in rest if node[0] == "bracket" for note in node[1] if note[0] == "note"]
    return next((node for note in notes for node in note[1] if node[0] in ("weight", "size")), None)


def _named(reading: Reading, nodes: Sequence[Node]) -> tuple[list[Node], list[Node], list[Node]]:
    """The piece, what it holds (`a bowl | of ice`), and the rest. Of `the back of a spoon` the piece is the spoon, of
    `two sheets of baking paper` the paper, of `the bowl of a stand mixer` the bowl."""
    first = [nodes[0]]
    rest = list(nodes[1:])
    if not rest or rest[0][0] != "OF":
        return first, [], rest
    at = 1 + (rest[1][0] in ("ARTICLE", "THE"))
    held, after = rest[1 : at + 1], rest[at + 1 :]
    keys = reading.keys(_plain(first))
    part = keys[-1] in reading.words.parts_of_tools
    if held[-1][0] in ("tool", "jar") and (part or reading.kitchen.cupboard.find(keys) is None):
        return held[-1:], [], after
    return first, held, after


def _whole(reading: Reading, name: list[Node], holding: list[Node]) -> FoundEquipment | None:
    """`the bowl of a stand mixer` is one piece, if the list has it as part of another."""
    if not holding:
        return None
    of = sorted(reading.words.of)[0]
    words = (*reading.keys(_plain(name)), of, *reading.keys(_plain(holding)))
    found = reading.kitchen.cupboard.find(tuple(word for word in words if word not in reading.words.articles))
    return found if found and found.item.part_of else None


_TOOLS_HOLD = frozenset(("each", "size"))


def _behind_comma(name: list[Node]) -> list[Node]:
    """`a wide, heavy-bottomed pan`: what stands before the comma describes."""
    words = list(leaves(name))
    commas = [n for n, leaf in enumerate(words) if leaf[0] == "ADJCOMMA"]
    return words[commas[-1] + 1 :] if commas else name


_NO_WORDS: frozenset[NodeKind] = frozenset(("COMMA", "FOR", "AT", "hedges", "scales", "amount", "PERCENT", "HUMIDITY"))


def _rest(reading: Reading, nodes: Sequence[Node], measured: Measured) -> tuple[str, Duration | None]:
    """What is said of the piece after it (sterilised, 65 mm deep), and how long the line takes where that stands
    here."""
    length = None
    said: list[Node] = []
    for node in nodes:
        if node[0] == "duration":
            length = duration(reading, node)
        elif node[0] == "bracket":
            bracketed(reading, Measured(), node)
            said.append(node)
        elif node[0] not in _NO_WORDS:
            said.append(node)
            parts = [] if is_leaf(node) else node[1]
            check_text(reading, [node])
            timed = [part for text in [node, *parts] if not is_leaf(text) for part in text[1] if part[0] in LENGTHS]
            if timed:
                length = stretch(reading, ("stretch", [timed[0]]))
    return (reading.said(said) if said else ""), length
