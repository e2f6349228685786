"""Recipes compiled and scaled for the tests, in the default kitchen."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path

from tamis.compile import Compiled, compile
from tamis.kitchen.house import Kitchen, default_kitchen
from tamis.library.library import open_library
from tamis.publish.method import method_of
from tamis.scaling.scale import Scaled, scaled
from tamis.source import Source

KITCHEN: Kitchen = default_kitchen("en")
CHECKOUT = Path(__file__).parents[2]


def compiled(text: str) -> Compiled:
    """A recipe's text compiled."""
    return compile(Source("example.tamis", text), KITCHEN, {})


def one_line(line: str, header: str = "makes: 2 loaves\nserves: 4\n") -> Compiled:
    """A recipe of one component, with these lines."""
    return compiled(f"title: Example\n{header}\n# Example\n\n{line}\n")


def sentence(made: Scaled) -> str:
    """The method of a scaled recipe in plain words."""
    sections = method_of(made.shown, made.compiled.table, KITCHEN)
    return " ".join(step.plain for section in sections for step in section.steps)


def times(recipe: Compiled, factor: Fraction | int | str) -> Scaled:
    """The recipe, so many times."""
    return scaled(recipe, Fraction(factor), KITCHEN)


@cache
def library() -> tuple[Compiled, ...]:
    """The demonstration recipes and the examples, compiled."""
    folders = (CHECKOUT / "recipes", CHECKOUT / "tests" / "golden" / "examples")
    return tuple(entry.compiled for folder in folders for entry in open_library(folder).entries)
