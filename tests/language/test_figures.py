"""The examples of `grammar/figures.md`: settings that are read, and commands that run."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from tamis.cli.main import main
from tamis.kitchen.house import house_kitchen

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "grammar" / "figures.md").read_text("utf-8")
README = (ROOT / "README.md").read_text("utf-8")
TOML = re.findall(r"```toml( goods)?.*?\n(.*?)```", PAGE, re.DOTALL)
COMMANDS = re.findall(r"^\$ (tamis .*)$", PAGE + README, re.MULTILINE)


@pytest.mark.parametrize(("goods", "text"), TOML)
def test_settings_are_read(goods: str, text: str) -> None:
    _, problems = house_kitchen(None, text) if goods else house_kitchen(text, None)
    assert problems == []


@pytest.mark.parametrize("command", COMMANDS)
def test_commands_run(command: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(ROOT)
    assert main(shlex.split(command)[1:]) == 0
    assert capsys.readouterr().out


def test_links_lead_somewhere() -> None:
    heads = {
        re.sub(r"[^\w -]", "", head.lower()).strip().replace(" ", "-")
        for head in re.findall(r"^#+ (.*)$", PAGE, re.MULTILINE)
    }
    assert set(re.findall(r"\]\(#([\w-]+)\)", PAGE)) <= heads
