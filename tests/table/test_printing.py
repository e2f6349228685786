"""The table for the terminal, as Markdown, and as data."""

from __future__ import annotations

import json

import pytest

from tamis.assets import asset_text
from tamis.table.data import table_data
from tamis.table.equipment import equipment_list
from tamis.table.ingredients import build_table
from tamis.table.markdown import equipment_markdown, table_markdown
from tamis.table.text import equipment_text, table_text

from .bench import KITCHEN, food, recipe, tool
from .samples import rye_batons
from .schema import faults

SCHEMA = json.loads(asset_text("grammar/schema/table.schema.json"))
RYE = rye_batons()
TABLE = build_table(RYE, KITCHEN)

TERMINAL = """\
  amount           metric   US                    ingredient
  ──────────────   ──────   ───────────────────   ─────────────────────────────
  80 g                      ¾ cup plus 2 tsp      rye flour
  370 g                     1½ cups plus 1 tbsp   water, divided
                                                    Poolish 100 g; Dough 270 g
  1⅜ tsp           4.3 g                          instant yeast, divided
                                                    Poolish ⅛ tsp; Dough 1¼ tsp
  420 g (3 cups)                                  bread flour
  2 tsp            12 g                           fine salt
  1 tbsp           6.7 g                          caraway seed, lightly crushed

Apart from the sum
  plus rye flour for dusting
  plus 120 ml boiling water for steam
"""

MARKDOWN = """\
| Amount | Metric | US | Ingredient | Where used |
| --- | --- | --- | --- | --- |
| 80 g |  | ¾ cup plus 2 tsp | rye flour |  |
| 370 g |  | 1½ cups plus 1 tbsp | water, divided | Poolish 100 g; Dough 270 g |
| 1⅜ tsp | 4.3 g |  | instant yeast, divided | Poolish ⅛ tsp; Dough 1¼ tsp |
| 420 g (3 cups) |  |  | bread flour |  |
| 2 tsp | 12 g |  | fine salt |  |
| 1 tbsp | 6.7 g |  | caraway seed, lightly crushed |  |

Apart from the sum:

- plus rye flour for dusting
- plus 120 ml boiling water for steam
"""


def test_the_terminal_shows_aligned_columns() -> None:
    assert table_text(TABLE, KITCHEN) == TERMINAL


def test_markdown_shows_one_table() -> None:
    assert table_markdown(TABLE, KITCHEN) == MARKDOWN


def test_the_equipment_is_a_list() -> None:
    rows = equipment_list(RYE, KITCHEN)
    assert equipment_text(rows).splitlines()[:2] == ["  tall jar", "  mixer"]
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
    yeast = table_data(TABLE, (), KITCHEN)["rows"][2]
    assert yeast["goods"] == "instant-yeast"
    number = {"exact": "11/8", "value": 1.375}
    assert yeast["total"] == [{"lo": number, "hi": number, "unit": "tsp"}]
    assert [use["text"] for use in yeast["uses"]] == ["⅛ tsp", "1¼ tsp"]


@pytest.mark.parametrize(
    ("only", "amounts"),
    [
        ("metric", ["80 g", "370 g", "1⅜ tsp (4.3 g)", "420 g", "2 tsp (12 g)", "1 tbsp (6.7 g)"]),
        ("us", ["¾ cup plus 2 tsp", "1½ cups plus 1 tbsp", "1⅜ tsp", "3 cups", "2 tsp", "1 tbsp"]),
        ("written", ["80 g", "370 g", "1⅜ tsp", "420 g (3 cups)", "2 tsp", "1 tbsp"]),
    ],
)
def test_one_system_alone_still_has_spoons(only: str, amounts: list[str]) -> None:
    rows = table_text(TABLE, KITCHEN, only=only).partition("\n\n")[0].splitlines()[2:]
    assert [row[2:].split("   ")[0] for row in rows if not row.startswith("     ")] == amounts
