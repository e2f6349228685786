"""A baker's formula: a dough in weights, and in percent of its flour.

Bakers compare doughs by percentages, all of one base. With a preferment there are two bases in use: all flour, that in
the preferment included, or only the flour of the final dough; the same dough has 1.97 % of salt by the one and 3 % by
the other. So a formula says its base, and shows total, preferments and final dough side by side, as the trade prints
them. Milk, eggs, butter and honey are ingredients; the water in them is told apart, where its share is known.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from tamis.quantity.amount import ZERO, Amount
from tamis.record import NamedTuple
from tamis.table.formula_parts import ONE, Line, Part, dough_of, total

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe

Base = Literal["total", "final"]
# The order of the lines in the trade's formulas (common practice): flour, water, salt, yeast, then the rest.
ORDER = ("flour", "water", "salt", "yeast", "starter", "milk", "egg", "fat", "sugar", "flavour", "")


LEAST = 20
"""Flour is at least the so-many-th part of a dough or batter; less of it binds a sauce (common practice: 5 %)."""


class Cell(NamedTuple):
    """A weight in grams and its percentage; the percentage is None where the column has no flour."""

    grams: Amount
    percent: Amount | None


class FormulaRow(NamedTuple):
    """A food, or a preferment (`part`), through the columns; None where a column has none of it.

    `final` stands beside `parts`; `total` is None for a preferment, since its foods are in the rows above.
    `water` is the water in the food itself, for a food that is not water.
    """

    name: str
    goods: Goods | None
    total: Cell | None
    parts: tuple[Cell | None, ...]
    final: Cell | None
    water: Amount | None = None
    part: bool = False


class Column(NamedTuple):
    """A preferment's column: `cell` is its sum, `flour` its base (its own flour), `taken` as in a part."""

    name: str
    component: int
    cell: Cell
    flour: Amount
    ferments: bool
    taken: Fraction


class Formula(NamedTuple):
    """A dough's formula. `flour` is all flour in grams, `base_flour` what 100 % means in `total` and `final`.

    `component` is where the dough is mixed. Percentages below are of `base_flour`: `hydration` counts water alone,
    `liquids` water and milk in full (as many bakers do), `all_water` also the water in eggs, butter, honey …
    `prefermented` is the flour in preferments in percent of all flour. `instant_yeast` is all yeast as instant dry.
    `unweighed` names what has no weight and counts nothing; `sure` is false where a share of unknown size went in.
    """

    base: Base
    component: int
    name: str
    rows: tuple[FormulaRow, ...]
    columns: tuple[Column, ...]
    total: Cell
    final: Cell
    flour: Amount
    base_flour: Amount
    hydration: Amount
    liquids: Amount
    all_water: Amount
    prefermented: Amount
    salt: Amount
    yeast: Amount
    instant_yeast: Amount
    starter: Amount
    bread: bool
    unweighed: tuple[str, ...] = ()
    sure: bool = True


# Grams of instant dry yeast that do the work of one: fresh 0.33 (trade rule, a stored how-to page), active dry 3/4 (a
# bread page). Published factors disagree, so this serves a wide band and is never printed as a weight.
INSTANT = {"fresh-yeast": Fraction(33, 100), "active-dry-yeast": Fraction(3, 4)}


def build_formula(recipe: Recipe, kitchen: Kitchen, base: Base = "total") -> Formula | None:
    """The formula of the dough with the most flour; None where there is no weighed flour, or only to bind a sauce."""
    if not any(use.ingredient.goods is not None and use.ingredient.goods.flour for use in recipe.uses):
        return None
    dough = dough_of(recipe, kitchen)
    return _formula(dough, base) if dough and dough.flour.hi * LEAST > dough.grams.hi else None


