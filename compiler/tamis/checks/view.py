"""What a rule may look at: everything that the phases before the checks have made of one recipe."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, NamedTuple

from tamis.reading.clauses import Ingredient

if TYPE_CHECKING:
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Supply
    from tamis.safety.records import Safety
    from tamis.source import Source
    from tamis.syntax.document import Document
    from tamis.table.formula import Formula
    from tamis.table.rows import Table
    from tamis.timeline.records import Timeline


class View(NamedTuple):
    """One compiled recipe, before anything is said about it.

    `used` gives the dishes of other recipes, by stem.
    """

    source: Source
    document: Document
    recipe: Recipe
    table: Table
    timeline: Timeline
    kitchen: Kitchen
    used: Mapping[str, Supply]
    formula: Formula | None = None
    safety: Safety | None = None

    def ingredients(self) -> Iterator[tuple[Action, Ingredient]]:
        """Every ingredient clause with the action that it stands in, in the order of the text."""
        for action in self.recipe.actions:
            for read in action.reads:
                if isinstance(read, Ingredient):
                    yield action, read
