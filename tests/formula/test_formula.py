"""What is in a dough and what is not; preferments by every way that they can come; how it is printed."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest

from tamis.assets import asset_text
from tamis.formula.formula import Formula, build_formula
from tamis.formula.printing import formula_csv, formula_data, formula_markdown, formula_text
from tamis.formula.wording import facts, notes

from .kneading import KITCHEN, faults, formula, made

LEVAIN = "# Levain\n\nStir [50 g rye flour], [50 g water] and [10 g sourdough starter].\nCover and [leave overnight].\n"
DOUGH = (
    "\n# Dough\n\nMix [450 g bread flour], [300 g water], [10 g fine salt] and {}.\n[Rise for 3 h] [until doubled].\n"
)
BUN = (
    "# Dough\n\nMix [500 g bread flour], [200 g milk], [2 eggs], [80 g soft butter], [40 g honey], [9 g fine salt] and"
    " [7 g instant yeast].\n[Rise for 1 h] [until doubled].\n"
)


def weights(built: Formula) -> dict[str, Fraction]:
    return {row.name: row.total.grams.hi for row in built.rows if row.total is not None}


def test_the_whole_of_a_preferment_goes_in() -> None:
    built = formula(made(LEVAIN + DOUGH.format("[the levain]")))
    assert built.name == "Dough" and [column.name for column in built.columns] == ["Levain"]
    assert weights(built)["water"] == 350
    assert built.prefermented.hi == 10
    assert built.hydration.hi == 70


def test_half_of_it_goes_in() -> None:
    crackers = "\n# Crackers\n\nSpread [the rest of the levain] thin with [1 kg rolled oats]."
    built = formula(made(LEVAIN + DOUGH.format("[half of the levain]") + crackers))
    assert weights(built)["rye flour"] == 25
    assert built.columns[0].taken == Fraction(1, 2)
    assert any("50 %" in note for note in notes(built))


def test_what_is_kept_back_is_not_in_the_dough() -> None:
    kept = LEVAIN.rstrip() + "\nStir down, [reserving 11 g levain starter].\n"
    built = formula(made(kept + DOUGH.format("[the levain]")))
    assert built.columns[0].taken == Fraction(9, 10)
    assert weights(built)["rye flour"] == 45


def test_a_preferment_within_a_preferment() -> None:
    first = (
        "# First build\n\nStir [20 g rye flour] with [20 g water] and [10 g sourdough starter].\n[Leave overnight].\n\n"
    )
    second = LEVAIN.replace("[10 g sourdough starter]", "[the first build]")
    built = formula(made(first + second + DOUGH.format("[the levain]")))
    assert [column.name for column in built.columns] == ["First build", "Levain"]
    assert weights(built)["rye flour"] == 70
    inside = next(row for row in built.rows if row.name == "First build")
    assert inside.final is None and inside.parts[0] is None
    assert inside.parts[1] is not None and inside.parts[1].grams.hi == 50


def test_a_soaker_is_a_column_but_not_prefermented() -> None:
    soaker = "# Soaker\n\nStir [50 g rye flour] with [100 g water].\n[Leave overnight].\n"
    built = formula(made(soaker + DOUGH.format("[5 g instant yeast], [the soaker]")))
    assert [column.ferments for column in built.columns] == [False]
    assert built.prefermented.hi == 0 and built.hydration.hi == 80


def test_what_was_set_aside_in_the_same_component_counts_as_put_in_by_name() -> None:
    text = (
        "# Dough\n\nStir [7 g instant yeast] into [100 g water] and [set aside].\nMix [500 g bread "
        "flour] with [220 g water] and [10 g fine salt].\nAdd [the yeast].\n[Rise for 1 h]."
    )
    built = formula(made(text))
    assert built.columns == ()
    assert weights(built)["water"] == 320


def test_of_separated_eggs_only_what_goes_in() -> None:
    text = (
        "# Dough\n\nMix [500 g bread flour], [2 eggs, separated], [200 g milk], [9 g fine salt] and [7 g "
        "instant yeast].\nAdd [the egg yolks].\n[Rise for 1 h].\n\n# Glaze\n\nBeat [the egg "
        "whites].\n\n# Buns\n\nBrush [the dough] with [the glaze]."
    )
    named = weights(formula(made(text)))
    assert "eggs" not in named
    yolk = KITCHEN.larder.find(("egg",))
    assert yolk is not None
    part = next(part for part in yolk.goods.parts if part.id == "egg-yolk")
    assert named["egg yolk"] == 2 * part.hi


def test_filling_wash_dusting_and_steam_are_no_part_of_the_dough() -> None:
    after = (
        "\n# Buns\n\nFill [the dough] with [200 g raspberry jam], brush with [1 egg] and dust with "
        "[30 g plain flour, for dusting]."
    )
    assert set(weights(formula(made(BUN + after)))) == set(weights(formula(made(BUN))))


def test_water_in_milk_eggs_butter_and_honey_is_told_apart() -> None:
    built = formula(made(BUN))
    assert built.hydration.hi == 0
    assert built.liquids.hi == 40
    water = {row.name: row.water.hi for row in built.rows if row.water is not None}
    milk = KITCHEN.larder.find(("milk",))
    assert milk is not None and milk.goods.water is not None
    assert water["milk"] == 200 * milk.goods.water
    assert set(water) == {"milk", "eggs", "butter", "honey"}
    assert built.all_water.hi == sum(water.values()) / 5


def test_the_base_is_said() -> None:
    done = made(LEVAIN + DOUGH.format("[the levain]"))
    assert "all flour, including the flour in preferments: 500 g" in formula_text(formula(done))
    assert "only the flour of the final dough: 450 g" in formula_text(formula(done, "final"))
    assert formula(done).salt.hi == 2 < formula(done, "final").salt.hi


def test_what_has_no_weight_is_named() -> None:
    foods = (
        "Mix [500 g bread flour], [300 g water], [10 g moon dust], [a handful of moon leaves] and [7 g instant yeast]."
    )
    built = formula(made(foods))
    assert built.unweighed == ("moon leaves",)
    assert weights(built)["moon dust"] == 10
    assert any("moon leaves" in note for note in notes(built))


@pytest.mark.parametrize(
    "text",
    [
        "Stir [300 g water] into [100 g caster sugar].",
        "Stir [10 g plain flour] into [40 g butter], and whisk in [500 g milk].",
        "Dust with [rye flour].",
    ],
)
def test_no_dough_no_formula(text: str) -> None:
    assert build_formula(made(text).recipe, KITCHEN) is None


def test_a_batter_has_a_formula_and_is_no_bread() -> None:
    built = formula(made("Beat [200 g butter], [200 g caster sugar], [4 eggs] and [200 g self-raising flour]."))
    assert not built.bread


def test_the_order_is_the_trades() -> None:
    text = "Mix [10 g honey], [5 g instant yeast], [10 g fine salt], [300 g water] and [500 g bread flour]."
    names = [row.name for row in formula(made(text)).rows]
    assert names == ["bread flour", "water", "fine salt", "instant yeast", "honey"]


def test_data_is_exact_and_complete() -> None:
    built = formula(made(LEVAIN + DOUGH.format("[the levain]")))
    data = json.loads(json.dumps(formula_data(built)))
    assert data["base"] == "total" and data["flour"]["lo"]["exact"] == "500"
    assert [row["name"] for row in data["rows"]][-1] == "Levain"
    assert data["rows"][-1]["role"] == "preferment" and data["rows"][-1]["total"] is None
    assert data["percent"]["hydration"]["hi"] == {"exact": "70", "value": 70.0}


def test_data_keeps_to_its_schema() -> None:
    schema = json.loads(asset_text("grammar/schema/formula.schema.json"))
    for text in (LEVAIN + DOUGH.format("[half of the levain]"), BUN):
        data = {"partial": False, "title": "Test", **formula_data(formula(made(text)))}
        assert list(faults(json.loads(json.dumps(data)), schema)) == []
        assert list(faults(data | {"base": "some"}, schema))


def test_csv_has_a_pair_of_columns_each() -> None:
    built = formula(made(LEVAIN + DOUGH.format("[the levain]")))
    lines = formula_csv(built).splitlines()
    assert lines[0] == "ingredient,role,total g,total %,Levain g,Levain %,final dough g,final dough %"
    assert "water,water,350,70,50,100,300,60" in lines
    assert {line.count(",") for line in lines} == {7}


def test_markdown_escapes_names() -> None:
    named = LEVAIN.replace("# Levain", "# My *old|levain").replace("|", "| ") + DOUGH.format("[the levain]")
    text = formula_markdown(formula(made(named)))
    assert "My \\*old\\| levain" in text and "My *" not in text


@pytest.mark.parametrize("width", [40, 60, 80, 110])
def test_text_keeps_to_the_width(width: int) -> None:
    built = formula(made(LEVAIN + DOUGH.format("[the levain]")))
    table = [line for line in formula_text(built, width).splitlines() if "─" in line or line.endswith("%")]
    assert table and max(map(len, table)) <= width


def test_facts_leave_out_what_is_not_there() -> None:
    names = [name for name, _ in facts(formula(made(BUN)))]
    assert names == ["Hydration", "Salt", "Yeast", "Dough"]