def _formula(dough: Part, base: Base) -> Formula:
    parts = list(_parts(dough))
    lines = list(_lines(dough))
    base_flour = dough.flour if base == "total" or not dough.own_flour.hi else dough.own_flour
    by = _middle(base_flour)
    rows = _food_rows(dough, parts, lines, by) + [_part_row(part, dough, parts, by) for part in parts]
    starting = [part for part in parts if part.ferments and part.component != dough.component]
    return Formula(
        "final" if base_flour == dough.own_flour and parts and base == "final" else "total",
        dough.component,
        dough.name,
        tuple(rows),
        tuple(Column(p.name, p.component, _cell(p.grams, _own(p)), p.flour, p.ferments, p.taken) for p in parts),
        _cell(dough.grams, by),
        _cell(dough.grams, by),
        dough.flour,
        base_flour,
        _percent(_role(lines, "water"), by),
        _percent(_role(lines, "water", "milk"), by),
        _percent(total([_water(line) for line in lines]), by),
        _percent(total([line.grams for p in starting for line in p.lines if line.flour]), _middle(dough.flour)),
        _percent(_role(lines, "salt"), by),
        _percent(_role(lines, "yeast"), by),
        _percent(total([line.grams.times(_strength(line)) for line in lines if line.role == "yeast"]), by),
        _percent(_role(lines, "starter"), by),
        _is_bread(dough, lines),
        tuple(dict.fromkeys(line.name for line in lines if not line.known)),
        dough.sure and all(part.sure for part in parts),
    )


def _parts(dough: Part) -> Iterator[Part]:
    """All preferments and other parts with flour, the earliest first."""
    for part in dough.parts:
        yield from _parts(part)
        if part.flour.hi:
            yield part


def _lines(part: Part) -> Iterator[Line]:
    """The foods of a dough, those of its parts first."""
    for each in part.parts:
        yield from _lines(each)
    yield from part.lines


def _own_lines(part: Part) -> list[Line]:
    """The foods that a column shows: its own, and those of parts without flour, which have no column."""
    lines = [line for each in part.parts if not each.flour.hi for line in _lines(each)]
    return lines + list(part.lines)


def _food_rows(dough: Part, parts: list[Part], lines: list[Line], by: Fraction) -> list[FormulaRow]:
    foods = {line.key: line for line in reversed(lines) if line.known}
    ordered = sorted(reversed(foods.values()), key=lambda line: ORDER.index(line.role if not line.flour else "flour"))
    return [_food_row(line, dough, parts, lines, by) for line in ordered]


def _food_row(food: Line, dough: Part, parts: list[Part], lines: list[Line], by: Fraction) -> FormulaRow:
    there = [line for line in lines if line.key == food.key]
    cells = tuple(_of(food, part, _own(part)) for part in parts)
    apart = food.role != "water" and food.goods is not None and food.goods.water is not None
    water = total(map(_water, there)) if apart else None
    whole = _cell(total(line.grams for line in there), by)
    return FormulaRow(food.name, food.goods, whole, cells, _of(food, dough, by), water)


def _of(food: Line, part: Part, by: Fraction) -> Cell | None:
    grams = total(line.grams for line in _own_lines(part) if line.key == food.key)
    return _cell(grams, by) if grams.hi else None


def _part_row(part: Part, dough: Part, parts: list[Part], by: Fraction) -> FormulaRow:
    """A preferment's line in the column that it goes into."""
    cells = tuple(_cell(part.grams, _own(other)) if part in other.parts else None for other in parts)
    return FormulaRow(part.name, None, None, cells, _cell(part.grams, by) if part in dough.parts else None, part=True)


def _own(part: Part) -> Fraction:
    """The base of a preferment's own percentages: the flour that is put into it by name."""
    return _middle(part.own_flour if part.own_flour.hi else part.flour)


def _middle(amount: Amount) -> Fraction:
    """A percentage needs one base, also where the flour is a range."""
    return (amount.lo + amount.hi) / 2


def _cell(grams: Amount, by: Fraction) -> Cell:
    return Cell(grams, _percent(grams, by) if by else None)


def _percent(grams: Amount, by: Fraction) -> Amount:
    if grams.lo is not grams.hi:
        return grams.times(100 / by) if by else ZERO
    share = grams.lo * 100 / by if by else ZERO.lo
    return Amount(share, share)


def _role(lines: list[Line], *roles: str) -> Amount:
    return total(line.grams for line in lines if line.role in roles)


def _strength(line: Line) -> Fraction:
    return INSTANT.get(line.key, ONE)


def _water(line: Line) -> Amount:
    """The water in a food; none where its share is not known."""
    share = line.goods.water if line.goods else None
    return line.grams.times(share) if share else ZERO


def _is_bread(dough: Part, lines: list[Line]) -> bool:
    """A yeasted or leavened dough, more than half of whose dry weight is flour: no cake, no sauce, no batter."""
    dry = dough.grams.hi - total([_water(line) for line in lines]).hi
    return dough.ferments and dough.flour.hi * 2 > dry
