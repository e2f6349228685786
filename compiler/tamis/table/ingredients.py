"""The ingredient table, derived from the uses in the method.

The method names a food where it goes in, perhaps at four places and in three units; the table must say
once how much to buy and weigh. What may be left out, what only serves a purpose (dusting, greasing,
steam) and what goes in to taste is no part of the sum and stands apart.
"""

from __future__ import annotations

from tamis.kitchen.house import Kitchen
from tamis.model.names import bare_name, several
from tamis.model.recipe import Recipe, Use
from tamis.model.words import model_words
from tamis.quantity.measure import Measure
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Ingredient
from tamis.table.adding import add_up, scale, scaled
from tamis.table.rows import Row, RowUse, Supplied, Table
from tamis.table.words import amount_words
from tamis.typed import Literal

Section = Literal["rows", "by-eye", "purposes", "optional", "unmeasured"]
Key = tuple[Section, str, str]


def build_table(recipe: Recipe, kitchen: Kitchen) -> Table:
    """The table of a recipe: one row a food in order of first use."""
    groups: dict[Key, list[tuple[int, Use]]] = {}
    to_taste = amount_words(kitchen.language).to_taste
    goes_in = {use.rest_of for use in recipe.uses if use.rest_of is not None and not use.ingredient.purpose}
    for at, written in enumerate(recipe.uses):
        use = written
        if written.ingredient.percent:
            from tamis.model.percent import weighed

            use = written._replace(ingredient=weighed(written))
        first = at if use.rest_of is None else use.rest_of
        food = recipe.uses[first].ingredient if use.rest_of is not None else use.ingredient
        if food.purpose and first in goes_in:  # 1 tbsp of it greases the tin, the rest goes in
            food = food._replace(purpose="")
        groups.setdefault(_key(food, to_taste, kitchen.language), []).append((at, use))
    sections: dict[Section, list[Row]] = {"rows": [], "purposes": [], "optional": [], "unmeasured": []}
    for key, group in groups.items():
        section: Section = key[0]
        if section == "by-eye":  # beside a measure of the same food it counts in no sum
            section = "unmeasured" if ("rows", *key[1:]) in groups else "rows"
        sections[section].append(_row(group, kitchen))
    sections["rows"].sort(key=lambda row: row.uses[0].use)
    rows, purposes, optional, unmeasured = (tuple(section) for section in sections.values())
    names = tuple(component.name for component in recipe.components)
    unread = tuple(dict.fromkeys(" ".join(one.text.split()) for one in recipe.unread))
    return Table(names, rows, purposes, optional, unmeasured, _supplied(recipe), unread)


def _key(item: Ingredient, to_taste: frozenset[str], language: str) -> Key:
    """The section of the table and the food. A food that the goods don't know is known by its name."""
    section: Section
    if item.optional:
        section = "optional"
    elif item.purpose and item.purpose not in to_taste:
        section = "purposes"
    else:
        section = "rows" if item.measured else "by-eye" if item.vague else "unmeasured"
    if item.goods is not None:
        return section, item.goods.id, _cut(item, language)
    return section, "", nouns(language).one(item.name.lower())


def _cut(item: Ingredient, language: str) -> str:
    """The cut of an animal that is counted: two birds and two breasts of them are not four of anything. Slices and the
    like are cut from the same piece."""
    counted = item.goods is not None and item.goods.show == "meat" and item.piece_word and len(item.measures) == 1
    if not counted or item.measures[0].unit not in ("", item.piece_word):
        return ""
    word = nouns(language).singular(item.piece_word)
    return "" if word in model_words(language).pieces else word


def _row(group: list[tuple[int, Use]], kitchen: Kitchen) -> Row:
    """One food's uses as a row. The rest of a measure is a place of its own, but nothing more to buy."""
    bought = [use for _, use in group if use.rest_of is None]
    items = [use.ingredient for use in bought]
    first, once, sums = items[0], len(items) == 1, add_up(bought, kitchen)
    return Row(
        name=_name(items, sums.total, kitchen.language),
        goods=first.goods,
        first=first,
        uses=tuple([_place(at, use) for at, use in group]),
        total=sums.total,
        also=sums.also,
        once=bought[0].times if once else None,
        parts=_distinct([item.part for item in items]),
        purposes=_distinct([item.purpose for item in items]),
        alternatives=first.alternatives if once else tuple(other for item in items for other in item.alternatives),
        estimated=sums.estimated,
        by_analogy=sums.by_analogy,
    )


def _place(at: int, use: Use) -> RowUse:
    item = use.ingredient
    return RowUse(
        use=at,
        component=use.component,
        action=use.action,
        span=item.clause.span,
        amount=scale(scaled(item, use.times), use.fraction),
        item=item,
        note=_note(item),
        mass=use.mass,
        buys=use.rest_of is None,
    )


def _distinct(words: list[str]) -> tuple[str, ...]:
    """The words that are there, each once, in order."""
    return tuple(dict.fromkeys(filter(None, words))) if any(words) else ()


def _note(item: Ingredient) -> str:
    """State and preparation of one use: "soft, in small pieces"."""
    if not item.states:
        return item.preparation
    states = " ".join(item.states)
    return f"{states}, {item.preparation}" if item.preparation else states


def _name(items: list[Ingredient], total: tuple[Measure, ...], language: str) -> str:
    """The name as first written, without states that don't hold at every use.

    In the plural once the pieces add up to more than one: 1 lemon, and 2 lemons.
    """
    first = items[0]
    if len(items) == 1:
        return first.name
    same = all(item.states == first.states for item in items)
    name = first.name if same else bare_name(first)
    said = name.lower()
    if not total or total[0].unit or total[0].amount.hi <= 1 or nouns(language).one(said) != said:
        return name
    return several(name, first, language)


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
