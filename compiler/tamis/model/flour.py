"""What the percentages of flour are of: the flour weighed in a component, or in the header."""

from __future__ import annotations

from fractions import Fraction

from tamis.model.mass import NOTHING, Mass, mass_of, plus, times
from tamis.model.words import model_words
from tamis.quantity.amount import Amount
from tamis.quantity.measure import grams
from tamis.reading.clauses import Ingredient
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from tamis.kitchen.house import Kitchen
    from tamis.reading.reading import ComponentRead, Reading


class Flour:
    """What the percentages of flour are of, component by component; worked out when one is first wanted."""

    __slots__ = ("_header", "_weighed", "kitchen", "reading")

    def __init__(self, reading: Reading, kitchen: Kitchen) -> None:
        self.reading = reading
        self.kitchen = kitchen
        self._weighed: list[Mass] | None = None
        self._header: Amount | None = None

    def base(self, component: int) -> Amount | None:
        """Grams of the flour weighed in the component, else of the header's flour; None where neither is known."""
        if self._weighed is None:
            self._weighed = [self._in(each) for each in self.reading.components]
            self._header = self._said()
        own = self._weighed[component]
        if own.hi or own.unknown:
            return Amount(own.lo, own.hi) if own.known else None
        return self._header

    def _in(self, component: ComponentRead) -> Mass:
        """The flour that is weighed or measured in a component."""
        total = NOTHING
        for food, factor in foods_of(component):
            if food.percent is None and food.goods is not None and food.goods.flour:
                total = plus(total, times(mass_of(food, self.kitchen), factor))
        return total

    def _said(self) -> Amount | None:
        """The header's flour; for a wanted weight of dough, that weight over the sum of all parts of the flour."""
        header, units = self.reading.header, self.kitchen.units
        if header.flour is not None:
            return grams(header.flour, units)
        dough = grams(header.dough, units) if header.dough is not None else None
        if dough is None:
            return None
        whole = self._sum()
        return Amount(dough.lo / whole.hi, dough.hi / whole.lo) if whole.lo else None

    def _sum(self) -> Amount:
        """All parts of the header's flour, as a share of it: 1.7 for 100 + 67 + 2 + 1 %."""
        assert self._weighed is not None
        total = Amount(Fraction(0), Fraction(0))
        for component, own in zip(self.reading.components, self._weighed, strict=True):
            if own.hi or own.unknown:
                continue
            for food, factor in foods_of(component):
                if of_flour(food, self.kitchen.language) and food.percent and not food.percent.per_kg:
                    total = total.plus(food.percent.amount.times(factor / 100))
        return total


def of_flour(food: Ingredient, language: str) -> bool:
    """Whether an ingredient that goes into the batch is given in percent of flour."""
    if food.percent is None or food.optional or food.purpose:
        return False
    return food.percent.of in model_words(language).flour


def foods_of(component: ComponentRead) -> Iterator[tuple[Ingredient, Fraction]]:
    """The ingredients of a component, each with how many times it goes in."""
    from tamis.reading.repeated import repeats_of_step, times_of_food

    for step in component.steps:
        again = repeats_of_step(step.actions[-1]) if step.actions else ()
        for action in step.actions:
            factor = (1 + again[0].number if again else 1) * times_of_food(action)
            for event in action.events:
                if isinstance(event, Ingredient):
                    yield event, factor
