"""Write grammar/units.json from grammar/units.txt.

Units are best defined as a chain (a cup is half a pint, a pint is half a quart …), in a language that
others already check and read: pint's. But loading pint takes a tenth of a second, which a command that
checks one file cannot spare. So pint is asked once, here, in exact fractions, and the compiler reads the
answers.

Run ``python -m tamis.quantity.make_units`` in the checkout after every change of units.txt; a test fails on
drift.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

from tamis.generated import write
from tamis.quantity.units import UnitKind
from tamis.typed import Any

GRAMMAR = Path(__file__).resolve().parents[3] / "grammar"

BASES: dict[UnitKind, str] = {"mass": "g", "volume": "ml", "time": "s", "length": "mm", "temperature": "kelvin"}


def made(definitions: Path) -> str:
    """The text of units.json for a file of definitions. Raises what pint raises if one is wrong."""
    from pint import UnitRegistry

    registry: Any = UnitRegistry(str(definitions), non_int_type=Fraction)
    # The registry lists a unit once for each of its spellings.
    ids = dict.fromkeys(definition.name for definition in registry._units.values())
    # Pint adds intervals of degrees on its own; a recipe has no use for them.
    rows = [_row(registry, unit) for unit in ids if not unit.startswith("delta_")]
    return "[\n" + ",\n".join(json.dumps(row, ensure_ascii=False) for row in rows) + "\n]\n"


def _row(registry: Any, unit: str) -> dict[str, object]:
    definition = registry._units[unit]
    kind = _kind(registry, unit)
    factor = _factor(registry, unit, kind)
    spellings = dict.fromkeys([definition.name, definition.symbol, *definition.aliases])
    return {
        "id": unit,
        "kind": kind,
        "factor": f"{factor.numerator}/{factor.denominator}",
        "system": _system(registry, unit),
        "names": [_spelling(name) for name in spellings],
    }


def _spelling(name: str) -> str:
    # Only single letters tell case apart; the reader lowers the others before it looks them up.
    words = name.replace("_", " ")
    return words if len(words) == 1 else words.lower()


def _kind(registry: Any, unit: str) -> UnitKind:
    mine = registry.get_dimensionality(unit)
    for kind, base in BASES.items():
        if mine == registry.get_dimensionality(base):
            return kind
    return "nominal"


def _factor(registry: Any, unit: str, kind: UnitKind) -> Fraction:
    """What one of the unit is in its kind's base. A degree counts as an interval: its zero is left out."""
    if kind == "nominal":
        return Fraction(1)
    if kind == "temperature":
        scale = registry._units[unit].converter.scale if unit != BASES[kind] else 1
        return _exact(scale)
    return _exact(registry.Quantity(Fraction(1), unit).to(BASES[kind]).magnitude)


def _exact(number: object) -> Fraction:
    # A float slips into a registry of fractions without a word; a rounded cup must not get out of here.
    if not isinstance(number, Fraction | int):
        raise TypeError(f"not an exact number: {number!r}")
    return Fraction(number)


def _system(registry: Any, unit: str) -> str:
    for name in sorted(registry._groups):
        if "_" in name and unit in registry.get_group(name).members:
            return str(name).partition("_")[0]
    return ""


def main() -> None:
    """Write units.json if it is new."""
    write({"grammar/units.json": made(GRAMMAR / "units.txt")})


if __name__ == "__main__":
    main()
