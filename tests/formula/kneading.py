"""Recipes for the tests of percentages and formulas, compiled."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from runpy import run_path
from typing import Any

from tamis.compile import Compiled, compile
from tamis.formula.formula import Base, Formula, build_formula
from tamis.kitchen.house import default_kitchen, house_kitchen
from tamis.source import Source

KITCHEN = default_kitchen("en")
HEAD = "title: Test\nmakes: 1 loaf\n"

_VALIDATOR = run_path(str(Path(__file__).parents[1] / "table" / "schema.py"))


def faults(value: Any, schema: dict[str, Any]) -> Iterator[str]:
    """What is wrong with data by its schema, by the validator of the table's tests."""
    yield from _VALIDATOR["faults"](value, schema, schema)


def made(text: str, header: str = "", settings: str = "") -> Compiled:
    """A recipe compiled; `text` begins with its first heading, or with the first line of the only component."""
    heading = "" if text.startswith("#") else "# Test\n\n"
    kitchen = house_kitchen(settings, None)[0] if settings else KITCHEN
    return compile(Source("test.tamis", f"{HEAD}{header}\n{heading}{text}\n"), kitchen, {})


def rules(done: Compiled) -> list[str]:
    return [finding.rule for finding in done.findings]


def grams(done: Compiled, name: str) -> list[Fraction]:
    """What each use of a food weighs, in order; single figures only."""
    uses = [use for use in done.recipe.uses if use.ingredient.name.endswith(name)]
    assert uses and all(use.mass.lo == use.mass.hi for use in uses)
    return [use.mass.lo for use in uses]


def formula(done: Compiled, base: Base = "total") -> Formula:
    built = build_formula(done.recipe, KITCHEN, base)
    assert built is not None
    return built
