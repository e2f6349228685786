"""What clauses and short recipes are read as: a case is a clause a line or a recipe's lines, then what comes of them.

`reading/*.case`, found by glob. Each case was run with the compiler as it was before its kind of clause was read, and
kept only where that told something else.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.duration import Duration
from tamis.quantity.measure import Measure
from tamis.source import Source, Span
from tests.cases import Case, find_cases, rewrite

_FOLDER = Path(__file__).with_name("reading")
_QUIET = ("clause", "name_span", "role", "verb_text", "measure_text", "states", "name", "noun", "hands")


def told(given: str) -> str:
    """What is read of a recipe's lines, or of each line as a clause."""
    if "[" in given:
        return _recipe(given)
    return "\n".join(_clause(line) for line in given.strip().splitlines())


def _compiled(body: str) -> Compiled:
    head = "" if body.startswith("# ") else "# Dish\n"
    return compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{head}{body}"), default_kitchen("en"), {})


def _faults(result: Compiled) -> list[str]:
    return [
        f"{finding.severity} {finding.rule}: {finding.message}"
        for finding in result.findings
        if finding.severity == "error" or (finding.severity == "warning" and finding.rule in _OF_READING)
    ]


_OF_READING = ("number-unclear", "two-times", "verb-unknown", "unknown-verb", "bracket-stray", "clause-in-note")


def _clause(clause: str) -> str:
    result = _compiled(f"Take [1 kg potatoes] and [{clause}].\n")
    reads = [read for action in result.recipe.actions for read in action.reads][1:]
    faults = [fault for fault in _faults(result) if fault.split()[1].rstrip(":") in _OF_CLAUSES]
    return f"{clause}: {'; '.join([*map(_record, reads), *faults])}"


_OF_CLAUSES = (
    "clause-role", "clause-syntax", "number-unclear", "range-reversed", "unit-unknown", "unit-unclear",
    "unknown-ingredient", "measures-unclear", "product-unknown", "time-without-unit",
)  # fmt: skip


def _record(record: Any) -> str:
    name = getattr(record, "name", "") or getattr(record, "noun", "")
    quiet = _QUIET if record.role in ("target", "cue") else (*_QUIET, "text")
    said = [f"{key} {_value(value)}" for key, value in record._asdict().items() if key not in quiet and _says(value)]
    return " ".join(filter(None, (record.role, f"“{name}”" if name else "", ", ".join(said))))


def _says(value: Any) -> bool:
    if isinstance(value, Span) or (isinstance(value, tuple) and any(isinstance(part, Span) for part in value[:1])):
        return False  # where words stand: tests/properties/test_places.py
    return value is True or value not in (None, "", (), False, Fraction(1))


def _value(value: Any) -> str:
    if isinstance(value, Measure):
        return f"{_value(value.amount)} {value.unit}".strip()
    if isinstance(value, Amount):
        return str(value.lo) if value.single else f"{value.lo}–{value.hi}"
    if isinstance(value, Duration):
        return _length(value)
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        named = getattr(value, "name", "") or getattr(value, "base", "") or getattr(value, "id", "")
        return str(named) or " ".join(_value(part) for part in value if _says(part) and not hasattr(part, "span"))
    if isinstance(value, tuple):
        return " + ".join(map(_value, value))
    return "yes" if value is True else str(value)


def _length(length: Duration) -> str:
    high = "" if length.single else "–" if length.hi is None else f"–{length.hi / 60}"
    return f"{length.lo / 60}{high} min"


def _recipe(body: str) -> str:
    result = _compiled(body)
    recipe = result.recipe
    lines = []
    for action in recipe.actions:
        work = action.work
        wait = _length(work.wait) if work.wait and work.given == "text" else ""
        times = f"{action.times * action.batches} times" if action.times * action.batches != 1 else ""
        takes = [f"takes {recipe.products[recipe.takings[at].product].name}" for at in action.takings]
        foods = [recipe.uses[use].ingredient.name for use in action.uses]
        after = f"after {', '.join(str(at + 1) for at in action.after)}" if action.after else ""
        tools = [tool.equipment.name for tool in action.tools]
        preheat = recipe.places.lines[action.number].preheat
        heat = f"oven at {_value(preheat)} °C" if preheat else ""
        verbs = " ".join(use.verb.base for use in action.verbs)
        said = "; ".join(filter(None, (", ".join(foods), wait, times, heat, *takes, ", ".join(tools), after)))
        lines.append(f"{action.number + 1} {verbs}: {said}".rstrip(": "))
    products = [
        f"{product.name}: {float(product.mass.lo):.4g} g"
        for product in recipe.products
        if product.mass.lo and product.dish
    ]
    return "\n".join([*lines, *products, *_faults(result)])


@pytest.mark.parametrize("case", find_cases(_FOLDER), ids=lambda case: f"{case.file.stem}: {case.name}")
def test_case(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, told)
        return
    assert told(case.given) == case.expected
