"""The first sample of the language, as the reader gives it."""

from __future__ import annotations

from tamis.model.recipe import Recipe

from .bench import food, recipe, tool


def rye_batons() -> Recipe:
    """Harbour rye batons: a poolish, a dough in stages, two loaves with steam."""
    return recipe(
        Poolish=[
            [
                food("80 g", "rye flour"),
                food("100 g", "water"),
                food("1/8 tsp", "instant yeast"),
                tool("tall jar"),
            ],
        ],
        Dough=[
            [
                food("420 g", "bread flour", also="3 cups"),
                food("1 1/4 tsp", "instant yeast"),
                tool("mixer bowl"),
            ],
            [food("270 g", "water")],
            [
                food("2 tsp", "fine salt"),
                food("1 tbsp", "caraway seed", preparation="lightly crushed"),
            ],
        ],
        Loaves=[
            [food("", "rye flour", purpose="for dusting")],
            [tool("floured baker's cloth")],
            [tool("baking stone"), tool("empty steel tray")],
            [food("120 ml", "boiling water", purpose="for steam")],
            [tool("wire rack")],
        ],
    )
