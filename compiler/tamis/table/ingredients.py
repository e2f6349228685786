"""The ingredient table, derived from the uses in the method.

The method names a food where it goes in, perhaps at four places and in three units; the table must say
once how much to buy and weigh. What may be left out, what only serves a purpose (dusting, greasing,
steam) and what goes in to taste is no part of the sum and stands apart.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.kitchen.house import Kitchen
from tamis.kitchen.words import singular
from tamis.model.recipe import Mass, Recipe, Use
from tamis.quantity.display import plural
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient
from tamis.table.adding import Sum, scaled
from tamis.table.rows import Row, RowUse, Supplied, Table

TO_TASTE = "to taste"
Key = tuple[str, str, str]


def build_table(recipe: Recipe, kitchen: Kitchen) -> Table:
    """The table of a recipe: one row a food in order of first use."""
    drafts: dict[Key, _Draft] = {}
    for index, use in enumerate(recipe.uses):
        root = recipe.uses[use.rest_of] if use.rest_of is not None else use
        key = _key(root.ingredient)
        draft = drafts.get(key)
        if draft is None:
            draft = drafts[key] = _Draft(kitchen)
        draft.take(index, use)
    sections: dict[str, list[Row]] = {"rows": [], "purposes": [], "optional": [], "unmeasured": []}
    for (section, _, _), draft in drafts.items():
        sections[section].append(draft.row())
    names = tuple(component.name for component in recipe.components)
    rows, purposes, optional, unmeasured = (tuple(section) for section in sections.values())
    return Table(names, rows, purposes, optional, unmeasured, _supplied(recipe))


def _key(item: Ingredient) -> Key:
    """The section of the table and the food. A food that the goods don't know is known by its name."""
    if item.optional:
        section = "optional"
    elif not item.measured and item.purpose in ("", TO_TASTE):
        section = "unmeasured"
    else:
        section = "purposes" if item.purpose and item.purpose != TO_TASTE else "rows"
    if item.goods is not None:
        return section, item.goods.id, ""
    head, _, last = item.name.lower().rpartition(" ")
    return section, "", f"{head} {singular(last)}"


class _Draft:
    """A row being filled."""

    __slots__ = ("items", "mass", "parts", "sum", "times", "uses")

    def __init__(self, kitchen: Kitchen) -> None:
        self.sum = Sum(kitchen)
        self.parts: dict[str, Sum] = {}
        self.uses: list[RowUse] = []
        self.items: list[Ingredient] = []
        self.times = Fraction(1)
        self.mass: Mass | None = None

    def take(self, index: int, use: Use) -> None:
        """Add a use. The rest of a measure is a place, but nothing more to buy."""
        item, buys = use.ingredient, use.rest_of is None
        part = use.times if use.fraction == 1 else use.times * use.fraction
        span, amount = item.clause.span, scaled(item, part)
        self.uses.append(RowUse(index, use.component, use.action, span, amount, item, _note(item), buys))
        self.mass = use.mass if self.mass is None else _added(self.mass, use.mass)
        if not buys:
            return
        self.items.append(item)
        self.times = use.times
        if item.part:
            self.parts.setdefault(item.part, Sum(self.sum.kitchen)).add(item, use.times)
        else:
            self.sum.add(item, use.times)

    def row(self) -> Row:
        """The finished row."""
        if self.parts:
            self.sum.add_parts(self.parts.values())
        first, total = self.items[0], tuple(self.sum.total)
        once = len(self.items) == 1
        return Row(
            first.name if once else _counted_name(first, total),
            first.goods,
            first,
            tuple(self.uses),
            total,
            tuple(self.sum.also or ()),
            self.times if once else None,
            self.mass or Mass(),
            tuple(self.parts),
            tuple(dict.fromkeys(item.purpose for item in self.items if item.purpose)),
            tuple(other for item in self.items for other in item.alternatives),
            self.sum.estimated,
            self.sum.by_analogy,
        )


def _note(item: Ingredient) -> str:
    """State and preparation of one use: "soft, in small pieces"."""
    if not item.states:
        return item.preparation
    states = " ".join(item.states)
    return f"{states}, {item.preparation}" if item.preparation else states


def _counted_name(first: Ingredient, total: tuple[Measure, ...]) -> str:
    """The first use's name, in the plural once the pieces add up to more than one: 1 lemon, and 2 lemons."""
    last = first.name.rpartition(" ")[2].lower()
    if not total or total[0].unit or total[0].amount.hi <= 1 or singular(last) != last:
        return first.name
    known = first.goods is not None and first.name.lower() == first.goods.name
    return (first.goods.plural if known and first.goods else "") or plural(first.name)


def _added(one: Mass, other: Mass) -> Mass:
    """Both masses together."""
    unknown, uncounted = one.unknown, one.uncounted
    return Mass(
        one.lo + other.lo,
        one.hi + other.hi,
        unknown if unknown == other.unknown else tuple(dict.fromkeys(unknown + other.unknown)),
        uncounted if uncounted == other.uncounted else tuple(dict.fromkeys(uncounted + other.uncounted)),
    )


def _supplied(recipe: Recipe) -> tuple[Supplied, ...]:
    """What comes from other recipes, in order of the text."""
    found = []
    for taking in recipe.takings:
        product = recipe.products[taking.product]
        if product.kind == "used-recipe":
            action = recipe.actions[taking.action]
            place = (action.component, taking.action, taking.span)
            found.append(Supplied(product.name, product.recipe, *place, taking.text, taking.fraction))
    return tuple(found)
