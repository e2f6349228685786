"""Whole recipes with everything that follows from them: findings, table, equipment, flow, timeline.

Beside each recipe of `examples/` lies what comes out (`.golden`, rewritten by `pytest --rewrite`) and what a careful
cook reads in it (`.expected.md`, written by hand), against which a golden file is read before it is accepted.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from tamis.cli.findings import as_text
from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.model.recipe import Product
from tamis.quantity.display import grams, number
from tamis.source import Source
from tamis.table.text import equipment_text, table_text
from tamis.timeline.text import timeline_text

FOLDER = Path(__file__).with_name("examples")
RECIPES = sorted(FOLDER.glob("*.tamis"))


def flow_text(compiled: Compiled) -> Iterator[str]:
    """Each product: where it is made, what it weighs, and where it goes."""
    recipe = compiled.recipe
    for index, product in enumerate(recipe.products):
        yield f"{product.name} ({product.kind}, {_line(compiled, product.made_by)}): {_mass(product)}"
        for taking in recipe.takings:
            if taking.product == index:
                part = "some" if taking.fraction is None else number(taking.fraction)
                rest = " (the rest)" if taking.rest and part != "1" else ""
                yield f"  {part}{rest} → {_line(compiled, taking.action)}"
        if product.dish:
            yield "  the dish"


def _line(compiled: Compiled, action: int | None) -> str:
    if action is None:
        return "another recipe"
    return f"line {compiled.source.place(compiled.recipe.actions[action].span.start).line}"


def _mass(product: Product) -> str:
    mass = product.mass
    text = grams(mass.lo) if mass.lo == mass.hi else f"{grams(mass.lo)} to {grams(mass.hi)}"
    pieces = f", {number(product.pieces.lo)} {product.piece_noun}" if product.pieces else ""
    unknown = f", without {', '.join(mass.unknown)}" if mass.unknown else ""
    uncounted = f", not counting {', '.join(mass.uncounted)}" if mass.uncounted else ""
    return text + pieces + unknown + uncounted


def golden(file: Path) -> str:
    source = Source(file.name, file.read_text("utf-8"))
    compiled = compile(source, default_kitchen("en"), {})
    kitchen = default_kitchen("en")
    findings = "\n".join(as_text(source, finding) for finding in compiled.findings) or "none"
    blocks = [
        f"Findings\n\n{findings}",
        f"Table\n\n{table_text(compiled.table, kitchen, 100).rstrip()}",
        f"Equipment\n\n{equipment_text(compiled.equipment, 100).rstrip()}",
        "Flow\n\n" + "\n".join(flow_text(compiled)),
        f"Timeline\n\n{timeline_text(compiled.timeline, width=100).rstrip()}",
    ]
    return "\n\n\n".join(blocks) + "\n"


@pytest.mark.parametrize("file", RECIPES, ids=[file.stem for file in RECIPES])
def test_golden(file: Path, rewriting: bool) -> None:
    expected = file.with_suffix(".golden")
    if rewriting:
        expected.write_text(golden(file), encoding="utf-8")
    assert golden(file) == expected.read_text("utf-8")


@pytest.mark.parametrize("file", RECIPES, ids=[file.stem for file in RECIPES])
def test_clean(file: Path) -> None:
    """No error and no warning."""
    compiled = compile(Source(file.name, file.read_text("utf-8")), default_kitchen("en"), {})
    assert [f for f in compiled.findings if f.severity != "information"] == []
