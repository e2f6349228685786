"""Clauses that name a batch, set it aside or leave something of it."""

from __future__ import annotations

from tamis.quantity.nouns import nouns
from tamis.reading.clause import child, leaves
from tamis.reading.clauses import Manner, Naming, Read, Target, Time
from tamis.reading.durations import stretch
from tamis.reading.measured import MEASURES, NAMES, Measured, check_held, read_measure, with_unit
from tamis.reading.quantities import as_one, check_size
from tamis.reading.soundness import LENGTHS, check_name, check_text
from tamis.typed import TYPE_CHECKING
from tamis.words import example, named

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.reading.clause import Node, Reading


def read_naming(reading: Reading, children: Sequence[Node]) -> tuple[Read, ...]:
    """`as garlic paste`, `leaving duck fat`, `reserving 250 ml pasta water`, `set aside`."""
    opener = children[0][0]
    if opener == "SETASIDE":
        return (*_waits(reading, children), Naming(reading.clause, "set-aside"))
    free = next((node for node in children if node[0] != "hedges" and node is not children[0]), None)
    if free is not None and free[0] == "size":
        check_size(reading, free)
        return (Target(reading.clause, "size", text=reading.text),)
    kind = "as" if opener == "AS" else "leaving"
    at = next(n for n, node in enumerate(children) if n and (node[0] in NAMES))
    names = [node for node in children[at:] if node[0] in NAMES]
    measured = read_measure(reading, [node for node in children[1:at] if node[0] in MEASURES])
    if kind == "leaving" and _is_left_free(reading, measured, names):
        check_name(reading, names)
        check_text(reading, children[at + len(names) :])
        return (Target(reading.clause, "size", text=reading.text),)
    apart = child(children, "AT")
    if kind == "leaving" and not child(children, "THE") and reading.keys(names)[-1] in reading.words.left_free:
        check_name(reading, [*names, *(node for node in children if node[0] == "size")])
        return (Target(reading.clause, "size", text=reading.text),)
    if apart is not None:
        hint = f"write {example(reading.kitchen.language, 'leaving_any')}, with a name alone"
        raise reading.fail("clause-role", reading.clause.span, f"“{reading.said(names)}” is not read so", hint)
    check_held(reading, measured, _NAMINGS_HOLD)
    measure = as_one(reading, measured.measures) if measured.measures and not measured.article else None
    name: list[Node] = names[-1:] if len(names) > 1 else names
    if measured.start >= 0 and names:
        read, rest = with_unit(reading, measured, children[at : children.index(names[-1]) + 1])
        if read.measures and read.measures[0].unit and rest:
            measure, name = as_one(reading, read.measures), [node for node in rest if node[0] not in ("OF", "THE")]
    check_name(reading, names)
    said = reading.said(name)
    if kind == "as":
        the = child(children, "THE")
        if the and the[1].lower() in reading.words.pronouns and reading.before.rstrip(" ,"):  # whisk [as it melts]
            return (Manner(reading.clause),)
        _check_names(reading, name, the)
    return (Naming(reading.clause, kind, said, measure, also=measured.also),)  # type: ignore[arg-type]  # one of two


_NAMINGS_HOLD = frozenset(("also",))  # reserving 240 ml (1 cup) coconut cream


def _is_left_free(reading: Reading, measured: Measured, names: Sequence[Node]) -> bool:
    """`1 cm uncut at one end`, `a 2-cm wall`, `the last 2 cm bare`: a length that is no measure of food."""
    if reading.kitchen.larder.find(reading.keys(names)):
        return False
    long = bool(measured.size) and (measured.article or not measured.pieces)
    return long or any(leaf[0] == "LENGTH" for leaf in leaves(names))


def _check_names(reading: Reading, name: Sequence[Node], the: Node | None) -> None:
    """`as needed`, `as it cooks`, `as the meat roasts`: words that name nothing."""
    message = f"“{reading.text.strip()}” is not a name"
    said, until = reading.said(name), named(reading.kitchen.language, "until")
    if the and (the[1].lower() in reading.words.pronouns or _does(reading, reading.keys(name))):
        beside = example(reading.kitchen.language, "while", the=the[1], what=said)
        hint = f"for what runs beside it, {beside}; what to look for opens with {until}"
        raise reading.fail("clause-role", reading.clause.span, message, hint)
    if said.lower().split(" ")[0] in reading.words.no_name:
        raise reading.fail("clause-role", reading.clause.span, message, f"what to look for opens with {until}")


def _does(reading: Reading, words: tuple[str, ...]) -> bool:
    """Whether a name ends in what it does: `the meat roasts`, but not `the spring rolls`."""
    kitchen = reading.kitchen
    work = nouns(kitchen.language).singular(words[-1])
    named = kitchen.larder.find(words) or kitchen.larder.find(words[-1:]) or kitchen.cupboard.find(words[-1:])
    counted = kitchen.cupboard.count_word(words[-1])
    return len(words) > 1 and work != words[-1] and kitchen.verbs.get(work) is not None and not named and not counted


def _waits(reading: Reading, children: Sequence[Node]) -> tuple[Time, ...]:
    """`set aside for 20 min` is a wait as well."""
    timed = next((part for text in children if text[0] == "text" for part in text[1] if part[0] in LENGTHS), None)
    if timed is None:
        return ()
    return (Time(reading.clause, stretch(reading, ("stretch", [timed])), text=reading.text),)
