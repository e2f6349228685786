"""Recipes by hand: enough of the records to fill a table, without reading a text."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Any

from tamis.kitchen.house import Kitchen, default_kitchen
from tamis.model.recipe import Action, Component, Recipe, Use, Work
from tamis.quantity.amount import Amount
from tamis.quantity.measure import Measure
from tamis.quantity.number import parse
from tamis.reading.clauses import Ingredient, Read, Tool
from tamis.reading.header import Header
from tamis.source import Span
from tamis.syntax.document import Clause

KITCHEN: Kitchen = default_kitchen("en")


def measure(text: str) -> Measure:
    """`2 1/4 tsp`, `140–200 g`, `2 clove`, `8`."""
    found = re.fullmatch(r"([\d/½⅓¼⅛ .–]+?) ?([a-z_ ]*)", text)
    assert found, text
    ends = [parse(end, "en") for end in found[1].split("–")]
    lo, hi = ends[0], ends[-1]
    assert lo is not None and hi is not None, text
    unit = KITCHEN.units.get(found[2]) if found[2] else None
    return Measure(Amount(lo, hi), unit.id if unit else found[2])


def food(said: str, name: str, **more: Any) -> Ingredient:
    """An ingredient: its measures (parted by `plus`; empty for none), its name with states, and the rest."""
    found = KITCHEN.larder.find(name.lower().split())
    states = found.states if found else ()
    for key in ("each", "prepared"):
        if key in more:
            more[key] = measure(more[key])
    if "also" in more:
        more["also"] = tuple(measure(part) for part in more["also"].split(" plus "))
    measures = tuple(measure(part) for part in said.split(" plus ")) if said else ()
    goods = found.goods if found else None
    word = found.piece_word if found else ""
    clause = Clause(f"{said} {name}", Span(0, 0), "en")
    return Ingredient(clause, name, Span(0, 0), goods, states, word, measures, said, **more)


def tool(words: str, **more: Any) -> Tool:
    """A piece of equipment: adjectives and noun."""
    found = KITCHEN.cupboard.find(words.split())
    assert found, words
    name = words.split(" ", len(found.adjectives))[-1]
    adjectives = tuple(word for word in found.adjectives if word != "another")
    return Tool(Clause(words, Span(0, 0), "en"), name, found.item, adjectives, **more)


Entry = Ingredient | Tool | Use | tuple[Ingredient, int]


def recipe(**components: list[list[Entry]]) -> Recipe:
    """A recipe of components, each a list of lines, each a list of clauses; a pair is a food and its repeats."""
    uses: list[Use] = []
    actions: list[Action] = []
    for at, lines in enumerate(components.values()):
        for line in lines:
            number, reads = len(actions), list[Read]()
            for entry in line:
                if isinstance(entry, Tool):
                    reads.append(entry)
                    continue
                uses.append(_use(entry)._replace(action=number, component=at))
                reads.append(uses[-1].ingredient)
            actions.append(Action(number, at, 0, Span(0, 0), (), tuple(reads), (), Work()))
    names = [name.replace("_", " ") for name in components]
    parts = tuple(Component(at, name, None, ()) for at, name in enumerate(names))
    return Recipe("test", Header(title="Test"), "", parts, tuple(actions), tuple(uses), (), (), "en")


def _use(entry: Ingredient | Use | tuple[Ingredient, int]) -> Use:
    if isinstance(entry, Use):
        return entry
    if isinstance(entry, Ingredient):
        return Use(entry, 0, 0)
    return Use(entry[0], 0, 0, times=Fraction(entry[1]))
