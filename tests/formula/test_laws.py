"""Laws of formulas, on doughs that hypothesis makes up."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.formula.formula import Cell, build_formula
from tamis.formula.printing import formula_csv, formula_markdown, formula_text
from tamis.quantity.amount import Amount

from .kneading import KITCHEN, formula, made

FOODS = ("bread flour", "rye flour", "water", "milk", "fine salt", "instant yeast", "honey", "butter", "moon dust")
WEIGHTS = st.integers(1, 3000)
REST = "[Leave overnight].\n"


@st.composite
def foods(draw: st.DrawFn, least: int = 1) -> str:
    """Some foods by weight, flour always among them."""
    names = draw(st.lists(st.sampled_from(FOODS[1:]), min_size=least, max_size=6))
    return ", ".join(f"[{draw(WEIGHTS)} g {name}]" for name in [FOODS[0], *names])


@st.composite
def breads(draw: st.DrawFn) -> str:
    """A dough with up to two preferments, each of which goes whole or by half into the next component."""
    text, before = "", ""
    for name in [*draw(st.sampled_from([[], ["Poolish"], ["Build", "Levain"]])), "Dough"]:
        text += f"# {name}\n\nMix {draw(foods())}{before}.\n{REST}\n"
        before = f" and [{draw(st.sampled_from(['', 'half of ', 'a third of ']))}the {name.lower()}]"
    return text


def add(cells: list[Cell | None]) -> tuple[Amount, Amount]:
    there = [cell for cell in cells if cell is not None]
    weight = percent = Amount(Fraction(0), Fraction(0))
    for cell in there:
        assert cell.percent is not None
        weight, percent = weight.plus(cell.grams), percent.plus(cell.percent)
    return weight, percent


@settings(deadline=None)
@given(breads(), st.sampled_from(["total", "final"]))
def test_every_column_adds_up(text: str, base: str) -> None:
    built = build_formula(made(text).recipe, KITCHEN, "final" if base == "final" else "total")
    if built is None:
        return  # so little flour that it binds a sauce
    assert add([row.total for row in built.rows]) == (built.total.grams, built.total.percent)
    assert add([row.final for row in built.rows]) == (built.final.grams, built.final.percent)
    for at, column in enumerate(built.columns):
        assert add([row.parts[at] for row in built.rows]) == (column.cell.grams, column.cell.percent)


@settings(deadline=None)
@given(breads())
def test_flour_is_always_100_percent(text: str) -> None:
    built = build_formula(made(text).recipe, KITCHEN)
    if built is None:
        return
    _, percent = add([row.total for row in built.rows if row.goods is not None and row.goods.flour])
    assert percent == Amount(Fraction(100), Fraction(100))


@settings(deadline=None)
@given(foods(), foods())
def test_what_goes_in_whole_weighs_what_the_table_says(first: str, second: str) -> None:
    done = made(f"# Poolish\n\nMix {first}.\n{REST}\n# Dough\n\nMix {second} and [the poolish].\n{REST}")
    built = build_formula(done.recipe, KITCHEN)
    if built is None:
        return
    for row in done.table.rows:
        line = next(r for r in built.rows if (r.goods.id if r.goods else r.name) == (row.id or row.name))
        assert line.total is not None
        assert line.total.grams == Amount(row.mass.lo, row.mass.hi)
    dish = next(product for product in done.recipe.products if product.dish)
    assert built.total.grams == Amount(dish.mass.lo, dish.mass.hi)


@settings(deadline=None)
@given(st.integers(1, 5000), st.lists(st.integers(1, 120), min_size=1, max_size=4))
def test_percentages_of_a_wanted_dough_weigh_the_dough(grams: int, percents: list[int]) -> None:
    more = ", ".join(f"[{percent} % {name}]" for percent, name in zip(percents, FOODS[2:], strict=False))
    built = formula(made(f"Mix [100 % bread flour], {more}.", f"dough: {grams} g\n"))
    assert built.total.grams == Amount(Fraction(grams), Fraction(grams))
    said = [row.total.percent.lo for row in built.rows if row.total and row.total.percent]
    assert sorted(said) == sorted([Fraction(100), *map(Fraction, percents)])


@settings(deadline=None)
@given(breads(), st.integers(40, 120))
def test_it_can_always_be_printed(text: str, width: int) -> None:
    built = build_formula(made(text).recipe, KITCHEN)
    if built is None:
        return
    assert formula_text(built, width) and formula_csv(built)
    rows = [line for line in formula_markdown(built).splitlines() if line.startswith("|")]
    assert len({line.count(" |") for line in rows}) == 1
