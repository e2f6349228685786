"""`tamis market` and `tamis cost` as a shell sees them."""

from __future__ import annotations

import csv
import io
import json
import re
from pathlib import Path

import pytest

from tamis.cli.main import main
from tests.market.stall import CHECKOUT

DUCK = "recipes/duck-with-prunes.tamis"
LOAVES = "recipes/harbour-rye-tin-loaves.tamis"
OATS = "title: Oats\nserves: 2\n\n# Oats\n\nStir [100 g rolled oats] with [200 ml milk].\n"
JAM = "recipes/plum-jam.tamis"


@pytest.fixture
def shell(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Shell:
    monkeypatch.chdir(CHECKOUT)
    return Shell(capsys)


class Shell:
    """Runs command lines in the checkout and keeps what they print."""

    def __init__(self, capsys: pytest.CaptureFixture[str]) -> None:
        self.capsys = capsys

    def __call__(self, *words: str) -> tuple[int, str, str]:
        status = main(words)
        printed = self.capsys.readouterr()
        return status, printed.out, printed.err


def test_a_list_for_two(shell: Shell) -> None:
    status, out, err = shell("market", DUCK, LOAVES, "--serves", "8")
    assert (status, err) == (0, "")
    assert "gravy, for 8 (× 2)" in out and "Brown chicken stock: 0.3 of the recipe" in out
    assert "\nButcher" in out and "8       duck legs" in out
    assert "Total £" in out and "Not priced: juniper berries" in out
    assert all(len(line) <= 80 for line in out.splitlines())


def test_what_is_made_already(shell: Shell) -> None:
    _, out, _ = shell("market", DUCK, "--have", "brown-stock")
    assert "wings" not in out and "Have ready: 300 ml of the brown stock" in out
    status, _, err = shell("market", DUCK, "--have", "brown-stick")
    assert status == 2 and "no recipe here uses “brown-stick”" in err


def test_forms_agree(shell: Shell) -> None:
    _, as_json, _ = shell("market", DUCK, "--format", "json")
    _, as_csv, _ = shell("market", DUCK, "--format", "csv")
    _, as_markdown, _ = shell("market", DUCK, "--format", "markdown")
    data = json.loads(as_json)
    rows = [row for row in csv.DictReader(io.StringIO(as_csv)) if row["list"] == "buy"]
    assert data["partial"] is False and data["currency"] == "£"
    assert [line["name"] for line in data["lines"]] == [row["item"] for row in rows]
    assert [line["buy"] for line in data["lines"]] == [row["buy"] for row in rows]
    paid = [line["cost_to_buy"] for line in data["lines"] if line["cost_to_buy"] is not None]
    assert sum(paid) == data["cost"]["to_buy"] > 0
    assert [round(float(row["cost to buy"]) * 100) for row in rows if row["cost to buy"]] == paid
    assert all(f"**{line['buy']}** {line['name']}" in as_markdown for line in data["lines"])
    carrots = next(line for line in data["lines"] if line["goods"] == "carrot")
    assert carrots["refuse"]["percent"] == 11 and carrots["refuse"]["source"].startswith("USDA SR28 11124")


def test_cost_of_a_dish(shell: Shell) -> None:
    status, out, _ = shell("cost", DUCK)
    figures = [line.split("£")[-1] for line in out.splitlines() if re.search(r"£[\d.]+$", line)]
    *lines, batch, portion, _ = [round(float(figure) * 100) for figure in figures]
    assert status == 0 and sum(lines) == batch
    assert abs(portion - batch / 4) <= 0.5
    assert "One portion of 4" in out and "Not priced: juniper berries (its weight is not known)" in out


def test_cost_of_more(shell: Shell) -> None:
    _, out, _ = shell("cost", DUCK, "--serves", "6")
    assert "One portion of 6" in out and re.search(r"\b6 +duck legs", out)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("market", "recipes/nowhere.tamis"), "there is no such file"),
        (("market", JAM, "--serves", "6"), "does not say how many it serves"),
        (("market", DUCK, "--serves", "many"), "“many” is not a number of people"),
        (("cost", "recipes"), "expected a recipe file, this is a folder"),
    ],
)
def test_what_stops_it(shell: Shell, words: tuple[str, ...], told: str) -> None:
    status, out, err = shell(*words)
    assert status == 2 and out == "" and told in err


def test_a_faulty_recipe_is_marked(shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "bad.tamis").write_text(OATS.replace("200 ml milk", "2 tbps milk"))
    monkeypatch.chdir(tmp_path)
    status, out, err = shell("market", "bad.tamis")
    assert status == 1 and "tbps" in err and "rolled oats" in out
    assert out.endswith("Incomplete: a recipe has errors.\n")


def test_prices_that_cannot_be_read_are_told(shell: Shell, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "kitchen.toml").write_text("")
    (tmp_path / "goods.toml").write_text('[rolled-oat]\nprice = "dear"\n')
    (tmp_path / "oats.tamis").write_text(OATS)
    monkeypatch.chdir(tmp_path)
    status, out, err = shell("market", "oats.tamis")
    assert "goods.toml:2:1" in err and "“dear” cannot be read: expected a price such as" in err
    assert "rolled oats" in out and status == 0
