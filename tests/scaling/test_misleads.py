"""Where a factor misleads, and where it does not (`misleads.case`)."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from tamis.scaling.misleads import misleading
from tests.cases import Case, read_cases, rewrite

from .kitchen_table import KITCHEN, one_line

CASES = read_cases(Path(__file__).with_name("misleads.case"))


def said(body: str) -> str:
    recipe = one_line(body.rstrip())
    text = recipe.source.text
    lines = []
    for finding in misleading(recipe, Fraction(3), KITCHEN):
        places = [finding.span, *(label.span for label in finding.labels)]
        lines.append(f"{finding.message} ({finding.rule})")
        lines += [f"  {text[place.start : place.end]}" for place in places]
    return "\n".join(lines) or "nothing"


HINTS = (
    (
        "Whisk [3 egg whites] [in a bowl] [until stiff], and fold in [3 egg yolks] and [100 g boiled ham].\n"
        "Melt [15 g butter] [in a frying pan], pour the mixture in and [fry for 4 min] [until 71 °C inside].",
        "what is light falls while it waits",
    ),
    (
        "Spread [600 g oats] [on 2 baking trays].\n[Bake for 20 min at 180 °C].\n"
        "Turn [the oven] off and [leave for 10 min].",
        "its first heat",
    ),
    (
        "Lay [8 rolls] [on 2 baking trays].\n[Bake for 9 min at 230 °C].\n"
        "Lower [the oven] [to 180 °C] and [bake for 9 min].",
        "its first heat",
    ),
    (
        "Mix [400 g strong white flour], [5 g instant yeast] and [280 g water] [in a bowl].\nCover and [rise for 1 h].",
        "where dough rises",
    ),
)


@pytest.mark.parametrize(("body", "hint"), HINTS)
def test_what_to_do(body: str, hint: str) -> None:
    assert any(hint in finding.hint for finding in misleading(one_line(body), Fraction(3), KITCHEN))


def test_what_is_baked_already_is_no_batter() -> None:
    body = (
        "Whisk [2 eggs] with [200 g caster sugar] [in a bowl] [until light], and fold in [200 g plain flour].\n"
        "Turn [into a loaf tin], [bake for 30 min at 180 °C] and cool.\n"
        "Cut [into 20 slices], lay them [on 2 baking trays] and [toast for 20 min at 160 °C] [in the oven]."
    )
    found = misleading(one_line(body), Fraction(3), KITCHEN)
    assert [finding.hint for finding in found if finding.rule == "scale-oven"] == ["there are 2 racks"]


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_misleads(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, said)
        return
    assert said(case.given) == case.expected
