"""What the compiler says of recipes by other hands: findings, table and plan of each, as the README tells of them."""

from __future__ import annotations

from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.compile import Compiled, compile
from tamis.kitchen.house import Kitchen, default_kitchen, house_kitchen
from tamis.source import Source
from tamis.table.text import table_text
from tamis.timeline.text import timeline_text

_HERE = Path(__file__).parent
_WIDTH = 100
RECIPES = sorted(_HERE.glob("*/*.tamis"))


def _kitchen(folder: Path) -> Kitchen:
    settings = folder / "kitchen.toml"
    if not settings.exists():
        return default_kitchen("en")
    kitchen, problems = house_kitchen(settings.read_text("utf-8"), None)
    assert not problems
    return kitchen


def _findings(compiled: Compiled) -> list[str]:
    place = compiled.source.place
    return [
        f"{place(found.span.start).line} {found.severity} {found.rule}: {found.message}" for found in compiled.findings
    ]


@pytest.mark.parametrize("file", RECIPES, ids=[f"{file.parent.name}/{file.stem}" for file in RECIPES])
def test_what_is_said_of_it(file: Path, snapshot: SnapshotAssertion) -> None:
    kitchen = _kitchen(file.parent)
    text = file.read_text("utf-8")
    compiled = compile(Source(file.name, text), kitchen, {})
    assert compiled.document.print() == text
    said = "\n".join(_findings(compiled)) or "nothing is wrong with it"
    table = table_text(compiled.table, kitchen, _WIDTH)
    plan = timeline_text(compiled.timeline, width=_WIDTH)
    assert f"{said}\n\n{table}\n{plan}" == snapshot


@pytest.mark.parametrize(
    ("folder", "most"), [("tens", 0), ("tens-2", 1), ("tens-3", 6), ("tens-4", 1), ("tens-5", 0), ("tens-6", 0)]
)
def test_most_compile_as_first_written(folder: str, most: int) -> None:
    """Of each thirty that nobody had seen, all but so many do today."""
    tens = [file for file in RECIPES if file.parent.name == folder]
    texts = [(file.name, file.read_text("utf-8")) for file in tens]
    faulty = [name for name, text in texts if compile(Source(name, text), default_kitchen("en"), {}).faulty]
    assert len(tens) == 30
    assert len(faulty) <= most, faulty
