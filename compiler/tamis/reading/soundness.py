"""Free words are read for their numbers: each that a production lets stand there is looked at for what may be wrong."""

from __future__ import annotations

from itertools import pairwise

from tamis.reading.clause import first_leaf, leaves, start_of
from tamis.reading.durations import stretch
from tamis.reading.quantities import amount, check_size, measures
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from tamis.reading.clause import Node, NodeKind, Reading
    from tamis.syntax.cutting import Cut


LENGTHS: frozenset[NodeKind] = frozenset(("exact", "SPAN", "OVERNIGHT"))
"""The kinds of a length of time among free words."""


def check_text(reading: Reading, parts: Sequence[Node]) -> None:
    """Read the numbers of a preparation or a purpose; raises for one that cannot be read."""
    for part in parts:
        if part[1].__class__ is not list:
            continue
        if part[0] in ("count", "amount"):
            amount(reading, part)
        elif part[0] == "size":
            check_size(reading, part)
        elif part[0] == "aged":
            stretch(reading, ("stretch", part[1][:1]))
        elif part[0] == "said":
            _check_unweighed(reading, part[1])
            check_text(reading, part[1])
        elif part[0] not in LENGTHS:  # a time is no mere word: who keeps the text reads it
            check_text(reading, part[1])


def _check_unweighed(reading: Reading, parts: Sequence[Node]) -> None:
    """Raise for a weight in round brackets behind what is no food, which takes none."""
    brackets = [part for part in parts if part[0] == "bracket"]
    weight = next((node for part in brackets for note in part[1] for node in note[1] if node[0] == "weight"), None)
    if weight is not None:
        message = "a measure among other words: this food would not be counted"
        raise reading.fail(
            "clause-role", reading.span([weight]), message, "give it a bracket of its own, with its food"
        )


def lapses(reading: Reading, sights: Sequence[Node], of_a_test: bool = False) -> list[Node]:
    """The times of a test, `until a cube of bread browns in 40 s`, which are no length of the wait. Raises for any
    other time: `until golden in 5 min` says how long it takes."""
    found = list(_lapses_in(sights))
    tried = of_a_test and first_leaf(sights[0])[1].lower() in reading.words.articles  # what nobody has named yet
    if len(found) > tried:
        said, before = reading.said(found[:1]), reading.text[: start_of(found[0])].rsplit(maxsplit=1)[0]
        alone = example(reading.kitchen.language, "for", time=said)
        hint = f"write the time after a comma: `[{before}, {said}]`, or in a bracket of its own: {alone}"
        message = f"“{said}”: a time among other words cannot be read here"
        raise reading.fail("clause-role", reading.span(found[:1]), message, hint)
    return found


def _lapses_in(nodes: Sequence[Node]) -> Iterator[Node]:
    for node in nodes:
        if node[0] == "lapse":
            yield node
        elif node[1].__class__ is list:
            yield from _lapses_in(node[1])


def check_name(reading: Reading, nodes: Sequence[Node]) -> None:
    """Read the numbers within a name or in what is looked for: a percentage, a size, a weight."""
    for node in nodes:
        if node[1].__class__ is not list or node[0] == "degrees":  # who names a temperature reads it
            continue
        if not check_number(reading, node):
            check_name(reading, node[1])


def check_number(reading: Reading, node: Node) -> bool:
    """Read a number, a measure or a size for what may be wrong with it; False for any other node."""
    if node[0] in ("amount", "count"):
        amount(reading, node)
    elif node[0] == "weight":
        measures(reading, node)
    elif node[0] == "size":
        check_size(reading, node)
    else:
        return False
    return True


def check_all_read(reading: Reading, tree: Node, cut: Cut) -> None:
    """Every number of a clause is read by its record, and every time in words; raises for the first that is not. Where
    as many were read as stand there in figures, and none in letters, nothing is to be looked for."""
    if cut.numbers == len(reading.numbers) and not cut.timed:
        return
    words = leaves(tree[1])
    for before, leaf in pairwise(words) if cut.timed else ():
        if leaf[0] == "ANY":
            _check_time(reading, before, leaf, words)
    for leaf in words:
        if leaf[0] in NUMBERS and leaf[2] not in reading.numbers:
            message = f"“{leaf[1]}” has no meaning at this place of “{reading.text.strip()}”"
            hint = "give it a bracket of its own, or leave it in plain words outside the brackets"
            raise reading.fail("clause-role", reading.span([leaf]), message, hint)


def _check_time(reading: Reading, before: Node, leaf: Node, words: Sequence[Node]) -> None:
    """Raise for a time in words among words that nobody reads for one: `until risen, or for an hour`."""
    said = reading.words
    unit = reading.kitchen.units.get(leaf[1].lower())
    counted = before[1].lower() in said.articles | said.fractions.keys() and before[0] == "ANY"
    if leaf[1].lower() not in said.overnight and not (counted and unit is not None and unit.kind == "time"):
        return
    after = next((word[1].lower() for word in words if word[2] > leaf[2]), "")
    if after in said.old:  # bread a day old
        return
    alone = leaf[1].lower() in said.overnight
    time = reading.said([leaf if alone else before, leaf])
    work = (reading.before.split() or [""])[-1]
    offered = f"`[{time}]`" if alone else example(reading.kitchen.language, "for", time=time)
    hint = f"give it a bracket of its own: {offered}"
    if words[0][0] == "TO" and reading.kitchen.verbs.get(work.lower()):  # Leave [to stand overnight]
        hint = f"the work belongs in the brackets: `[{work} {reading.text.strip()}]`"
    message = f"“{time}”: a time among other words cannot be read here"
    raise reading.fail("clause-role", reading.span([leaf if alone else before, leaf]), message, hint)


NUMBERS: frozenset[NodeKind] = frozenset(("NUMBER", "NUMWORD", "MISWRITTEN", "SPAN", "OVERNIGHT"))
