"""The README shows what the commands print: the outputs between its markers are made, not written.

`pytest --rewrite` writes them anew.
"""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from tamis.cli.main import main

ROOT = Path(__file__).parents[2]
README = ROOT / "README.md"
SHOWN = re.compile(r"^\$ (tamis [^\n]*)\n```\n\n<!-- ([a-z]+) -->\n(.*?)<!-- end -->", re.MULTILINE | re.DOTALL)


def printed(command: str, capsys: pytest.CaptureFixture[str]) -> str:
    assert main(shlex.split(command)[1:]) == 0
    return f"\n```\n{capsys.readouterr().out.rstrip()}\n```\n\n"


def test_the_outputs_shown_are_printed(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], rewriting: bool
) -> None:
    monkeypatch.chdir(ROOT)
    monkeypatch.setenv("COLUMNS", "80")
    text = README.read_text("utf-8")
    shown = SHOWN.findall(text)
    assert {name for _, name, _ in shown} == {"table", "timeline", "formula", "market"}
    for command, name, output in shown:
        now = printed(command, capsys)
        if rewriting:
            text = text.replace(f"<!-- {name} -->\n{output}<!-- end -->", f"<!-- {name} -->\n{now}<!-- end -->")
        else:
            assert output == now, command
    if rewriting:
        README.write_text(text, encoding="utf-8")
