"""One compiled recipe, before anything is said about it: what a rule looks at.

A check of one file should feel instant, and most rules look at the recipe alone. So what follows from the recipe (its
table, equipment, timeline and formula) is worked out, and its code loaded, when it is first asked for.
"""

from __future__ import annotations

from functools import cached_property

from tamis.checks.counted import bare
from tamis.kitchen.food import FERMENTING
from tamis.quantity.amount import Amount as Weight
from tamis.quantity.amount import total
from tamis.reading.clauses import Ingredient
from tamis.reading.plain import kept_plain, plain_of
from tamis.reading.plain_amounts import amounts
from tamis.record import NamedTuple, made
from tamis.safety.assess import assess
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Any, Self, TypeVar

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence, Set

    from tamis.formula.formula import Formula
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.history import Hands
    from tamis.model.recipe import Action, Recipe, Supply, Use
    from tamis.reading.clauses import Tool
    from tamis.reading.plain import Plain
    from tamis.reading.plain_amounts import Amount
    from tamis.safety.records import Safety
    from tamis.source import Source
    from tamis.syntax.document import Document, Remark
    from tamis.table.rows import EquipmentRow, Table
    from tamis.timeline.records import Timeline

Clause = TypeVar("Clause")


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
        return assess(self.recipe, self.kitchen, self.used, self.hands)

    @cached_property
    def table(self) -> Table:
        """The ingredients, normalised."""
        from tamis.table.ingredients import build_table

        return build_table(self.recipe, self.kitchen)

    @cached_property
    def hands(self) -> Hands:
        """What each line has in hand."""
        return self.recipe.history.hands(len(self.recipe.actions))

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
        if not self.ferments:
            return None
        from tamis.formula.formula import build_formula

        return build_formula(self.recipe, self.kitchen)

    @cached_property
    def ferments(self) -> bool:
        """Whether there is flour in it, and something that raises it as bread is raised."""
        foods = [use.ingredient.goods for use in self.recipe.uses if use.ingredient.goods is not None]
        return any([food.flour for food in foods]) and any([food.role in FERMENTING for food in foods])

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
        return tuple([words for line in self._by_line for words in line])

    @cached_property
    def _by_line(self) -> list[list[Stretch]]:
        kept, kitchen = kept_plain(self.kitchen), self.kitchen
        found = []
        for action in self.recipe.actions:
            texts = [part for part in action.parts if type(part) is Text]
            cut = [(kept.get(text), text, start) for text, (start, _) in texts]
            found.append(
                [made(Stretch, (action, plain_of(text, kitchen) if old is None else old, at)) for old, text, at in cut]
            )
        return found

    def plain_in(self, action: Action) -> list[Stretch]:
        """The plain words of one action."""
        return self._by_line[action.number]

    @cached_property
    def lower(self) -> str:
        """All of the text in small letters."""
        return self.source.text.lower()

    @cached_property
    def said(self) -> Set[str]:
        """Every word and sign of the plain words."""
        return set().union(*[words.plain.said for words in self.plain])

    def saying(self, asked: frozenset[str]) -> list[Stretch]:
        """The plain words in which one of these stands."""
        if asked.isdisjoint(self.said):
            return []
        return [words for words in self.plain if not asked.isdisjoint(words.plain.said)]

    @cached_property
    def amounts(self) -> tuple[tuple[Stretch, Amount], ...]:
        """The amounts in plain words: most recipes have none."""
        longer = [words for words in self.plain if len(words.plain.said) > 1]
        return tuple([(words, amount) for words in longer for amount in words.plain.ask(amounts)])

    @cached_property
    def _clauses(self) -> dict[type[Any], list[Any]]:
        found: dict[type[Any], list[Any]] = {}
        for action in self.recipe.actions:
            for read in action.reads:
                found.setdefault(type(read), []).append((action, read))
        return found

    def each(self, kind: type[Clause]) -> Sequence[tuple[Action, Clause]]:
        """The clauses of a kind with their lines, in the order of the text."""
        return self._clauses.get(kind, ())

    @cached_property
    def batch(self) -> tuple[Use, ...]:
        """All that goes into a batch, and is for no purpose."""
        return tuple([use for use in self.recipe.uses if use.in_batch])

    @cached_property
    def weight(self) -> Weight:
        """What that weighs, in grams."""
        lo = total([use.mass.lo for use in self.batch])
        ranges = any([use.mass.lo is not use.mass.hi for use in self.batch])
        return Weight(lo, total([use.mass.hi for use in self.batch]) if ranges else lo)

    @property
    def several(self) -> bool:
        """Whether it has a component that is not the dish."""
        return len(self.recipe.components) > (self.recipe.dish is not None)

    @property
    def notes(self) -> list[Remark]:
        """The remarks for the reader in which a bracket opens."""
        components = self.recipe.components
        remarks = [remark for component in components for remark in component.remarks]
        remarks += [remark for component in components for step in component.steps for remark in step.remarks]
        return [remark for remark in remarks if "[" in self.source.slice(remark.span)]

    @property
    def filled(self) -> list[Tool]:
        """The equipment that is said to hold something: *a bowl of ice*."""
        return [tool for action in self.recipe.actions for tool in action.tools if tool.contains]

    @property
    def also(self) -> list[Ingredient]:
        """The foods that are measured in two ways."""
        return [food for food in self.ingredients if food.also]

    @cached_property
    def bare(self) -> tuple[tuple[Ingredient, Goods, Weight], ...]:
        """The known foods with a number and no unit: most recipes have few."""
        found = [(food, food.goods, bare(food)) for food in self.ingredients]
        return tuple([(food, goods, number) for food, goods, number in found if number is not None and goods])

    @cached_property
    def ingredients(self) -> tuple[Ingredient, ...]:
        """Every ingredient clause, in the order of the text."""
        return tuple([food for _, food in self.each(Ingredient)])
