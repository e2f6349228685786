"""What was understood, line by line: whole outputs, the reasons of single lines, and the form for other programs."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.assets import asset_text
from tamis.compile import Compiled, compile
from tamis.flow.data import flow_data
from tamis.flow.records import Row
from tamis.flow.rows import rows_of
from tamis.flow.text import flow_text
from tamis.kitchen.house import Kitchen, default_kitchen, house_kitchen
from tamis.source import Source
from tests.cases import Case, find_cases, rewrite
from tests.table.schema import faults

ROOT = Path(__file__).parents[2]
SCHEMA = json.loads(asset_text("grammar/schema/flow.schema.json"))
RECIPES = sorted((ROOT / "recipes").glob("*.tamis")) + sorted((ROOT / "tests/golden/examples").glob("*.tamis"))


def rows(compiled: Compiled) -> tuple[Row, ...]:
    return rows_of(compiled.recipe, compiled.source, compiled.kitchen)


def made(text: str, kitchen: Kitchen | None = None) -> Compiled:
    return compile(Source("dish.tamis", text), kitchen or default_kitchen("en"), {})


def told(given: str) -> str:
    """The rows of a recipe, or one of them with its reasons."""
    line = 0
    if given.startswith("why "):
        first, _, given = given.partition("\n")
        line = int(first.split()[1])
    result = made(f"title: Dish\nserves: 4\n\n{given}")
    asked = [row for row in rows(result) if not line or row.line == line]
    assert asked
    return flow_text(result.recipe, asked, 80, why=line > 0).partition("\n")[2].strip("\n")


@pytest.mark.parametrize("case", find_cases(Path(__file__).parent), ids=lambda case: case.name)
def test_case(case: Case, rewriting: bool) -> None:
    if rewriting:
        rewrite(case.file, told)
        return
    assert told(case.given) == case.expected


def test_a_whole_recipe(snapshot: SnapshotAssertion) -> None:
    result = made((ROOT / "recipes" / "vanilla-custard.tamis").read_text("utf-8"))
    assert flow_text(result.recipe, rows(result)) == snapshot


def test_a_whole_recipe_in_french(snapshot: SnapshotAssertion) -> None:
    folder = ROOT / "tests" / "language" / "french"
    kitchen, _ = house_kitchen((folder / "kitchen.toml").read_text("utf-8"), None)
    result = made((folder / "soupe-aux-poireaux.tamis").read_text("utf-8"), kitchen)
    assert flow_text(result.recipe, rows(result), why=True) == snapshot


@pytest.mark.parametrize("file", RECIPES, ids=[file.stem for file in RECIPES])
def test_every_line_has_its_row(file: Path) -> None:
    result = made(file.read_text("utf-8"))
    found = rows(result)
    assert [row.action for row in found] == list(range(len(result.recipe.actions)))
    uses = [coming.use for row in found for coming in (*row.goes_in, *row.beside) if coming.use >= 0]
    assert sorted(set(uses)) == sorted(set(uses) & set(range(len(result.recipe.uses))))
    assert len(set(uses)) == len(uses)
    text = flow_text(result.recipe, found, 80, why=True)
    assert max(map(len, text.splitlines())) <= 80


@pytest.mark.parametrize("file", RECIPES, ids=[file.stem for file in RECIPES])
def test_the_data_has_the_form_of_its_schema(file: Path) -> None:
    result = made(file.read_text("utf-8"))
    data = {"recipes": [{"partial": False, **flow_data(result.recipe, rows(result))}]}
    assert list(faults(json.loads(json.dumps(data)), SCHEMA, SCHEMA)) == []


def test_the_same_bytes_whatever_the_hashes() -> None:
    file = str(ROOT / "recipes" / "duck-with-prunes.tamis")
    command = [sys.executable, "-m", "tamis", "flow", file, "--format", "json"]
    runs = [
        subprocess.run(command, capture_output=True, check=True, env={**os.environ, "PYTHONHASHSEED": seed}).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1] != b""
