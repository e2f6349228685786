"""Sheets worked by hand, step by step (`sheets/*.md`), against what the compiler makes of the same recipes."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from tamis.compile import Compiled
from tamis.kitchen.house import Kitchen
from tamis.library.library import open_library
from tamis.quantity.measure import base
from tamis.scaling.scale import scaled

ROOT = Path(__file__).parents[2]
SHEETS = Path(__file__).with_name("sheets")


def sheet(name: str) -> dict[str, Fraction]:
    """The results at the end of a sheet."""
    text = (SHEETS / f"{name}.md").read_text("utf-8")
    return {key: Fraction(value) for key, value in re.findall(r"^- ([a-z ]+): ([0-9.]+)$", text, re.MULTILINE)}


def recipe(stem: str) -> tuple[Compiled, Kitchen]:
    library = open_library(ROOT / "recipes" / f"{stem}.tamis")
    return library.entries[0].compiled, library.kitchen


def total(compiled: Compiled, kitchen: Kitchen, name: str) -> Fraction:
    """A row's sum in grams, millilitres or pieces."""
    row = compiled.table.row(name)
    assert row is not None, name
    amount = base(row.total[0], kitchen.units) or row.total[0].amount
    assert amount.lo == amount.hi
    return amount.lo


def grams(compiled: Compiled, product: str) -> Fraction:
    found = next(p for p in compiled.recipe.products if p.name.lower() == product)
    return found.mass.lo


def test_rye_loaves_formula() -> None:
    compiled, kitchen = recipe("harbour-rye-tin-loaves")
    by_hand = sheet("rye-loaves-formula")
    formula = compiled.formula
    assert formula is not None
    foods = {row.name: row.total for row in formula.rows if row.total is not None}
    (scald,) = [row.final for row in formula.rows if row.part and row.final is not None]
    divided = next(action.piece_mass for action in compiled.recipe.actions if action.piece_mass)
    assert divided is not None
    said = {
        "flour": formula.flour.lo,
        "rye percent": foods["rye flour"].percent.lo,
        "water": total(compiled, kitchen, "water"),
        "hydration": formula.hydration.lo,
        "prefermented": formula.prefermented.lo,
        "yeast": foods["instant yeast"].grams.lo,
        "yeast percent": foods["instant yeast"].percent.lo,
        "salt percent": foods["fine salt"].percent.lo,
        "scald": grams(compiled, "scald"),
        "scald percent": scald.percent.lo,
        "dough": grams(compiled, "dough"),
        "loaf": divided.lo,
        "percent sum": formula.total.percent.lo,
    }
    assert said.keys() == by_hand.keys()
    for key, value in said.items():
        assert value == pytest.approx(by_hand[key], abs=0.005), key


def test_custard_for_ten() -> None:
    six, kitchen = recipe("vanilla-custard")
    ten = scaled(six, Fraction(10, 6), kitchen).compiled
    by_hand = sheet("custard-for-ten")
    makes = ten.recipe.header.makes
    assert makes is not None and makes.measure is not None
    made = base(makes.measure, kitchen.units)
    pan = next(product for product in ten.recipe.products if product.kind == "share")
    first = next(taking for taking in ten.recipe.takings if ten.recipe.products[taking.product] is pan)
    assert made is not None and first.fraction is not None
    said = {
        "milk": total(ten, kitchen, "whole milk"),
        "cream": total(ten, kitchen, "double cream"),
        "yolks": total(ten, kitchen, "egg yolks"),
        "sugar": total(ten, kitchen, "caster sugar"),
        "makes": made.lo,
        "custard": grams(ten, "custard"),
        "first pour": pan.mass.lo * first.fraction,
    }
    assert said.keys() == by_hand.keys()
    for key, value in said.items():
        assert value == pytest.approx(by_hand[key], rel=1e-4), key


def test_oatcakes_cost(capsys: pytest.CaptureFixture[str]) -> None:
    import json

    from tamis.cli.main import main

    assert main(["cost", str(ROOT / "recipes" / "sesame-oatcakes.tamis"), "--format", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    by_hand = sheet("oatcakes-cost")
    said = {line["name"]: line["cost_used"] for line in data["lines"] if line["cost_used"] is not None}
    said |= {"batch": data["cost"]["used"], "portion": data["cost"]["portion"], "bought": data["cost"]["to_buy"]}
    assert said == by_hand
