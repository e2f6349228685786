"""The ingredient table and the equipment list as records.

A cook who shops and weighs reads one line a food; a cook who works reads where each part of it goes. A
row holds both, as exact measures and not as words: how they are shown (as written, metric, US) is decided
when something is printed.
"""

from __future__ import annotations

from fractions import Fraction
from functools import reduce

from tamis.kitchen.goods import Goods
from tamis.model.mass import Mass, plus
from tamis.quantity.measure import Measure
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.source import Span


class RowUse(NamedTuple):
    """One place where the food goes in. `use` is its index in the recipe.

    `amount` is what goes in there, repeats and shares counted. `buys` is false for the rest of a measure
    that an earlier use wrote down: it goes in here, but adds nothing to the total. `note` tells the state
    and the preparation here.
    """

    use: int
    component: int
    action: int
    span: Span
    amount: tuple[Measure, ...]
    item: Ingredient
    note: str
    mass: Mass
    buys: bool = True


class Row(NamedTuple):
    """All uses of one food, in order of the text; `name` as first written.

    `total` adds them up in the first use's kind; what cannot be said in it follows as a sum of its own.
    `also` adds up the second measures (`480 g (3 1/2 cups)`), if every use has one. `once` is set where a
    single measure makes up the row: so many times is `first` taken.
    `parts` are what is taken off the food (`zest`, `juice`). `estimated`: a piece's weight was needed for
    the sum; `by_analogy`: a figure that a neighbour lends. `scaled`: the measures are products, not the cook's figures.
    """

    name: str
    goods: Goods | None
    first: Ingredient
    uses: tuple[RowUse, ...]
    total: tuple[Measure, ...]
    also: tuple[Measure, ...] = ()
    once: Fraction | None = None
    parts: tuple[str, ...] = ()
    purposes: tuple[str, ...] = ()
    alternatives: tuple[Ingredient, ...] = ()
    estimated: bool = False
    by_analogy: bool = False
    scaled: bool = False

    @property
    def id(self) -> str:
        """The goods' id; empty for a food that the goods don't know."""
        return self.goods.id if self.goods else ""

    @property
    def mass(self) -> Mass:
        """What goes into the batch, all uses together."""
        return reduce(plus, (use.mass for use in self.uses))

    @property
    def divided(self) -> bool:
        """Whether the food is used in more than one place."""
        place = self.uses[0].action
        return any([use.action != place for use in self.uses])

    @property
    def note(self) -> str:
        """State and preparation, if they are the same at every use."""
        return self.uses[0].note if len({use.note for use in self.uses}) == 1 else ""

    @property
    def components(self) -> tuple[int, ...]:
        """The components that take some of it, in order."""
        return tuple(dict.fromkeys(use.component for use in self.uses))


class Supplied(NamedTuple):
    """Another recipe's dish going in: what the cook wrote, and the part used (None if unknown)."""

    name: str
    recipe: str
    component: int
    action: int
    span: Span
    text: str
    fraction: Fraction | None


class Table(NamedTuple):
    """The table of a recipe. `components` are their names, to which rows point by index.

    `rows` make up the dish; `purposes` are for dusting, for the tin, for steam, and count in no sum;
    `optional` may be left out; `unmeasured` go in to taste; `supplied` come from other recipes; `unread`
    are the words of what may be food and could not be read.
    """

    components: tuple[str, ...]
    rows: tuple[Row, ...]
    purposes: tuple[Row, ...] = ()
    optional: tuple[Row, ...] = ()
    unmeasured: tuple[Row, ...] = ()
    supplied: tuple[Supplied, ...] = ()
    unread: tuple[str, ...] = ()

    def row(self, name: str) -> Row | None:
        """The row in the sum for a goods id or a name as shown."""
        return next((row for row in self.rows if name in (row.id, row.name)), None)


class EquipmentRow(NamedTuple):
    """One piece or `number` alike (None for several, nobody says how many); `label` as listed, `actions` and
    `components` where it is needed."""

    name: str
    label: str
    number: Fraction | None
    size: str
    kind: str
    station: str
    actions: tuple[int, ...]
    components: tuple[int, ...]
    span: Span
