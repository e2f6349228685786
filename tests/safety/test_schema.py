"""The data of a safety report has the form that is documented for it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tamis.assets import asset_text
from tamis.compile import compile
from tamis.kitchen.house import default_kitchen
from tamis.safety.report import report_data
from tamis.source import Source
from tests.table.schema import faults

SCHEMA: dict[str, Any] = json.loads(asset_text("grammar/schema/safety.schema.json"))
PAIRS = sorted((Path(__file__).parent / "pairs").rglob("*.tamis"))


def printed(text: str) -> dict[str, Any]:
    result = compile(Source("trial.tamis", text), default_kitchen("en"), {})
    data: dict[str, Any] = json.loads(json.dumps(report_data(result.safety, result.recipe)))
    return {"partial": False, **data}


@pytest.mark.parametrize("path", PAIRS, ids=lambda path: path.stem)
def test_every_pair(path: Path) -> None:
    assert list(faults(printed(path.read_text(encoding="utf-8")), SCHEMA, SCHEMA)) == []


def test_it_would_notice() -> None:
    data = printed("title: Eggs\nserves: 1\ntags: vegan\n\n# Eggs\n\nFry [2 eggs] [in a pan].\n")
    assert list(faults(data, SCHEMA, SCHEMA)) == []
    assert data["contradictions"] and data["hazards"] and data["dish"]["allergens"]
    data["hazards"][0]["form"] = "liquid"
    data["contradictions"][0]["why"] = 3
    del data["dish"]["unknown"]
    assert len(list(faults(data, SCHEMA, SCHEMA))) == 3
