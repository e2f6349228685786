"""One clause: parsed, its records made, and everything that is wrong with its words reported once."""

from __future__ import annotations

from functools import cache
from importlib import import_module

from tamis.reading.clause import Reading, Unreadable
from tamis.reading.clauses import Ingredient, Manner
from tamis.reading.head_noun import read_named
from tamis.reading.parser import Fault
from tamis.reading.parsers import is_clause, parser_of
from tamis.reading.soundness import check_all_read
from tamis.reading.usual import usual
from tamis.source import Span
from tamis.syntax.document import Clause
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from tamis.diagnostics import Diagnostic
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clause import Node, NodeKind
    from tamis.reading.clauses import Read, VerbUse

    Reader = Callable[[Reading, Sequence[Node]], tuple[Read | VerbUse, ...] | None]

_READERS: Mapping[NodeKind, str] = {
    "reference": "things.read_reference",
    "equipment": "things.read_tool",
    "setting": "heat.read_setting",
    "target": "heat.read_target",
    "time": "timing.read_time",
    "cue": "timing.read_cue",
    "tending": "attending.read_tending",
    "pause": "attending.read_pause",
    "naming": "naming.read_naming",
    "division": "pieces.read_division",
    "repeat": "repeating.read_repeat",
    "meanwhile": "repeating.read_meanwhile",
    "manner": "attending.read_manner",
}
"""The file and the function that reads a role; most recipes have clauses of half of them."""


def read_clause(
    clause: Clause, kitchen: Kitchen, findings: list[Diagnostic], before: str = ""
) -> tuple[Read | VerbUse, ...]:
    """The records of a clause, mostly one; none, and one finding, where it cannot be read. `before` are the plain words
    that stand before it in its line."""
    parser = parser_of(kitchen)
    cut = parser.vocabulary.cutter.cut(clause.text)
    shape = parser.shape(cut)
    if isinstance(shape, Fault):
        from tamis.reading.refused import refused

        refused(Reading(clause, kitchen, findings, before), shape, read_alone)
        return ()
    record = usual(shape, clause, kitchen, cut)
    if record is not None:
        return (record,)
    reading, tree = Reading(clause, kitchen, findings, before), shape.tree(cut)
    role, children = tree[1][0]
    try:
        records = reader_of(role)(reading, children) if role in _READERS else read_named(reading, children, role)
        if records is None:
            from tamis.reading.guesses import no_clause
            from tamis.reading.phrase import Phrase

            no_clause(Phrase(reading, read_alone))
            return ()
        for at, one in enumerate(records):
            if isinstance(one, Ingredient) and one.goods is None:
                kept = _known_anyway(reading, one)
                if kept is None:
                    return ()
                records = (*records[:at], kept, *records[at + 1 :]) if isinstance(kept, Ingredient) else (kept,)
        check_all_read(reading, tree, cut)
    except Unreadable as unreadable:
        findings.append(unreadable.finding)
        return ()
    return records


@cache
def reader_of(role: NodeKind) -> Reader:
    """What reads the clauses of a role, loaded with the first of them."""
    file, _, name = _READERS[role].partition(".")
    reader: Reader = getattr(import_module(f"tamis.reading.{file}"), name)
    return reader


def read_alone(text: str, kitchen: Kitchen) -> tuple[tuple[Read | VerbUse, ...], list[Diagnostic]]:
    """Words read as a clause of their own, and what is found of them; nothing of what has no such form: what is wrong
    with it is nobody's question."""
    findings: list[Diagnostic] = []
    if not is_clause(text, kitchen):
        return (), findings
    clause = Clause(text, Span(0, len(text) + 2), kitchen.language)
    return read_clause(clause, kitchen, findings), findings


def _known_anyway(reading: Reading, food: Ingredient) -> Ingredient | Manner | None:
    """A food that the lists do not know is kept, and reported; None for what cannot be a food. What is made in food
    (`2 slits`) is none, and nothing is wrong with it."""
    from tamis.reading.unknown_food import is_mark, unknown_food

    if food.each is None and is_mark(food, reading.kitchen.language):
        return Manner(reading.clause, food.measures[0] if food.measures else None)
    return unknown_food(reading, food, read_alone)
