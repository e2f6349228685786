"""What was understood as plain data, for other programs. Its form is written down in `grammar/schema/flow.schema.json`.

Actions, batches, uses and products are numbered as in the recipe; what is not there is null.
"""

from __future__ import annotations

from tamis.table.data import mass_data, number_data
from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tamis.flow.records import After, Coming, Leaving, Now, Reason, Row
    from tamis.model.recipe import Recipe
    from tamis.quantity.amount import Amount

Data = dict[str, Any]


def flow_data(recipe: Recipe, rows: Sequence[Row]) -> Data:
    """All rows of a recipe."""
    return {
        "title": recipe.title,
        "components": [component.name for component in recipe.components],
        "rows": [_row(row) for row in rows],
    }


def _row(row: Row) -> Data:
    return {
        "line": row.line,
        "action": row.action,
        "component": row.component,
        "title": row.title,
        "in": [_coming(coming) for coming in row.goes_in],
        "beside": [_coming(coming) for coming in row.beside],
        "now": _now(row.now) if row.now else None,
        "where": list(row.where),
        "time": list(row.time),
        "after": [_after(after) for after in row.after],
        "meanwhile": _number(row.meanwhile),
        "leaves": [_leaving(leaving) for leaving in row.leaves],
        "why": [_reason(reason) for reason in row.reasons],
    }


def _number(number: int) -> int | None:
    return None if number < 0 else number


def _coming(coming: Coming) -> Data:
    return {
        "words": coming.words,
        "mass": mass_data(coming.mass) if coming.mass else None,
        "use": _number(coming.use),
        "product": _number(coming.product),
        "went_in": coming.went_in,
        "served": coming.served,
    }


def _now(now: Now) -> Data:
    return {
        "batch": now.number,
        "name": now.name,
        "measure": now.measure or None,
        "mass": mass_data(now.mass) if now.mass else None,
        "went_in": now.went_in,
        "pieces": _pieces(now.pieces),
    }


def _pieces(pieces: tuple[Amount, str] | None) -> Data | None:
    if pieces is None:
        return None
    number, noun = pieces
    return {"lo": number_data(number.lo), "hi": number_data(number.hi), "noun": noun}


def _after(after: After) -> Data:
    return {
        "action": after.action,
        "line": after.line,
        "rule": after.rule,
        "what": after.what or None,
        "from_start": after.from_start,
    }


def _leaving(leaving: Leaving) -> Data:
    mass = mass_data(leaving.mass) if leaving.mass else None
    product, pieces = _number(leaving.product), _pieces(leaving.pieces)
    return {
        "kind": leaving.kind,
        "name": leaving.name,
        "measure": leaving.measure or None,
        "mass": mass,
        "went_in": leaving.went_in,
        "product": product,
        "pieces": pieces,
    }


def _reason(reason: Reason) -> Data:
    return {"words": reason.words, "text": reason.text, "rule": reason.rule, "line": reason.line or None}
