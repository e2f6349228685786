"""Market lists of recipes by hand, in a house whose packs and prices the test writes."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

from tamis.compile import Compiled, compile
from tamis.kitchen.house import Kitchen, house_kitchen
from tamis.library.library import open_library
from tamis.market.dishes import Dish
from tamis.market.lines import Line
from tamis.market.market_list import MarketList, market_list
from tamis.model.recipe import Supply
from tamis.source import Source

BAKE = "[Bake for 40–45 min] [at 180 °C] [until 75 °C (167 °F) in the middle]."
CHECKOUT = Path(__file__).parents[2]


def house(goods: str = "", currency: str = "£") -> Kitchen:
    """A kitchen with these goods of its own; every word of them must be readable."""
    kitchen, problems = house_kitchen(f'[publish]\ncurrency = "{currency}"\n', goods)
    assert not problems, problems
    return kitchen


def cooked(kitchen: Kitchen, *lines: str, head: str = "serves: 4", used: dict[str, Supply] | None = None) -> Compiled:
    """A recipe of one component with these lines, baked through, without a mistake in it."""
    text = f"title: Example\n{head}\n\n# Example\n\n" + "\n".join((*lines, BAKE)) + "\n"
    compiled = compile(Source("example.tamis", text, "example"), kitchen, used or {})
    errors = [finding for finding in compiled.findings if finding.severity == "error"]
    assert not errors, errors
    return compiled


def dish(compiled: Compiled, factor: Fraction | int | str = 1) -> Dish:
    """A compiled recipe as a dish, so many times."""
    return Dish(compiled.recipe, compiled.table, Fraction(factor))


def list_of(kitchen: Kitchen, *lines: str, factor: Fraction | int | str = 1) -> MarketList:
    """The market list of one recipe."""
    return market_list([dish(cooked(kitchen, *lines), factor)], {}, kitchen)


def line(kitchen: Kitchen, clause: str, factor: Fraction | int | str = 1) -> Line:
    """The one line of a recipe with one ingredient."""
    found = list_of(kitchen, f"Mix {clause}.", factor=factor)
    assert len(found.lines) == 1, found.lines
    return found.lines[0]


def demo() -> tuple[Kitchen, dict[str, Dish]]:
    """The demonstration recipes as dishes by file stem, in their own kitchen."""
    library = open_library(CHECKOUT / "recipes")
    return library.kitchen, {entry.stem: dish(entry.compiled) for entry in library.entries}
