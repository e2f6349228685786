"""The whole compiler: text in; recipe, table, timeline and findings out."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from tamis.checks.run import run_checks
from tamis.checks.view import View
from tamis.diagnostics import Diagnostic
from tamis.kitchen.house import Kitchen
from tamis.model.build import build, supply_of
from tamis.model.recipe import Recipe, Supply
from tamis.reading.reader import read
from tamis.safety.assess import assess, supplied
from tamis.safety.records import Safety
from tamis.source import Source
from tamis.syntax.document import Document
from tamis.syntax.outline import parse
from tamis.table.equipment import EquipmentRow, equipment_list
from tamis.table.ingredients import build_table
from tamis.table.rows import Table
from tamis.timeline.records import Timeline
from tamis.timeline.timeline import build_timeline

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.table.formula import Formula


class Compiled(NamedTuple):
    """One recipe, and everything that follows from it."""

    source: Source
    document: Document
    recipe: Recipe
    table: Table
    equipment: tuple[EquipmentRow, ...]
    timeline: Timeline
    findings: tuple[Diagnostic, ...]
    supply: Supply
    used: Mapping[str, Supply] = {}  # nobody writes into it
    formula: Formula | None = None
    safety: Safety | None = None


def compile(source: Source, kitchen: Kitchen, used: Mapping[str, Supply]) -> Compiled:
    """Compile one recipe; `used` holds the dishes of the recipes that it uses, by file stem."""
    document, in_syntax = parse(source)
    reading, in_reading = read(document, kitchen)
    recipe, in_flow = build(reading, kitchen, used)
    table = build_table(recipe, kitchen)
    equipment = equipment_list(recipe, kitchen)
    timeline = build_timeline(recipe, kitchen)
    formula = _formula(recipe, kitchen)
    safety = assess(recipe, kitchen, used)
    view = View(source, document, recipe, table, timeline, kitchen, used, formula, safety)
    findings = run_checks(view, (*in_syntax, *in_reading, *in_flow))
    supply = supplied(supply_of(recipe), safety)
    return Compiled(source, document, recipe, table, equipment, timeline, findings, supply, used, formula, safety)


def _formula(recipe: Recipe, kitchen: Kitchen) -> Formula | None:
    """The baker's formula; what makes it is loaded for recipes with flour only."""
    if not any(use.ingredient.goods is not None and use.ingredient.goods.flour for use in recipe.uses):
        return None
    from tamis.table.formula import build_formula

    return build_formula(recipe, kitchen)
