"""The demo library's loaf, as the reader gives it."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.recipe import Recipe

from .bench import food, recipe, tool


def rye_loaves() -> Recipe:
    """Harbour rye tin loaves: a scald, a dough, two loaves in tins."""
    return recipe(
        Scald=[
            [
                food("300 g", "boiling water"),
                food("140 g", "rye flour"),
                food("1 tbsp", "caraway seed", preparation="lightly crushed"),
                tool("mixing bowl"),
            ],
        ],
        Dough=[
            [
                food("480 g", "bread flour", also="3 1/2 cups"),
                food("100 g", "rye flour"),
                food("2 1/4 tsp", "instant yeast"),
                food("2 1/2 tsp", "fine salt"),
                tool("mixer bowl"),
            ],
            [food("210 g", "water")],
        ],
        Loaves=[
            [tool("loaf tins", number=Fraction(2)), food("", "sunflower oil", purpose="for greasing")],
            [food("", "rye flour", purpose="for dusting"), tool("tins", definite=True)],
            [tool("oven", definite=True)],
            [tool("wire rack")],
        ],
    )
