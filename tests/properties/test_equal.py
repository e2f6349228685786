"""Two compilations of one text are one value: whoever compares recipes compares what they say."""

from __future__ import annotations

import pytest
from kitchen_table import compiled, demo_texts


@pytest.mark.parametrize("stem", demo_texts())
def test_the_same_text_is_the_same_recipe(stem: str) -> None:
    text = demo_texts()[stem]
    assert compiled(stem, text).recipe == compiled(stem, text).recipe


def test_another_food_is_another_recipe() -> None:
    text = "title: Heap\nserves: 4\n\nPut [300 g bread flour] [in a bowl].\n"
    one, other = (compiled("heap", text.replace("bread", kind)).recipe for kind in ("bread", "rye"))
    assert one.products != other.products
    assert one.products[0].foods != other.products[0].foods
