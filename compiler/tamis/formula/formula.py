"""A baker's formula: a dough in weights, and in percent of its flour.

Bakers compare doughs by percentages, all of one base. With a preferment there are two bases in use: all flour, that in
the preferment included, or only the flour of the final dough; the same dough has 1.97 % of salt by the one and 3 % by
the other. So a formula says its base, and shows total, preferments and final dough side by side, as the trade prints
them. Milk, eggs, butter and honey are ingredients; the water in them is told apart, where its share is known.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import cached_property

from tamis.formula.parts import ONE, Line, Part, dough_of, total
from tamis.formula.words import dough_words
from tamis.quantity.amount import ZERO, Amount
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.kitchen.food import Role
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe

Base = Literal["total", "final"]
# The order of the lines in the trade's formulas (common practice): flour, water, salt, yeast, then the rest.
ORDER: tuple[Role, ...] = ("flour", "water", "salt", "yeast", "starter", "milk", "egg", "fat", "sugar", "flavour", "")


LEAST = 20
"""Flour is at least the so-many-th part of a dough or batter; less of it binds a sauce (common practice: 5 %)."""


class Cell(NamedTuple):
    """A weight in grams and its percentage."""

    grams: Amount
    percent: Amount


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


def build_formula(recipe: Recipe, kitchen: Kitchen, base: Base = "total") -> Formula | None:
    """The formula of the dough with the most flour; None where there is no weighed flour, or only to bind a sauce."""
    if not any(use.ingredient.goods is not None and use.ingredient.goods.flour for use in recipe.uses):
        return None
    dough = dough_of(recipe, kitchen)
    return Formula(dough, base, kitchen.language) if dough and dough.flour.hi * LEAST > dough.grams.hi else None


class Formula:
    """A dough's formula.

    Percentages of the whole are of `base_flour`. A check asks for two or three of them and a page for everything, so
    each figure is worked out when it is asked for.
    """

    def __init__(self, dough: Part, base: Base, language: str) -> None:
        self._dough = dough
        self._parts = list(_parts(dough))
        self._lines = list(_lines(dough))
        self._asked: Base = base
        self._language = language

    @property
    def component(self) -> int:
        """Where the dough is mixed."""
        return self._dough.component

    @property
    def name(self) -> str:
        """What the dough is called."""
        return self._dough.name

    @property
    def flour(self) -> Amount:
        """Grams of all flour."""
        return self._dough.flour

    @property
    def base_flour(self) -> Amount:
        """What 100 % means in `total` and `final`."""
        own = self._dough.own_flour
        return own if self._asked == "final" and own.hi else self.flour

    @property
    def base(self) -> Base:
        """Whose flour that is: "final" only where there are parts, and flour in the final dough."""
        final = self._asked == "final" and self._parts and self.base_flour == self._dough.own_flour
        return "final" if final else "total"

    @cached_property
    def rows(self) -> tuple[FormulaRow, ...]:
        """The foods in the order of the trade, then the preferments."""
        whole = _by_food(self._lines)
        columns = [(_by_food(_own_lines(part)), _of_one(part.base_flour)) for part in self._parts]
        final = _by_food(_own_lines(self._dough))
        foods = sorted(_foods(self._lines), key=lambda line: ORDER.index(line.role if not line.flour else "flour"))
        return (*(self._food_row(food, whole, columns, final) for food in foods), *map(self._part_row, self._parts))

    def _food_row(self, food: Line, whole: Sums, columns: list[tuple[Sums, Fraction]], final: Sums) -> FormulaRow:
        key, goods, grams = food.key, food.goods, whole[food.key]
        apart = goods is not None and goods.role != "water" and goods.water is not None
        return FormulaRow(
            food.name,
            goods,
            _cell(grams, self._per_gram),
            tuple(_of_it(sums.get(key), per_gram) for sums, per_gram in columns),
            _of_it(final.get(key), self._per_gram),
            _water(food, grams) if apart else None,
        )

    def _part_row(self, part: Part) -> FormulaRow:
        """A preferment's line in the column that it goes into."""
        into = tuple(
            _cell(part.grams, _of_one(other.base_flour)) if part in other.parts else None for other in self._parts
        )
        final = _cell(part.grams, self._per_gram) if part in self._dough.parts else None
        return FormulaRow(part.name, None, None, into, final, part=True)

    @cached_property
    def columns(self) -> tuple[Column, ...]:
        """All preferments and other parts with flour, the earliest first."""
        return tuple(
            Column(p.name, p.component, _cell(p.grams, _of_one(p.base_flour)), p.flour, p.ferments, p.taken)
            for p in self._parts
        )

    @cached_property
    def total(self) -> Cell:
        """All that lies in the dough."""
        return _cell(self._dough.grams, self._per_gram)

    @property
    def final(self) -> Cell:
        """The sum of the final dough's column: its preferments are in it."""
        return self.total

    @cached_property
    def hydration(self) -> Amount:
        """Water alone."""
        return self._role("water")

    @cached_property
    def liquids(self) -> Amount:
        """Water and milk in full, as many bakers count."""
        return self._role("water", "milk")

    @cached_property
    def all_water(self) -> Amount:
        """Also the water in eggs, butter, honey …"""
        return self._percent(self._water)

    @cached_property
    def prefermented(self) -> Amount:
        """The flour in preferments in percent of all flour."""
        starting = [part for part in self._parts if part.ferments and part.component != self.component]
        flour = total(line.grams for part in starting for line in part.lines if line.flour)
        return flour.times(_of_one(self.flour))

    @cached_property
    def salt(self) -> Amount:
        """Salt by its name."""
        return self._role("salt")

    @property
    def rich(self) -> Amount:
        """Sugar and fat, in percent of all flour."""
        return self._role("sugar", "fat")

    @cached_property
    def yeast(self) -> Amount:
        """Yeast of whatever kind, as it is weighed."""
        return self._role("yeast")

    @cached_property
    def instant_yeast(self) -> Amount:
        """All yeast as instant dry."""
        instant = dough_words(self._language).instant
        yeast = (line for line in self._lines if line.role == "yeast")
        return self._percent(total(line.grams.times(instant.get(line.key, ONE)) for line in yeast))

    @cached_property
    def starter(self) -> Amount:
        """Ripe starter."""
        return self._role("starter")

    @cached_property
    def bread(self) -> bool:
        """A yeasted or leavened dough, more than half of whose dry weight is flour: no cake, no sauce, no batter."""
        return self._dough.ferments and self.flour.hi * 2 > self._dough.grams.hi - self._water.hi

    @property
    def unweighed(self) -> tuple[str, ...]:
        """What has no weight and counts nothing."""
        return tuple(dict.fromkeys(line.name for line in self._lines if not line.known))

    @property
    def sure(self) -> bool:
        """Whether the text gives the size of every share that went in."""
        return self._dough.sure and all(part.sure for part in self._parts)

    @cached_property
    def _water(self) -> Amount:
        return total(_water(line, line.grams) for line in self._lines if line.goods is not None and line.goods.water)

    @cached_property
    def _per_gram(self) -> Fraction:
        return _of_one(self.base_flour)

    def _percent(self, grams: Amount) -> Amount:
        return grams.times(self._per_gram)

    def _role(self, *roles: str) -> Amount:
        return self._percent(total(line.grams for line in self._lines if line.role in roles))


Sums = dict[str, Amount]


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


def _foods(lines: list[Line]) -> Iterator[Line]:
    """Each food with a weight once, as its first line names it, in the order of the last ones."""
    return reversed({line.key: line for line in reversed(lines) if line.known}.values())


def _by_food(lines: Iterable[Line]) -> Sums:
    """What there is of each food."""
    there: dict[str, list[Amount]] = {}
    for line in lines:
        there.setdefault(line.key, []).append(line.grams)
    return {key: total(grams) for key, grams in there.items()}


def _of_one(flour: Amount) -> Fraction:
    """What one gram is in percent of some flour; a percentage needs one base, also where the flour is a range."""
    return 200 / (flour.lo + flour.hi)


def _cell(grams: Amount, per_gram: Fraction) -> Cell:
    return Cell(grams, grams.times(per_gram))


def _of_it(grams: Amount | None, per_gram: Fraction) -> Cell | None:
    """The cell of a food; None where a column has none of it."""
    return _cell(grams, per_gram) if grams is not None and grams.hi else None


def _water(line: Line, grams: Amount) -> Amount:
    """The water in so much of a food; none where its share is not known."""
    share = line.goods.water if line.goods else None
    return grams.times(share) if share else ZERO
