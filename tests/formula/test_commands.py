"""`tamis formula` and `tamis water` as a cook meets them."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tamis.cli.main import main

LOAVES = str(Path(__file__).resolve().parents[2] / "recipes" / "harbour-rye-tin-loaves.tamis")
JAM = str(Path(__file__).resolve().parents[2] / "recipes" / "plum-jam.tamis")


@pytest.mark.parametrize("form", ["text", "markdown", "json", "csv"])
def test_the_rye_loaves_have_a_formula_in_every_form(form: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["formula", LOAVES, "--format", form]) == 0
    out = capsys.readouterr().out
    assert "bread flour" in out and "Scald" in out


def test_the_base_can_be_chosen(capsys: pytest.CaptureFixture[str]) -> None:
    main(["formula", LOAVES, "--format", "json", "--base", "final"])
    data = json.loads(capsys.readouterr().out)
    assert data["base"] == "final" and data["base_flour"]["lo"]["value"] == 580


def test_jam_has_none(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["formula", JAM]) == 2
    assert "no formula" in capsys.readouterr().err


def test_a_faulty_recipe_gives_a_part(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "loaf.tamis"
    path.write_text("title: Loaf\nmakes: 1 loaf\n\n# Dough\n\nMix [500 g bread flour] with [the moon].\n", "utf-8")
    assert main(["formula", str(path)]) == 1
    captured = capsys.readouterr()
    assert "bread flour" in captured.out and "Incomplete" in captured.out
    assert "product-unknown" in captured.err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--dough", "75 °F", "--flour", "65", "--room", "65", "--friction", "8"], "water at 87 °F (30.6 °C)"),
        (["--dough", "24C", "--flour", "20", "--room", "21"], "water at 31 °C (87.8 °F)"),
        (["--dough", "24", "--flour", "20", "--room", "21", "--preferment", "18"], "water at 37 °C"),
        (["--mixed", "26", "--water", "20", "--flour", "20", "--room", "21"], "friction factor 17 °C"),
        (["--dough", "10", "--flour", "24", "--room", "24"], "use ice"),
        (["--dough", "30", "--flour", "20", "--room", "20"], "weakens the yeast"),
    ],
)
def test_water(words: list[str], said: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["water", *words]) == 0
    assert said in capsys.readouterr().out


@pytest.mark.parametrize(
    "words",
    [
        ["--dough", "75 F", "--flour", "20 C", "--room", "65"],
        ["--dough", "warm", "--flour", "20", "--room", "20"],
        ["--dough", "24", "--water", "20", "--flour", "20", "--room", "20"],
        ["--mixed", "24", "--flour", "20", "--room", "20"],
        ["--mixed", "24", "--water", "20", "--flour", "20", "--room", "20", "--friction", "3"],
    ],
)
def test_water_that_cannot_be_told(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["water", *words]) == 2
    assert capsys.readouterr().err.startswith("tamis water: ")
