"""*1 tsp ginger* may be the root or the powder, *a bunch of mixed herbs* is hardly dried.

Some foods are sold fresh and dried under one name, and one is several times as strong as the other. The measure makes
the other one likely: a spoon is filled with powder, a bunch is fresh. The figures are those of the food named.

Say which: `[1 tsp ground ginger]`, `[1 tsp grated ginger]`, `[a bunch of fresh herbs]`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Ingredient

RULE = "fresh-or-dried"
LEVEL: Severity = "warning"
BAD = """\
title: Ginger biscuits
makes: 12 biscuits

Beat [120 g soft butter], [100 g caster sugar] and [2 tsp ginger] [in a bowl] [until pale].
Stir in [180 g plain flour], roll [into 12 balls] and heat [the oven] [to 180 °C].
[Bake for 12 min] [on a baking tray] [until golden].
"""
GOOD = """\
title: Ginger biscuits
makes: 12 biscuits

Beat [120 g soft butter], [100 g caster sugar] and [2 tsp ground ginger] [in a bowl] [until pale].
Stir in [180 g plain flour], roll [into 12 balls] and heat [the oven] [to 180 °C].
[Bake for 12 min] [on a baking tray] [until golden].
"""

_SPOON = Fraction(20)
"""Millilitres of the largest spoon."""


def check(view: View) -> Iterator[Diagnostic]:
    """Ingredients measured in the manner of their twin, with no word that says which is meant."""
    kitchen, words = view.kitchen, check_words(view.recipe.language).twins
    for food in view.ingredients:
        if food.goods is None or food.states or food.preparation or not food.measures:
            continue
        at = words.fresh.index(food.goods.id) if food.goods.id in words.fresh else -1
        if at < 0 and food.goods.id not in words.only_dried:
            continue
        twin = kitchen.larder.get(words.dried[at]) if at >= 0 else None
        name = food.name.lower()
        if twin is not None and name not in (twin.name, *twin.aliases) and _by_spoon(food, kitchen):
            message = f"“{food.name}” by the spoon: fresh, or {twin.name}? It is counted as {food.goods.name}"
            yield Diagnostic(RULE, LEVEL, food.name_span, message, f"write `{twin.name}`, or how the fresh is cut")
        elif food.goods.id in words.only_dried and not kitchen.units.get(food.measures[0].unit):
            if set(words.said_dried).intersection(name.split()):
                continue
            message = f"“{food.name}” by the {food.measures[0].unit or 'piece'} are fresh; they are counted as dried"
            hint = f"name the herbs, or write {_herbs(view, words.said_fresh)} or {_herbs(view, words.said_dried)}"
            yield Diagnostic(RULE, LEVEL, food.name_span, message, hint)


def _herbs(view: View, said: Sequence[str]) -> str:
    """Herbs that are said to be fresh, or dried."""
    return example(view.recipe.language, "herbs", said=said[0])


def _by_spoon(food: Ingredient, kitchen: Kitchen) -> bool:
    """Whether a spoon measures it."""
    unit = kitchen.units.get(food.measures[0].unit)
    return unit is not None and unit.kind == "volume" and unit.factor <= _SPOON
