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


BAKE = "[Bake for 30 min] [in the oven] [until done]."


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
        (f"Set [8 apples] [on 3 baking trays].\n{BAKE}", "4/3", []),  # two loads before and after, of two racks
        (f"Set [8 apples] [on 3 baking trays].\n{BAKE}", "5/3", ["scale-oven"]),
        ("Set [8 apples] [on 3 baking trays].", "5/3", []),  # they never lie in the oven
        ("Set [8 apples] [on 3 baking trays] and [chill for 1 h].", "5/3", []),
        (f"Set [8 apples] [on 3 baking trays] and [chill for 1 h].\n{BAKE}", "5/3", ["scale-oven"]),
        (f"Line [3 baking trays] [with baking paper].\nSet [8 apples] on them.\n{BAKE}", "5/3", ["scale-oven"]),
        (
            f"Set [8 apples] [on 3 trays] and [chill for 1 h].\nMove them [into 2 loaf tins].\n{BAKE}",
            "2",
            ["scale-pan"],
        ),
        (f"Set [8 apples] [in 2 loaf tins].\n{BAKE}\nTurn out [on to 3 trays].", "2", ["scale-pan"]),
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
        ("Press [300 g rolled oats] [into a 20 cm baking dish].", "3", ["scale-pan"]),
        (f"Press [300 g rolled oats] [into a 20 cm baking dish].\n{BAKE}", "3", ["scale-oven", "scale-pan"]),
        ("Press [300 g rolled oats] [into a bowl].", "3", []),
        ("Press [300 g rolled oats] [into 2 loaf tins].", "2", ["scale-pan"]),
        (f"Press [300 g rolled oats] [into 2 loaf tins].\n{BAKE}", "3", ["scale-oven", "scale-pan"]),
        # … and what is used by the piece.
        ("Pin [300 g rolled oats] [with 8 toothpicks].", "3", ["scale-vessel"]),
        ("Stir [300 g rolled oats] [with 2 forks].", "3", []),
    ],
)
def test_edges(line: str, factor: str, rules: list[str]) -> None:
    assert [finding.rule for finding in said(one_line(line), factor)] == rules


def test_one_vessel_may_be_several_in_several_loads() -> None:
    (found,) = said(one_line(f"Press [300 g rolled oats] [into a baking dish].\n{BAKE}"), 3)
    assert found.hint == "take 3 baking dishes, which is 2 loads of the oven, or one that holds 3 times as much"


@pytest.mark.parametrize(
    ("line", "loads"),
    [
        ("Set [1 turkey (5 kg)] [in a roasting tin].", "3 loads of the oven: a joint of 5 kg fills an oven"),
        ("Set [1 chicken (1.5 kg)] [in a roasting tin].", "2 loads of the oven, or one"),
        ("Set [12 chicken thighs (200 g each)] [in a roasting tin].", "2 loads of the oven, or one"),
    ],
)
def test_a_large_joint_fills_an_oven(line: str, loads: str) -> None:
    (found,) = said(one_line(f"{line}\n[Roast for 2 h] [in the oven] [until 74 °C inside]."), 3)
    assert loads in found.hint


@pytest.mark.parametrize(
    ("line", "waits"),
    [
        ("Whisk [4 eggs] with [100 g sugar] [until light and thick, about 5 min].", "falls"),
        ("Beat [4 eggs] with [500 ml whole milk].", "keep cold"),
        ("Mix [4 eggs] with [200 g plain flour] and [2 tsp baking powder].", "falls"),
        ("Mix [300 g plain flour] with [200 g butter].", "keep cold"),
    ],
)
def test_what_waits_for_its_load(line: str, waits: str) -> None:
    found = said(one_line(f"{line}\nShare out [between 2 loaf tins].\n{BAKE}"), 3)
    assert [waits in finding.hint for finding in found if finding.rule == "scale-oven"] == [True]


def test_a_house_chooses_levels() -> None:
    recipe, factor = example("scale-eggs", "bad")
    settings = KITCHEN.settings._replace(checks={"scale-eggs": "off"})
    assert misleading(recipe, factor, KITCHEN._replace(settings=settings)) == []
    settings = KITCHEN.settings._replace(checks={"scale-eggs": "information"})
    (found,) = misleading(recipe, factor, KITCHEN._replace(settings=settings))
    assert found.severity == "information"
