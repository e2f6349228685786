"""The table for the terminal, as Markdown, and as data."""

from __future__ import annotations

import json

import pytest

from tamis.assets import asset_text
from tamis.reading.clauses import Ingredient
from tamis.table.data import table_data
from tamis.table.equipment import equipment_list
from tamis.table.ingredients import build_table
from tamis.table.lines import lines
from tamis.table.markdown import equipment_markdown, table_markdown
from tamis.table.text import equipment_text, table_text

from .bench import KITCHEN, food, recipe, tool
from .samples import rye_loaves
from .schema import faults

SCHEMA = json.loads(asset_text("grammar/schema/table.schema.json"))
RYE = rye_loaves()
TABLE = build_table(RYE, KITCHEN)

TERMINAL = """\
  amount            metric   US                   ingredient
  ───────────────   ──────   ──────────────────   ─────────────────────────────
  510 g                      2 cups plus 2 tbsp   water, divided
      Scald 300 g, boiling; Dough 210 g
  240 g                      2⅓ cups              rye flour, divided
      Scald 140 g; Dough 100 g
  1 tbsp            6.7 g                         caraway seed, lightly crushed
  480 g (3½ cups)                                 bread flour
  2¼ tsp            7 g                           instant yeast
  2½ tsp            15 g                          fine salt

Also needed (not in the totals)
  sunflower oil for greasing
  plus rye flour for dusting
"""

MARKDOWN = """\
| Amount | Metric | US | Ingredient | Where used |
| --- | --- | --- | --- | --- |
| 510 g |  | 2 cups plus 2 tbsp | water, divided | Scald 300 g, boiling; Dough 210 g |
| 240 g |  | 2⅓ cups | rye flour, divided | Scald 140 g; Dough 100 g |
| 1 tbsp | 6.7 g |  | caraway seed, lightly crushed |  |
| 480 g (3½ cups) |  |  | bread flour |  |
| 2¼ tsp | 7 g |  | instant yeast |  |
| 2½ tsp | 15 g |  | fine salt |  |

Also needed (not in the totals):

- sunflower oil for greasing
- plus rye flour for dusting
"""


def test_the_terminal_shows_aligned_columns() -> None:
    assert table_text(TABLE, KITCHEN) == TERMINAL


def test_markdown_shows_one_table() -> None:
    assert table_markdown(TABLE, KITCHEN) == MARKDOWN


def test_the_equipment_is_a_list() -> None:
    rows = equipment_list(RYE, KITCHEN)
    assert equipment_text(rows).splitlines()[:2] == ["  mixing bowl", "  mixer"]
    assert equipment_markdown(rows).splitlines()[-1] == "- wire rack"


@pytest.mark.parametrize("width", [48, 60, 80, 120])
def test_no_line_is_longer_than_the_terminal(width: int) -> None:
    made = recipe(
        Dish=[
            [food("1.2 kg", "plums", prepared="1 kg", prepared_word="stoned")],
            [food("250 g", "very strong flour", preparation="sifted twice with the salt and the spices")],
            [food("1 tbsp", "olive oil"), tool("very large and heavy enamelled roasting tin with high sides tin")],
        ],
        Sauce=[[food("2 tbsp", "olive oil"), food("3 tbsp", "olive oil", optional=True)]],
    )  # fmt: skip
    text = table_text(build_table(made, KITCHEN), KITCHEN, width) + equipment_text(equipment_list(made, KITCHEN), width)
    assert max(map(len, text.splitlines())) <= width
    assert all(line == line.rstrip() for line in text.splitlines())


def test_a_column_with_nothing_to_say_is_left_out() -> None:
    text = table_text(build_table(recipe(Dish=[[food("2", "eggs")]]), KITCHEN), KITCHEN)
    assert text == "  amount   ingredient\n  ──────   ──────────\n  2        eggs\n"


def test_a_recipe_without_food_has_no_table() -> None:
    empty = build_table(recipe(Jars=[[tool("jars")]]), KITCHEN)
    assert table_text(empty, KITCHEN) == table_markdown(empty, KITCHEN) == ""


def test_a_name_cannot_break_the_markdown() -> None:
    made = build_table(recipe(Dish=[[food("100 g", "a|b *moon* <cheese>")]]), KITCHEN)
    assert "| a\\|b \\*moon\\* \\<cheese\\> |" in table_markdown(made, KITCHEN)


