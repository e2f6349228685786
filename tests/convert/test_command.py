"""`tamis convert` as a shell sees it."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tamis.cli.main import main


@pytest.fixture(autouse=True)
def _elsewhere(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    capsys.readouterr()
    status = main(["convert", *words])
    printed = capsys.readouterr()
    return status, printed.out, printed.err


def test_words_need_no_quotation_marks(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "2/3", "cup", "bread", "flour") == run(capsys, "2/3 cup bread flour")
    status, out, err = run(capsys, "2/3 cup bread flour")
    assert (status, err) == (0, "")
    assert out.startswith("2/3 cup bread flour\n\n  weight ")


def test_to_one_unit(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(capsys, "180 C", "--to", "gas") == (0, "gas mark 4\n", "")


def test_json(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, _ = run(capsys, "1 tbsp basil", "--format", "json")
    data = json.loads(out)
    assert status == 0
    assert data["asked"] == "1 tbsp basil"
    assert data["sections"][-1]["title"] == "Substitutes (approximate)"


def test_the_house_s_cup_and_another(capsys: pytest.CaptureFixture[str]) -> None:
    Path("kitchen.toml").write_text('[publish]\ncup = "metric"\n')
    assert run(capsys, "2 cups", "--to", "ml")[1] == "500 ml\n"
    assert run(capsys, "2 cups", "--to", "ml", "--cup", "us")[1] == "473 ml\n"
    assert run(capsys, "2 cups", "--to", "ml", "--cup", "japanese")[1] == "400 ml\n"


def test_the_house_s_goods(capsys: pytest.CaptureFixture[str]) -> None:
    Path("kitchen.toml").write_text("")
    Path("goods.toml").write_text('[harbour-meal]\ndensities = "150 g/cup"\n')
    status, out, err = run(capsys, "2 cups harbour meal")
    assert (status, err) == (0, "")
    assert "300 g\n" in out
    assert "your goods.toml" in out


def test_what_is_wrong_with_the_house_s_goods_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    Path("kitchen.toml").write_text("")
    Path("goods.toml").write_text('[harbour-meal]\ndensity = "150 g/cup"\n')
    status, _, err = run(capsys, "2 cups harbour meal")
    assert status == 0
    assert "unknown key 'density'" in err


def test_not_understood(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, err = run(capsys, "2 tbps sugar")
    assert (status, out) == (2, "")
    assert err == "tamis convert: no unit is called “tbps”\n  > did you mean `tbsp`?\n"


def test_an_unknown_food_is_told_beside_what_is_known(capsys: pytest.CaptureFixture[str]) -> None:
    status, out, err = run(capsys, "2 cups bred flour")
    assert status == 1
    assert "473 ml" in out
    assert "did you mean “bread flour”?" in err


def test_unreadable_settings(capsys: pytest.CaptureFixture[str]) -> None:
    Path("kitchen.toml").write_text("[kitchen\n")
    status, _, err = run(capsys, "1 cup")
    assert status == 2
    assert "kitchen.toml:1" in err
