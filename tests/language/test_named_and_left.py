"""What is named with `as` or left behind, and shared out."""

from __future__ import annotations

import pytest

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.model.recipe import Recipe
from tamis.quantity.display import number
from tamis.source import Source


def dish(body: str) -> tuple[Recipe, list[str]]:
    """A recipe and the rules that find something in it."""
    compiled = compile(Source("dish.tamis", f"title: Dish\nserves: 4\n\n{body}"), default_kitchen(), {})
    return compiled.recipe, [finding.rule for finding in compiled.findings]


GLAZED = """\
# Pastry

Whisk [100 g icing sugar] with [2 tbsp water] [as glaze].
Roll [500 g puff pastry] [to 4 mm thick].
Brush with [{first}].
[Bake for 20 min at 200 °C] [until golden].
Brush with [{second}].
[Bake for 5 min at 200 °C] [until golden].
Brush with [{last}].
"""


HEADED = GLAZED.replace(" [as glaze]", "").replace("# Pastry", "# Glaze").replace("Roll", "\n# Pastry\n\nRoll")


@pytest.mark.parametrize("body", [GLAZED, HEADED], ids=["named", "a component"])
@pytest.mark.parametrize(
    ("first", "second", "last", "parts"),
    [
        ("half the glaze", "a quarter of the glaze", "the rest of the glaze", "½ ¼ ¼"),
        ("a third of the glaze", "another third of the glaze", "the remaining glaze", "⅓ ⅓ ⅓"),
        ("a quarter of the glaze", "half the glaze", "the rest of the glaze", "¼ ½ ¼"),
    ],
)
def test_what_is_named_is_shared_out(body: str, first: str, second: str, last: str, parts: str) -> None:
    recipe, found = dish(body.format(first=first, second=second, last=last))
    assert found == []
    assert [number(taking.fraction) for taking in recipe.takings if taking.fraction] == parts.split()


def test_two_that_are_named_alike_are_still_told() -> None:
    body = GLAZED.replace("as glaze", "as white glaze").format(
        first="half the white glaze", second="2 tbsp of the glaze", last="the rest of the glaze"
    )
    body = body.replace(
        "Roll",
        "Whisk [50 g icing sugar] with [1 tbsp coffee] [as brown glaze].\nBrush with [half the brown glaze].\nRoll",
    )
    assert "product-ambiguous" in dish(body)[1]
