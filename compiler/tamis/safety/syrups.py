"""Egg on to which a boiling syrup is poured: divinity, boiled frosting, meringue with cooked sugar.

US FDA ("Egg Safety", playing it safe; read in two copies) holds divinity and boiled frosting to be safe, since hot
syrup is beaten into the whites. Here the two are mixed on paper, as heavy and as hot as the recipe says.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.amount import total
from tamis.safety.clearing import limit_of, reaches
from tamis.safety.data import rules
from tamis.safety.degrees import temperatures
from tamis.safety.records import Clearing, Item
from tamis.safety.signs import role_of
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Container

    from tamis.kitchen.settings import Authority
    from tamis.model.recipe import Recipe
    from tamis.safety.state import State

_SYRUP, _EGG = Fraction(1, 2), Fraction(9, 10)
"""Specific heats beside that of water: of a syrup that is nearly all sugar, and of egg, FROM MEMORY."""
_ROOM = Fraction(20)
_SOFT_BALL = Fraction(112)
"""°C of a syrup of which only the look is told, at the least: the soft ball (common practice)."""


def scald(recipe: Recipe, state: State, candied: Container[int], action: int, authority: Authority) -> None:
    """What the syrup that was poured on to egg does to it."""
    eggs = {item.use: item for item in state.items.values() if _is_beaten(item)}
    sugar = total(
        [use.mass.lo for use in (recipe.uses[at] for at in state.uses if at in candied) if role_of(use) == "sugar"]
    )
    egg = total([recipe.uses[use].mass.hi for use in eggs if use >= 0])
    if not egg or not sugar:
        return
    hot = max(temperatures(state.syrup.lower(), recipe.language), default=_SOFT_BALL)
    warm = (sugar * _SYRUP * hot + egg * _EGG * _ROOM) / (sugar * _SYRUP + egg * _EGG)
    limit = limit_of(next(iter(eggs.values())), authority)
    if limit is not None and reaches(limit, warm, rules().reading):
        done = Clearing(action, state.syrup, "heated")
        state.change(lambda item: item._replace(cleared=done) if _is_beaten(item) else item)


def _is_beaten(item: Item) -> bool:
    return item.hazard == "egg" and item.cleared is None and item.form != "whole"
