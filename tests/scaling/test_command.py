"""`tamis scale` as a cook meets it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tamis.cli.main import main

RECIPE = """\
title: Honey buns
makes: 12 buns
serves: 4

# Buns

Heat [the oven] [to 180 °C].
Stir [500 g plain flour] with [300 ml water], [3 eggs] and [1 tbsp honey] [in a bowl].
[Bake for 20–25 min] [until golden].

Note: 3 eggs give the colour.
"""


@pytest.fixture
def file(tmp_path: Path) -> str:
    path = tmp_path / "honey-buns.tamis"
    path.write_text(RECIPE, encoding="utf-8")
    return str(path)


def test_text(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["scale", file, "--serves", "6"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("Honey buns\nMakes 18 buns; Serves 6; × 1.5\n")
    assert "750 g" in said and "450 ml" in said
    assert "Stir 750 g plain flour with 450 ml water, 4½ eggs" in " ".join(said.split())
    assert "Bake for 20–25 min until golden." in said
    assert "Note: 3 eggs give the colour." in said
    assert "Times, temperatures, cues, sizes, tools and remarks are those" in said
    assert "honey-buns.tamis:8:47: warning: 3 becomes 4½ eggs (scale-eggs)" in said
    assert "weigh out 225 g" in said


def test_markdown(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["scale", file, "--makes", "6 buns", "--format", "markdown"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("# Honey buns\n\nMakes 6 buns; Serves 2; × 0.5\n\n| Amount |")
    assert "\n1. Heat the oven to 180 °C (350 °F). Stir 250 g plain flour with 150 ml water, 1½ eggs" in said
    assert "\n> Note: 3 eggs give the colour." in said
    assert "- Line 8, “3 eggs”: 3 becomes 1½ eggs; beat them" in said


def test_json(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["scale", file, "--flour", "250 g", "--format", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["factor"] == {"exact": "1/2", "value": 0.5}
    assert data["yields"] == {"makes": "6 buns", "serves": "2"}
    assert data["table"]["rows"][0]["total"] == [
        {"lo": {"exact": "250", "value": 250.0}, "hi": {"exact": "250", "value": 250.0}, "unit": "g"}
    ]
    assert data["method"][0]["steps"][0].endswith("Bake for 20–25 min until golden.")
    assert [finding["rule"] for finding in data["findings"]] == ["scale-eggs"]


def test_the_source_is_a_recipe_again(file: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["scale", file, "--by", "1/3", "--format", "source"]) == 0
    told = capsys.readouterr()
    assert "scale-eggs" not in told.out
    again = tmp_path / "again" / "third.tamis"
    again.parent.mkdir()
    again.write_text(told.out, encoding="utf-8")
    assert main(["check", str(again)]) == 0
    assert main(["scale", str(again), "--by", "3", "--format", "source"]) == 0
    assert capsys.readouterr().out.endswith(RECIPE.partition("# Buns")[2])


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--makes", "3 loaves"], "--makes: the recipe makes 12 buns, no loaves"),
        (["--by", "1,5"], "--by: “1,5” is not a factor"),
        (["--pan", "23 cm round"], "--pan: no tin or pan in the recipe has a size"),
    ],
)
def test_a_wish_that_cannot_be_met(
    file: str, options: list[str], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["scale", file, *options]) == 2
    assert f"tamis scale: {words}" in capsys.readouterr().err


@pytest.mark.parametrize("options", [[], ["--by", "2", "--serves", "3"]])
def test_exactly_one_way(file: str, options: list[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["scale", file, *options])
    assert stopped.value.code == 2


def test_more_than_a_used_recipe_makes(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "stock.tamis").write_text(
        "title: Stock\nmakes: 500 ml\n\n# Stock\n\nStir [500 ml water] with [50 g honey] [in a jug].\n",
        encoding="utf-8",
    )
    soup = tmp_path / "soup.tamis"
    soup.write_text(
        "title: Soup\nserves: 2\nuses: stock\n\n# Soup\n\nStir [400 ml of the stock] with [20 g honey] [in a bowl].\n",
        encoding="utf-8",
    )
    assert main(["scale", str(soup), "--serves", "4"]) == 1
    said = capsys.readouterr().err
    assert "800 ml" in said and "this takes 1.6 times what the recipe of “stock” makes" in said


def test_the_table_takes_the_same_options(file: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["table", file, "--dough", "4 kg"]) == 0
    told = capsys.readouterr()
    assert "plain flour" in told.out and "scale-" in told.err
    assert main(["table", file, "--by", "2"]) == 0
    assert "1 kg" in capsys.readouterr().out


def test_a_scaled_site_stands_beside_the_other(file: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["build", str(tmp_path), "--by", "2"]) == 2
    assert "--output" in capsys.readouterr().err
    assert main(["build", str(tmp_path), "--by", "2", "--output", str(tmp_path / "twice")]) == 0
    (page,) = (tmp_path / "twice").rglob("honey-buns.html")
    text = page.read_text(encoding="utf-8").replace("\u00a0", " ")
    assert "24 buns" in text and '<b class="measure">1 kg</b> plain flour' in text


def test_a_cook_keeps_the_singular() -> None:
    from .kitchen_table import one_line, times

    assert "[3 star anise]" in times(one_line("Stir [2 star anise] with [100 ml water] [in a bowl]."), "3/2").text


MIXED = """\
title: Pastry and gravy
serves: 4

# Dish

Stir [225 g plain flour] with [4–5 tbsp cold water] and [100 g raisins] [in a bowl].
Stir in [4 tbsp milk], then [300 ml milk] and [425 ml water].
"""


def test_spoons_beside_litres_come_in_cups_or_millilitres(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "mixed.tamis"
    path.write_text(MIXED, encoding="utf-8")
    assert main(["scale", str(path), "--by", "3"]) == 0
    rows = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert "1.45–1.5 l 6¼–6⅓ cups water, divided" in rows
    assert "300 g 2 cups plus 1 tbsp raisins" in rows  # dried fruit as nuts
    assert not any("tbsp" in row for row in rows if "900 ml" in row)  # 177 ml + 900 ml of milk
