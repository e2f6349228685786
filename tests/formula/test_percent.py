"""Percent forms get weights: of which flour, of which batch, and what is said where there is no base."""

from __future__ import annotations

from fractions import Fraction

import pytest

from .kneading import grams, made, rules

WAIT = "[Rise for 1 h]."
PERCENTS = "Mix [72 % bread flour], [28 % wholemeal flour], [66 % water], [2 % fine salt] and [1 % instant yeast]."


def test_of_the_headers_flour() -> None:
    done = made(PERCENTS, "flour: 1 kg\n")
    assert [grams(done, name) for name in ("bread flour", "water", "salt")] == [[720], [660], [20]]
    assert done.recipe.products[-1].mass.lo == 1690


def test_of_the_flour_that_makes_the_wanted_dough() -> None:
    done = made(PERCENTS, "dough: 1 kg\n")
    assert grams(done, "water") == [Fraction(1000) * 66 / 169]
    assert done.recipe.products[-1].mass.lo == 1000


def test_of_the_flour_weighed_in_the_component_also_if_it_comes_later() -> None:
    text = "Stir [60 % water] and [2 % fine salt] into [300 g bread flour] and [100 g rye flour]."
    done = made(text, "flour: 1 kg\n")
    assert grams(done, "water") == [240]


def test_each_component_has_a_base_of_its_own() -> None:
    text = (
        f"# First build\n\nStir [60 g rye flour] with [90 % water].\n{WAIT}\n\n# Dough\n\nMix [100 % "
        "bread flour], [70 % water] and [the first build]."
    )
    assert grams(made(text, "flour: 500 g\n"), "water") == [54, 350]


@pytest.mark.parametrize("header", ["flour: 1 kg\n", "dough: 1.75 kg\n"])
def test_purposes_and_what_is_optional_make_no_base_and_no_part(header: str) -> None:
    text = (
        "Mix [100 % bread flour], [75 % water] and [5 % honey, optional], and dust with [50 g rye flour, for dusting]."
    )
    assert grams(made(text, header), "water") == [750]


def test_repeated_lines_count_as_often_as_they_are_done() -> None:
    text = "Mix [100 % bread flour] with [60 % water].\n[Twice], add [5 % water] and fold."
    done = made(text, "dough: 1.7 kg\n")
    assert grams(done, "water") == [600, 100]
    assert done.recipe.products[-1].mass.lo == 1700


def test_a_range_of_percent_is_a_range_of_grams() -> None:
    done = made("Mix [500 g bread flour] with [60–65 % water].")
    use = next(use for use in done.recipe.uses if use.ingredient.percent)
    assert (use.mass.lo, use.mass.hi) == (300, 325)


@pytest.mark.parametrize(
    ("words", "wanted"),
    [
        ("[2 % of their weight in fine salt]", 34),
        ("[2 % of its weight in fine salt]", 34),
        ("[2 % of the cabbage's weight in fine salt]", 30),
        ("[2 % of the cabbage’s weight in fine salt]", 30),
        ("[2 % of the carrots' weight in fine salt]", 4),
        ("[20 g fine salt per kg of the cabbage, rubbed in well]", 30),
        ("[20 g fine salt per kg]", 34),
    ],
)
def test_of_the_batch_or_of_a_food_in_it(words: str, wanted: int) -> None:
    done = made(f"Shred [1.5 kg white cabbage] and [200 g carrots].\nRub in {words}.")
    assert grams(done, "salt") == [wanted]
    assert "percent-without-base" not in rules(done)


def test_left_to_right_what_comes_later_does_not_count() -> None:
    done = made("Rub [1 kg white cabbage] with [2 % of its weight in fine salt] and add [1 kg carrots].")
    assert grams(done, "salt") == [20]


def test_of_a_component_by_its_name() -> None:
    text = (
        "# Filling\n\nShred [500 g white cabbage].\n\n# Dish\n\nMix [2 % of the filling's weight in fine "
        "salt] and [the filling]."
    )
    assert grams(made(text), "salt") == [10]


def test_a_volume_per_kilo_stays_a_volume() -> None:
    done = made("Shred [2 kg white cabbage] and rub in [1 tbsp fine salt per kg of the cabbage].")
    computed = done.recipe.uses[1].computed
    assert computed is not None and (computed.amount.lo, computed.unit) == (2, "tbsp")
    assert done.recipe.uses[1].mass.known


@pytest.mark.parametrize(
    "text",
    [
        "Mix [72 % water] with [1 kg white cabbage].",
        "Rub in [2 % of its weight in fine salt], and add [1 kg white cabbage].",
        "Shred [1 kg white cabbage] and rub in [2 % of the duck's weight in fine salt].",
        "Shred [1 kg white cabbage] and rub in [18 g salt per kg of the duck].",
    ],
)
def test_no_base_is_an_error_with_a_way_out(text: str) -> None:
    found = [f for f in made(text).findings if f.rule == "percent-without-base"]
    assert [f.severity for f in found] == ["error"]
    assert found[0].hint


def test_a_base_without_weight_is_only_told() -> None:
    done = made("Shred [1 handful of moon leaves].\nRub in [2 % of their weight in fine salt].")
    assert [f.severity for f in done.findings if f.rule == "percent-without-base"] == ["information"]
    assert not done.recipe.uses[1].mass.known


def test_the_table_adds_percentages_and_weights() -> None:
    text = "Mix [100 % bread flour], [70 % water] and [2 % fine salt].\nAdd [30 g water] and [rest for 1 h]."
    done = made(text, "flour: 1 kg\n")
    row = done.table.row("water")
    assert row is not None
    assert [(m.amount.lo, m.unit) for m in row.total] == [(730, "g")]
    assert row.mass.lo == 730


@pytest.mark.parametrize(
    ("foods", "header", "told"),
    [
        ("[72 % bread flour], [28 % rye flour] and [70 % water]", "flour: 1 kg\n", False),
        ("[72 % bread flour], [20 % rye flour] and [70 % water]", "flour: 1 kg\n", True),
        ("[72 % bread flour], [30 % rye flour] and [70 % water]", "dough: 1 kg\n", True),
        ("[70 % water] and [1 kg white cabbage]", "flour: 1 kg\n", True),
        ("[400 g bread flour] and [70 % water]", "flour: 1 kg\n", False),
    ],
)
def test_flours_in_percent_make_the_whole(foods: str, header: str, told: bool) -> None:
    assert ("percent-whole" in rules(made(f"Mix {foods}.", header))) is told


def test_flour_weighed_in_the_preferment_may_be_a_part_of_the_headers() -> None:
    text = (
        f"# Poolish\n\nStir [300 g rye flour] with [100 % water].\n{WAIT}\n\n# Dough\n\nMix [70 % bread "
        "flour], [40 % water] and [the poolish]."
    )
    assert "percent-whole" not in rules(made(text, "flour: 1 kg\n"))
    assert "percent-whole" in rules(made(text.replace("300 g", "200 g"), "flour: 1 kg\n"))
