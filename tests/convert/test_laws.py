"""What holds for every question."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from tamis.convert.answer import answer
from tamis.convert.asked import Asked, Degrees, read_asked
from tamis.convert.degrees import heat_lines, heat_of
from tamis.convert.measures import worths
from tamis.convert.printing import answer_data, answer_text
from tamis.kitchen.house import default_kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure

KITCHEN = default_kitchen("en")
FOODS = [
    goods.name
    for id in KITCHEN.larder.ids()
    if (goods := KITCHEN.larder.get(id)) is not None and KITCHEN.larder.density(goods) is not None
]
WORDS = [
    "1", "2/3", "½", "1–2", "180", "-", "°", "C", "F", "fan", "gas mark", "cup", "tbsp", "g", "ml", "cloves", "garlic",
    "sifted", "flour", "of", "a", "pinch", "juice", "lemon", "(", ")", "×", "plus", "or", "%", "the", "[", "½½", "1/0",
    "oven", "inch", ",", "eggs",
]  # fmt: skip


def asked(number: Fraction, unit: str, food: str) -> Asked:
    found = read_asked(f"1 {unit} {food}", KITCHEN)
    assert found.item is not None
    return found._replace(measures=(Measure(Amount(number, number), unit),))


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FOODS), st.fractions(min_value=Fraction(1, 100), max_value=5000, max_denominator=100))
def test_there_and_back_is_exact(food: str, grams: Fraction) -> None:
    """Grams to millilitres and back, by the usual density, is the same number."""
    there = worths(asked(grams, "g", food), KITCHEN)
    assert there.ml is not None
    back = worths(asked(there.ml.usual.lo, "ml", food), KITCHEN)
    assert back.grams is not None
    assert back.grams.usual.lo == grams


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FOODS), st.sampled_from(["cup", "tbsp", "ml", "g", "oz"]))
def test_the_usual_figure_lies_in_the_range(food: str, unit: str) -> None:
    found = worths(asked(Fraction(1), unit, food), KITCHEN)
    for figure in (found.grams, found.ml):
        assert figure is not None
        assert figure.least <= figure.usual.lo <= figure.usual.hi <= figure.most


@settings(max_examples=150, deadline=None)
@given(st.lists(st.sampled_from(WORDS), max_size=7).map(" ".join) | st.text(max_size=30))
def test_no_question_raises(text: str) -> None:
    found = answer(read_asked(text, KITCHEN), KITCHEN)
    assert answer_text(found, 60)
    assert answer_data(found)["asked"] == found.asked
    assert found.sections or found.notes or found.problem


@settings(max_examples=100, deadline=None)
@given(st.fractions(min_value=54, max_value=79, max_denominator=10), st.sampled_from(["c", "f"]))
def test_a_limit_shown_is_at_least_the_limit(c: Fraction, scale: str) -> None:
    degrees = Degrees(Amount(c, c), "c") if scale == "c" else Degrees(Amount(c * 9 / 5 + 32, c * 9 / 5 + 32), "f")
    heat = heat_of(degrees)
    assert heat is not None
    text = dict(heat_lines(heat, degrees, "en"))["rounded up"]
    shown = Fraction(text.split()[0])
    exact = heat.f.lo if scale == "c" else heat.c.lo
    assert exact <= shown < exact + 1


@given(st.integers(min_value=80, max_value=320))
def test_an_oven_is_set_to_the_five(c: int) -> None:
    degrees = Degrees(Amount(Fraction(c), Fraction(c)), "c")
    heat = heat_of(degrees)
    assert heat is not None
    first, second = dict(heat_lines(heat, degrees, "en"))["oven"].split(", ")
    for text, exact, near in ((first, heat.c.lo, Fraction(5, 2)), (second, heat.f.lo, Fraction(8))):
        shown = int(text.split(" ")[0])
        assert shown % 5 == 0
        assert abs(shown - exact) <= (near if shown % 25 == 0 else Fraction(5, 2))
