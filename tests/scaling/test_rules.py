"""A rule of scaling speaks of its bad example and not of its good one, and only when a factor is given."""

from __future__ import annotations

from fractions import Fraction

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.checks.registry import names, page, scaling_names
from tamis.cli.findings import as_text
from tamis.compile import Compiled
from tamis.diagnostics import Diagnostic
from tamis.scaling.misleads import misleading

from .kitchen_table import KITCHEN, compiled, one_line


def example(name: str, which: str) -> tuple[Compiled, Fraction]:
    rule = page(name)
    (text,) = getattr(rule, which).values()
    assert isinstance(text, str) and rule.factor is not None
    return compiled(text), rule.factor


def said(recipe: Compiled, factor: Fraction | str) -> list[Diagnostic]:
    return misleading(recipe, Fraction(factor), KITCHEN)


@pytest.mark.parametrize("name", scaling_names())
def test_bad(name: str, snapshot: SnapshotAssertion) -> None:
    """The messages are kept as snapshots, to be read by a person when they change."""
    recipe, factor = example(name, "bad")
    assert recipe.findings == ()
    found = said(recipe, factor)
    assert {finding.rule for finding in found} == {name}
    assert {finding.severity for finding in found} == {page(name).level}
    assert "\n\n".join(as_text(recipe.source, finding) for finding in found) == snapshot


@pytest.mark.parametrize("name", scaling_names())
def test_good(name: str) -> None:
    recipe, factor = example(name, "good")
    assert recipe.findings == ()
    assert said(recipe, factor) == []


@pytest.mark.parametrize("name", scaling_names())
def test_three_parts_and_no_word_without_a_factor(name: str) -> None:
    rule = page(name)
    assert len(rule.parts) == 3
    assert all(part.rstrip().endswith(".") for part in rule.parts)
    assert said(example(name, "bad")[0], "1") == []
    assert name not in names()


@pytest.mark.parametrize(
    ("line", "factor", "rules"),
    [
        # As many tins as before hold it a little fuller; not half as much again.
        ("Press [300 g rolled oats] [into a 20 cm square tin].", "11/10", []),
        ("Press [300 g rolled oats] [into a 20 cm square tin].", "3/2", ["scale-pan"]),
        ("Press [300 g rolled oats] [into a 20 cm square tin].", "1/2", ["scale-pan"]),
        ("Lay [1 leg of lamb] [in a bowl].", "5/3", ["scale-joints"]),
        ("Lay [8 chicken thighs] [in a bowl].", "4/3", []),
        ("Lay [1 cauliflower] [in a bowl].", "5/3", []),
        ("Stir [3 eggs] [in a bowl].", "2", []),
        ("Stir [3 eggs] [in a bowl].", "7/6", ["scale-eggs"]),
        ("Stir [3 eggs] [in a bowl].", "1/3", []),
        ("Stir [6 eggs] [in a bowl].", "529/400", []),  # 7.94: eight, within the tolerance of what is shown
        ("Stir [300 g rolled oats] with [5 g fine salt] [in a bowl].", "3", []),
        ("Stir [300 g rolled oats] with [5 g fine salt] [in a bowl].", "31/10", ["scale-seasoning"]),
        ("Stir [300 g rolled oats] with [5 g fine salt] [in a bowl].", "1/4", ["scale-seasoning"]),
        ("Set [8 apples] [on 3 baking trays].", "4/3", []),  # two loads before and after, of two racks
        ("Set [8 apples] [on 3 baking trays].", "5/3", ["scale-oven"]),
        ("Stir [500 g plain flour] with [300 g water] [in the mixer bowl].", "5/2", []),
        ("Stir [500 g plain flour] with [300 g water] [in the mixer bowl].", "51/20", ["scale-bowl"]),
        ("Fill [800 g honey] [into 2 jars].", "2", ["scale-pan"]),
        # Whatever food is baked, set or served in, without size or number.
        ("Press [300 g rolled oats] [into a loaf tin].", "3", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into the loaf tin].", "3", []),
        ("Press [300 g rolled oats] [into 1 loaf tin].", "3", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into a loaf tin].", "5/4", []),
        ("Press [300 g rolled oats] [into a loaf tin].", "1/3", []),
        ("Press [300 g rolled oats] [into a mould].", "2", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into buttered moulds].", "2", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into a casserole].", "2", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into a baking dish].", "3", ["scale-vessel"]),
        ("Press [300 g rolled oats] [into a 20 cm baking dish].", "3", ["scale-oven", "scale-pan"]),
        ("Press [300 g rolled oats] [into a bowl].", "3", []),
        ("Press [300 g rolled oats] [into 2 loaf tins].", "2", ["scale-pan"]),
        ("Press [300 g rolled oats] [into 2 loaf tins].", "3", ["scale-oven", "scale-pan"]),
        # … and what is used by the piece.
        ("Pin [300 g rolled oats] [with 8 toothpicks].", "3", ["scale-vessel"]),
        ("Stir [300 g rolled oats] [with 2 forks].", "3", []),
    ],
)
def test_edges(line: str, factor: str, rules: list[str]) -> None:
    assert [finding.rule for finding in said(one_line(line), factor)] == rules


def test_one_vessel_may_be_several_in_several_loads() -> None:
    (found,) = said(one_line("Press [300 g rolled oats] [into a baking dish]."), 3)
    assert found.hint == ("take 3 baking dishes, which is 2 loads of the oven, or one that holds 3 times as much")


def test_a_house_chooses_levels() -> None:
    recipe, factor = example("scale-eggs", "bad")
    settings = KITCHEN.settings._replace(checks={"scale-eggs": "off"})
    assert misleading(recipe, factor, KITCHEN._replace(settings=settings)) == []
    settings = KITCHEN.settings._replace(checks={"scale-eggs": "information"})
    (found,) = misleading(recipe, factor, KITCHEN._replace(settings=settings))
    assert found.severity == "information"
