"""The places that a record names are those of its words, in every recipe and in every clause of the tests."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from kitchen_table import compiled, demo_texts

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.reading.clauses import Cue, Ingredient, Pause, Read, Setting, Target, Time, Tool
from tamis.source import Source

_CLAUSES = Path(__file__).parents[1] / "language" / "clauses.tsv"


def _clauses() -> list[str]:
    lines = _CLAUSES.read_text(encoding="utf-8").splitlines()
    return [line.partition("\t")[0] for line in lines if line and not line.startswith("#")]


def _reads(result: Compiled) -> Iterator[Read]:
    return (read for action in result.recipe.actions for read in action.reads)


def _wrong(read: Read, source: Source) -> str:
    """What a record says of a place that is not so; "" where all is."""
    if isinstance(read, Ingredient):
        if read.measure_text != source.slice(read.measure_span):
            return f"measure “{read.measure_text}” is not “{source.slice(read.measure_span)}”"
        if source.slice(read.name_span) != read.name:
            return f"name “{read.name}” is not “{source.slice(read.name_span)}”"
        for text, spans in ((read.preparation, read.preparation_spans), (read.purpose, read.purpose_spans)):
            said = ", ".join(map(source.slice, spans))
            if text != said and not (text and not spans):
                return f"“{text}” is not “{said}”"
    if isinstance(read, Tool) and source.slice(read.size_span) != read.size:
        return f"size “{read.size}” is not “{source.slice(read.size_span)}”"
    if isinstance(read, Tool) and (read.name not in source.slice(read.clause.span) or not read.name):
        return f"name “{read.name}” is not in “{source.slice(read.clause.span)}”"
    setting = read.setting if isinstance(read, Time | Pause) else read
    warm = isinstance(setting, Setting | Target) and setting.kind == "temperature" and not isinstance(read, Cue)
    if warm and not any(letter.isdigit() for letter in source.slice(setting.degrees_span)):
        return f"no degrees in “{source.slice(setting.degrees_span)}”"
    return ""


@pytest.mark.parametrize("stem", demo_texts())
def test_in_recipes(stem: str) -> None:
    result = compiled(stem, demo_texts()[stem])
    assert [wrong for read in _reads(result) if (wrong := _wrong(read, result.source))] == []


def test_in_clauses() -> None:
    clauses = _clauses()
    assert len(clauses) > 500
    wrong = []
    for start in range(0, len(clauses), 40):
        lines = "\n".join(f"Take [{clause}]." for clause in clauses[start : start + 40])
        source = Source("dish.tamis", f"title: Dish\nserves: 4\n\n# Dish\n\n{lines}\n")
        result = compile(source, default_kitchen("en"), {})
        wrong += [f"{read.clause.text}: {said}" for read in _reads(result) if (said := _wrong(read, source))]
    assert wrong == []
