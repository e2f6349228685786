"""The data of a market list has the form that is documented for it."""

from __future__ import annotations

import json
from typing import Any

import pytest

from tamis.assets import asset_text
from tamis.market.data import list_data
from tamis.market.market_list import market_list
from tests.market.stall import demo
from tests.table.schema import faults

SCHEMA: dict[str, Any] = json.loads(asset_text("grammar/schema/market.schema.json"))
KITCHEN, KNOWN = demo()


def printed(*stems: str) -> dict[str, Any]:
    dishes = [KNOWN[stem] for stem in stems]
    data = {"partial": False, **list_data(market_list(dishes, KNOWN, KITCHEN), KITCHEN)}
    again: dict[str, Any] = json.loads(json.dumps(data))
    return again


@pytest.mark.parametrize("stem", sorted(KNOWN))
def test_each_recipe(stem: str) -> None:
    assert list(faults(printed(stem), SCHEMA, SCHEMA)) == []


def test_all_together() -> None:
    assert list(faults(printed(*KNOWN), SCHEMA, SCHEMA)) == []


def test_it_would_notice() -> None:
    data = printed("plum-jam")
    data["lines"][0]["cost_used"] = 1.5
    del data["lines"][1]["buy"]
    assert len(list(faults(data, SCHEMA, SCHEMA))) == 2
