"""One compiled recipe, before anything is said about it: what a rule looks at.

A check of one file should feel instant, and most rules look at the recipe alone. So what follows from the recipe (its
table, equipment, timeline and formula) is worked out, and its code loaded, when it is first asked for.
"""

from __future__ import annotations

from functools import cached_property

from tamis.reading.clauses import Ingredient
from tamis.reading.plain import plain_of
from tamis.reading.plain_amounts import amounts
from tamis.record import NamedTuple
from tamis.safety.assess import assess
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tamis.formula.formula import Formula
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Action, Recipe, Supply
    from tamis.reading.plain import Plain
    from tamis.reading.plain_amounts import Amount
    from tamis.safety.records import Safety
    from tamis.source import Source
    from tamis.syntax.document import Document
    from tamis.table.rows import EquipmentRow, Table
    from tamis.timeline.records import Timeline


class Stretch(NamedTuple):
    """Plain words of an action, and where they begin in the file."""

    action: Action
    plain: Plain
    start: int

    def span(self, first: int, end: int) -> Span:
        """The place of the tokens from one to that before `end`."""
        return Span(self.plain.starts[first] + self.start, self.plain.ends[end - 1] + self.start)


class View:
    """A recipe with the kitchen that it was read for; `used` gives the dishes of other recipes, by stem."""

    def __init__(
        self,
        source: Source,
        document: Document,
        recipe: Recipe,
        kitchen: Kitchen,
        used: Mapping[str, Supply],
    ) -> None:
        self.source = source
        self.document = document
        self.recipe = recipe
        self.kitchen = kitchen
        self.used = used

    @cached_property
    def safety(self) -> Safety:
        """Its hazards, allergens and cautions."""
        return assess(self.recipe, self.kitchen, self.used)

    @cached_property
    def table(self) -> Table:
        """The ingredients, normalised."""
        from tamis.table.ingredients import build_table

        return build_table(self.recipe, self.kitchen)

    @cached_property
    def equipment(self) -> tuple[EquipmentRow, ...]:
        """What is needed beside food, in order of need."""
        from tamis.table.equipment import equipment_list

        return equipment_list(self.recipe, self.kitchen)

    @cached_property
    def timeline(self) -> Timeline:
        """What is done when."""
        from tamis.timeline.timeline import build_timeline

        return build_timeline(self.recipe, self.kitchen, self.used)

    @cached_property
    def formula(self) -> Formula | None:
        """The baker's formula; None for what is no dough, and for one in which nothing ferments: it is no bread."""
        foods = [use.ingredient.goods for use in self.recipe.uses if use.ingredient.goods is not None]
        if not any(food.flour for food in foods):
            return None
        from tamis.formula.formula import build_formula
        from tamis.formula.parts import FERMENTING

        ferments = any(food.role in FERMENTING for food in foods)
        return build_formula(self.recipe, self.kitchen) if ferments else None

    def again(self) -> Self:
        """The same, with whatever has been made of it by now."""
        other = object.__new__(type(self))
        other.__dict__.update(self.__dict__)
        return other

    def with_table(self, table: Table) -> Self:
        """The same with another table."""
        other = self.again()
        other.table = table
        return other

    def shown_as(self, recipe: Recipe) -> Self:
        """The same with other sentences for the reader: all that follows from the recipe stays as it is."""
        assert self.table and self.timeline and self.equipment is not None, "worked out before the recipe changes"
        other = self.again()
        other.formula = self.formula
        other.recipe = recipe
        return other

    @cached_property
    def plain(self) -> tuple[Stretch, ...]:
        """The plain words of each action, cut up, in the order of the text."""
        return tuple([words for action in self.recipe.actions for words in self.plain_in(action)])

    def plain_in(self, action: Action) -> list[Stretch]:
        """The plain words of one action."""
        parts = (part for part in action.parts if isinstance(part, Text))
        return [Stretch(action, plain_of(part.text, self.kitchen), part.span.start) for part in parts]

    @cached_property
    def amounts(self) -> tuple[tuple[Stretch, Amount], ...]:
        """The amounts in plain words: most recipes have none."""
        return tuple([(words, amount) for words in self.plain for amount in words.plain.ask(amounts)])

    @cached_property
    def ingredients(self) -> tuple[Ingredient, ...]:
        """Every ingredient clause, in the order of the text."""
        return tuple([read for action in self.recipe.actions for read in action.reads if isinstance(read, Ingredient)])
