"""The findings of `tamis check --format json` have the form that is documented for them."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tamis.assets import asset_text
from tamis.cli.main import main
from tests.table.schema import faults

SCHEMA: dict[str, Any] = json.loads(asset_text("grammar/schema/findings.schema.json"))
HEADER = "title: Oats\nserves: 2\n\n# Oats\n\n"
CLEAN = HEADER + "Stir [100 g rolled oats] into [200 ml milk] [in a bowl].\n[Chill for 8 h].\n"


def printed(text: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    (folder / "oats.tamis").write_text(text, encoding="utf-8")
    main(["check", "--format", "json", str(folder)])
    data: dict[str, Any] = json.loads(capsys.readouterr().out)
    return data


@pytest.mark.parametrize(
    "text",
    [
        CLEAN,
        "",
        CLEAN.replace("200 ml", "200 mll"),
        CLEAN.replace("oats]", "oats").replace("# Oats", "## Oats"),
        CLEAN.replace("for 8 h", "for 12–8"),
    ],
)
def test_findings(text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    data = printed(text, tmp_path, capsys)
    assert bool(data["findings"]) == (text != CLEAN)
    assert list(faults(data, SCHEMA, SCHEMA)) == []


def test_it_would_notice(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    data = printed(CLEAN.replace("# Oats", "## Oats"), tmp_path, capsys)
    data["findings"][0]["severity"] = "grave"
    data["findings"][0]["fix"]["line"] = "4"
    del data["counts"]["error"]
    assert len(list(faults(data, SCHEMA, SCHEMA))) == 3
