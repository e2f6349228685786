"""Nothing is lost on the way: what a dish weighs is what went into it, whatever the shares and the detours."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.source import Source

FOODS = ["bread flour", "caster sugar", "water", "butter", "whole milk", "double cream", "oats", "honey"]
SHARES = {
    "half": Fraction(1, 2),
    "a third of": Fraction(1, 3),
    "a quarter of": Fraction(1, 4),
    "two thirds of": Fraction(2, 3),
}
NAMES = ["Base", "Cream", "Crumb", "Glaze", "Paste"]


@st.composite
def recipes(draw: st.DrawFn) -> tuple[str, Fraction]:
    """A recipe whose components are mixed, shared out, set aside and brought together; and its grams."""
    total = Fraction(0)
    blocks = []
    names = NAMES[: draw(st.integers(1, 4))]
    for name in names:
        foods = draw(st.lists(st.sampled_from(FOODS), min_size=1, max_size=4, unique=True))
        grams = [draw(st.integers(5, 900)) for _ in foods]
        total += sum(grams)
        mixed = " and ".join(f"[{weight} g {food}]" for weight, food in zip(grams, foods, strict=True))
        lines = [f"Put {mixed} [in a bowl]."]
        if draw(st.booleans()):
            extra = draw(st.integers(10, 90))
            total += extra
            lines += [f"[Set aside]. Put [{extra} g sesame seeds] [in a pan].", f"Add [the {foods[0]}]."]
        blocks.append(f"# {name}\n\n" + "\n".join(lines))
    dish = []
    for name in names:
        share = draw(st.sampled_from(["", *SHARES]))
        if share:
            dish += [f"Add [{share} the {name.lower()}].", f"Add [the rest of the {name.lower()}]."]
        else:
            dish.append(f"Add [the {name.lower()}].")
    blocks.append("# Dish\n\n" + "\n".join(dish))
    return "title: Heap\nserves: 4\n\n" + "\n\n".join(blocks) + "\n", total


@settings(max_examples=60, deadline=None)
@given(recipes())
def test_masses_are_conserved(made: tuple[str, Fraction]) -> None:
    text, grams = made
    compiled = compile(Source("heap.tamis", text), default_kitchen("en"), {})
    assert not [f for f in compiled.findings if f.rule.startswith(("product-", "batch-"))], text
    (dish,) = [product for product in compiled.recipe.products if product.dish]
    assert dish.mass.known
    assert dish.mass.lo == dish.mass.hi == grams, text
    assert sum(use.mass.lo for use in compiled.recipe.uses) == grams


@settings(max_examples=40, deadline=None)
@given(st.integers(10, 5000), st.sampled_from(list(SHARES.items())))
def test_a_shared_measure_is_used_once(grams: int, share: tuple[str, Fraction]) -> None:
    """`half of 300 g flour` and the rest of it are 300 g together."""
    word = share[0] if share[0].endswith("of") else f"{share[0]} of"
    text = (
        "title: Flour\nserves: 1\n\n# Flour\n\n"
        f"Put [{word} {grams} g bread flour] [in a bowl].\nAdd [the rest of the flour].\n"
    )
    compiled = compile(Source("flour.tamis", text), default_kitchen("en"), {})
    (dish,) = [product for product in compiled.recipe.products if product.dish]
    assert dish.mass.lo == grams
    assert [use.fraction for use in compiled.recipe.uses] == [share[1], 1 - share[1]]
