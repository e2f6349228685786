"""By what a recipe's clauses show that something burns, scalds, spoils in a jar or chokes."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING

from tamis.reading.clauses import Cue, Target
from tamis.safety.degrees import temperatures

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.model.recipe import Action, Recipe
    from tamis.safety.state import State

_DEEP = Fraction(200)
"""Grams of oil from which a pan of it counts as deep (common practice)."""
_SUGAR_HOT = Fraction(104)
"""°C from which a boiling syrup is far hotter than water: jam sets at 105 (common practice)."""


def words_of(action: Action) -> str:
    """The plain words and clauses of an action, in small letters."""
    return " ".join(part.text for part in action.parts).lower()


def scalding_steam(recipe: Recipe, action: Action) -> bool:
    """Water for steam, or water on a hot tray or stone."""
    purposes = [recipe.uses[use].ingredient.purpose for use in action.uses]
    if "for steam" in purposes:
        return True
    water = any(_id(recipe, use) == "water" for use in action.uses)
    return water and action.work.station == "oven" and bool(re.search(r"\b(tray|stone)\b", words_of(action)))


def hot_oil(recipe: Recipe, action: Action) -> bool:
    """Deep frying, much oil in a pan, or oil until it smokes."""
    if any(use.verb.base == "deep-fry" for use in action.verbs):
        return True
    for use in action.uses:
        goods = recipe.uses[use].ingredient.goods
        deep = recipe.uses[use].mass.hi >= _DEEP or recipe.uses[use].ingredient.purpose == "for frying"
        hot = bool({"heat", "fry"} & {verb.verb.base for verb in action.verbs})
        if goods and _oil(goods) and deep and hot:
            return True
    smokes = any(isinstance(read, Cue) and "smok" in read.text for read in action.reads)
    return smokes and action.work.station == "ring"


def hot_sugar(recipe: Recipe, action: Action) -> bool:
    """Sugar boiled to more than the boiling point of water."""
    if action.work.station not in ("ring", ""):
        return False
    asked = [read for read in action.reads if isinstance(read, (Cue, Target))]
    hot = any(t >= _SUGAR_HOT for read in asked for t in temperatures(read.clause.text))
    caramel = any("caramel" in read.clause.text.lower() or "amber" in read.clause.text.lower() for read in asked)
    return (hot or caramel) and any(
        use.component == action.component and use.ingredient.goods and use.ingredient.goods.role == "sugar"
        for use in recipe.uses
    )


def plain_nuts(recipe: Recipe, dish: State) -> bool:
    """Nuts that nobody chops, grinds or blends."""
    small = ("chopped", "ground", "flaked", "crushed", "slivered", "sliced", "grated")
    for use in dish.uses:
        food = recipe.uses[use].ingredient
        nut = food.goods is not None and food.goods.show == "nut" and {"tree-nut", "peanut"} & set(food.goods.allergens)
        said = f"{' '.join(food.states)} {food.preparation} {food.name}"
        if nut and not any(word in said for word in (*small, "butter", "paste", "milk", "meal", "flour", "oil")):
            action = recipe.actions[recipe.uses[use].action]
            if not {v.verb.base for v in action.verbs} & {"blend", "process", "grind", "chop", "pulse", "crush"}:
                return True
    return False


def oil_with_garlic(recipe: Recipe, dish: State) -> bool:
    """A dish that is mostly oil, with garlic or herbs in it, as something to keep."""
    total = oil = Fraction(0)
    if not any(_hazard(recipe, use) == "garlic-in-oil" for use in dish.uses):
        return False
    for use in dish.uses:
        entry = recipe.uses[use]
        total += entry.mass.hi
        if entry.ingredient.goods and _oil(entry.ingredient.goods):
            oil += entry.mass.hi
    return oil > 0 and oil * 2 >= total


def shelf_jars(recipe: Recipe) -> bool:
    """Food put into jars that are closed."""
    closed = re.compile(r"\b(lids?|seal|screw)\b")
    preserve = "preserve" in recipe.header.tags or recipe.header.course == "preserve"
    for action in recipe.actions:
        jar = any(tool.equipment.name == "jar" for tool in action.tools)
        if jar and (preserve or closed.search(words_of(action))):
            return True
    return False


def _oil(goods: Goods) -> bool:
    return goods.role == "fat" and goods.liquid


def _hazard(recipe: Recipe, use: int) -> str:
    goods = recipe.uses[use].ingredient.goods
    return goods.hazard if goods else ""


def _id(recipe: Recipe, use: int) -> str:
    goods = recipe.uses[use].ingredient.goods
    return goods.id if goods else ""