def test_the_data_keeps_to_its_schema_and_survives_json() -> None:
    extra = recipe(
        Dish=[
            [food("8", "chicken thighs", each="140–200 g"), food("", "salt", purpose="to taste")],
            [food("1", "lemon", part="zest"), food("30 g", "moon cheese", optional=True)],
            [food("15 g", "fresh yeast", alternatives=(food("5 g", "instant yeast"),)), tool("2 bowls")],
        ]
    )  # fmt: skip
    for made in (RYE, extra):
        data = table_data(build_table(made, KITCHEN), equipment_list(made, KITCHEN), KITCHEN)
        assert list(faults(data, SCHEMA, SCHEMA)) == []
        assert json.loads(json.dumps(data)) == data


def test_the_schema_finds_faults() -> None:
    data = table_data(TABLE, (), KITCHEN)
    data["rows"][0]["divided"] = "yes"
    data["rows"][1]["total"][0]["lo"]["exact"] = "0.5"
    del data["components"]
    data["colour"] = 1
    assert len(list(faults(data, SCHEMA, SCHEMA))) == 4


def test_the_data_is_exact() -> None:
    water, _, _, _, yeast, _ = table_data(TABLE, (), KITCHEN)["rows"]
    assert yeast["goods"] == "instant-yeast"
    number = {"exact": "9/4", "value": 2.25}
    assert yeast["total"] == [{"lo": number, "hi": number, "unit": "tsp"}]
    assert [use["text"] for use in water["uses"]] == ["300 g", "210 g"]


def test_a_piece_has_its_weight_in_the_data_while_all_come_at_once() -> None:
    thighs = food("8", "chicken thighs", each="150 g")
    for foods, units in (([thighs], ["g"]), ([thighs, food("2", "chicken thighs")], [])):
        (row,) = table_data(build_table(recipe(Dish=[foods]), KITCHEN), (), KITCHEN)["rows"]
        assert ([row["each"]["unit"]] if row["each"] else []) == units


@pytest.mark.parametrize(
    ("only", "amounts"),
    [
        ("metric", ["510 g", "240 g", "1 tbsp (6.7 g)", "480 g", "2¼ tsp (7 g)", "2½ tsp (15 g)"]),
        ("us", ["2 cups plus 2 tbsp", "2⅓ cups", "1 tbsp", "3½ cups", "2¼ tsp", "2½ tsp"]),
        ("written", ["510 g", "240 g", "1 tbsp", "480 g (3½ cups)", "2¼ tsp", "2½ tsp"]),
    ],
)
def test_one_system_alone_still_has_spoons(only: str, amounts: list[str]) -> None:
    rows = table_text(TABLE, KITCHEN, only=only).partition("\n\n")[0].splitlines()[2:]
    assert [row[2:].split("   ")[0] for row in rows if not row.startswith("     ")] == amounts


@pytest.mark.parametrize(
    ("first", "second", "name"),
    [
        ((), (), "butter, divided"),
        (("lard",), (), "butter, or lard for 60 g of it, divided"),
        ((), ("lard",), "butter, or lard for 40 g of it, divided"),
        (("lard",), ("lard",), "butter, or lard, divided"),
        (("lard",), ("bacon fat",), "butter, or lard for 60 g of it, or bacon fat for 40 g of it, divided"),
        (("lard",), ("lard", "bacon fat"), "butter, or lard, or bacon fat for 40 g of it, divided"),
    ],
)
def test_what_may_be_taken_instead_of_a_part_says_of_which(
    first: tuple[str, ...], second: tuple[str, ...], name: str
) -> None:
    def butter(amount: str, others: tuple[str, ...]) -> Ingredient:
        return food(amount, "butter", alternatives=tuple(food("", other) for other in others))

    made = recipe(Fried=[[butter("60 g", first)]], Sauce=[[butter("40 g", second)]])
    assert [line.name for line in lines(build_table(made, KITCHEN).rows, build_table(made, KITCHEN), KITCHEN)] == [name]


def test_another_measure_instead_says_of_which() -> None:
    yeast = food("15 g", "fresh yeast", alternatives=(food("5 g", "instant yeast"),))
    made = recipe(Poolish=[[yeast]], Dough=[[food("10 g", "fresh yeast")]])
    table = build_table(made, KITCHEN)
    assert lines(table.rows, table, KITCHEN)[0].name == "fresh yeast, or 5 g instant yeast for 15 g of it, divided"
