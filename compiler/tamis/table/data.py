"""The ingredient table and the equipment list as plain data for other programs.

A program wants both the words that a cook reads and figures to reckon with. Figures are exact: a fraction as text
("11/8"), and beside it the nearest decimal of six digits for those who can do without. The form is described in
`grammar/schema/table.schema.json`.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.house import Kitchen
from tamis.model.mass import Mass
from tamis.quantity.measure import Measure
from tamis.table.lines import name_text
from tamis.table.rows import EquipmentRow, Row, RowUse, Supplied, Table
from tamis.table.showing import shown
from tamis.table.wording import alternative_text, amount_text
from tamis.typed import Any

FORMAT = 1
Data = dict[str, Any]


def table_data(table: Table, equipment: tuple[EquipmentRow, ...], kitchen: Kitchen) -> Data:
    """Everything that the table and the list know, as dictionaries, lists, texts and numbers."""
    return {
        "format": FORMAT,
        "components": list(table.components),
        "rows": [_row(row, kitchen) for row in table.rows],
        "purposes": [_row(row, kitchen) for row in table.purposes],
        "optional": [_row(row, kitchen) for row in table.optional],
        "unmeasured": [_row(row, kitchen) for row in table.unmeasured],
        "supplied": [_supplied(dish) for dish in table.supplied],
        "unread": list(table.unread),
        "equipment": [_equipment(row) for row in equipment],
    }


def _row(row: Row, kitchen: Kitchen) -> Data:
    return {
        "name": row.name,
        "goods": row.id or None,
        "text": name_text(row, kitchen),
        "amount": shown(row, kitchen)._asdict(),
        "total": [_measure(measure) for measure in row.total],
        "also": [_measure(measure) for measure in row.also],
        "each": _measure(row.first.each) if row.once is not None and row.first.each else None,
        "mass": mass_data(row.mass),
        "divided": row.divided,
        "note": row.note,
        "parts": list(row.parts),
        "purposes": list(row.purposes),
        "alternatives": [alternative_text(other, kitchen) for other in row.alternatives],
        "about": any(use.item.about for use in row.uses),
        "estimated": row.estimated,
        "by_analogy": row.by_analogy,
        "uses": [_use(use, kitchen) for use in row.uses],
    }


def _use(use: RowUse, kitchen: Kitchen) -> Data:
    return {
        "component": use.component,
        "action": use.action,
        "span": list(use.span),
        "amount": [_measure(measure) for measure in use.amount],
        "text": amount_text(use.amount, use.item, kitchen),
        "part": use.item.part,
        "note": use.note,
        "buys": use.buys,
    }


def _measure(measure: Measure) -> Data:
    return {**_ends(measure.amount.lo, measure.amount.hi), "unit": measure.unit}


def mass_data(mass: Mass) -> Data:
    """Grams, and what is not in them."""
    return {
        **_ends(mass.lo, mass.hi),
        "unit": "g",
        "unknown": list(mass.unknown),
        "uncounted": list(mass.uncounted),
    }


def _ends(lo: Fraction, hi: Fraction) -> Data:
    return {"lo": number_data(lo), "hi": number_data(hi)}


def number_data(value: Fraction) -> Data:
    """A figure, exact and as a decimal."""
    return {"exact": str(value), "value": float(f"{float(value):.6g}")}


def _supplied(dish: Supplied) -> Data:
    fraction = None if dish.fraction is None else number_data(dish.fraction)
    return {**dish._asdict(), "span": list(dish.span), "fraction": fraction}


def _equipment(row: EquipmentRow) -> Data:
    return {
        **row._asdict(),
        "number": None if row.number is None else number_data(row.number),
        "actions": list(row.actions),
        "components": list(row.components),
        "span": list(row.span),
    }
