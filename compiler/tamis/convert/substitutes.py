"""What may stand in for a food, in the amount that was asked for.

The rules are ratios ("1 tbsp of fresh for 1 tsp of dried") with one figure a source; the answer takes them by the
amount asked for and keeps their range. A substitute brings its own allergens, which are told.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from tamis.convert.measures import Figure
from tamis.kitchen.equivalents import Equivalent, Mixture, shipped_equivalents
from tamis.kitchen.goods import Found, Goods
from tamis.kitchen.house import Kitchen, default_kitchen
from tamis.quantity.amount import Amount
from tamis.quantity.display import grams, plural
from tamis.quantity.measure import Measure, base, convert
from tamis.quantity.units import UnitKind
from tamis.reading.clauses import Ingredient
from tamis.record import NamedTuple
from tamis.table.wording import ends, measure_text
from tamis.typed import Literal
from tamis.words import LANGUAGE_OF_DATA

# Weights stand beside spoons unless the food's own densities are farther apart: salts in flakes are not one thing.
ALIKE = Fraction(6, 5)


class Instead(NamedTuple):
    """A substitute in words, whose figures they are, advice, and the allergens that the food itself has not."""

    text: str
    sources: tuple[str, ...]
    note: str = ""
    brings: tuple[str, ...] = ()


def instead_of(item: Ingredient, weight: Figure | None, kitchen: Kitchen) -> list[Instead]:
    """All that may stand in for a food; `weight` is what was asked for, in grams, where that is known."""
    if item.goods is None or item.part:
        return []
    rules, wanted = shipped_equivalents(), _Wanted(item, weight, kitchen)
    paired = [wanted.by_pair(pair) for pair in rules.pairs]
    mixed = [wanted.by_mixture(mixture) for mixture in rules.mixtures]
    return [found for found in (*paired, *mixed) if found]


class _Wanted:
    """The amount of a food that is to be replaced."""

    __slots__ = ("goods", "item", "kitchen", "measure", "weight")

    def __init__(self, item: Ingredient, weight: Figure | None, kitchen: Kitchen) -> None:
        assert item.goods is not None
        self.item = item
        self.goods: Goods = item.goods
        self.measure = item.measures[0]
        self.weight = weight.usual if weight else None
        self.kitchen = kitchen

    def by_pair(self, pair: Equivalent) -> Instead | None:
        """The substitute by a rule that names the food on either side."""
        left, right = self._food(pair.left), self._food(pair.right)
        if left is None or right is None:
            return None
        sources = tuple(figure.source for figure in pair.figures)
        least = min(figure.measure.amount.lo for figure in pair.figures)
        most = max(figure.measure.amount.hi for figure in pair.figures)
        unit = pair.figures[0].measure.unit
        if left.goods.id == self.goods.id and not self._is_it(right, unit):
            times = self._times(pair.of, left)
            amount = Amount(times.lo * least, times.hi * most) if times else None
            return self._told(amount, unit, pair.right, right, sources, pair.note)
        if right.goods.id == self.goods.id and right.states in ((), self.item.states):
            times = self._times(Measure(Amount(Fraction(1), Fraction(1)), unit), right)
            of = pair.of.amount
            amount = Amount(times.lo * of.lo / most, times.hi * of.hi / least) if times else None
            return self._told(amount, pair.of.unit, pair.left, left, sources, pair.note)
        return None

    def by_mixture(self, mixture: Mixture) -> Instead | None:
        """The substitute by a rule that makes the food of others."""
        food = self._food(mixture.food)
        times = self._times(mixture.of, food) if food and food.goods.id == self.goods.id else None
        if food is None or times is None:
            return None
        parts, brings = [], dict[str, None]()
        for portion in mixture.parts:
            other = self._food(portion.food)
            amount = Amount(times.lo * portion.measure.amount.lo, times.hi * portion.measure.amount.hi)
            name = self._called(portion.food, other)
            parts.append(f"{self._words(amount, portion.measure.unit, name)} {name}")
            brings |= dict.fromkeys(self._brings(other) if other else ())
        return Instead(" and ".join(parts), (mixture.source,), mixture.note, tuple(brings))

    def _food(self, name: str) -> Found | None:
        """The food of a rule, whose names are English, as the kitchen knows it."""
        rules = default_kitchen(LANGUAGE_OF_DATA)
        if self.kitchen.language == LANGUAGE_OF_DATA:
            return self.kitchen.larder.find(name.split())
        found = rules.larder.find(name.split())
        goods = self.kitchen.larder.get(found.goods.id) if found else None
        return found._replace(goods=goods) if found and goods else None

    def _called(self, name: str, food: Found | None) -> str:
        """What a cook here calls the food of a rule."""
        if food is None or self.kitchen.language == LANGUAGE_OF_DATA:
            return name
        return self.kitchen.larder.called(food.goods, food.states)

    def _is_it(self, food: Found, unit: str) -> bool:
        """Whether this is what was asked for already: spoons of minced garlic instead of spoons of minced garlic."""
        same = food.goods.id == self.goods.id and food.states == self.item.states
        return same and self._kind(self.measure.unit) == self._kind(unit)

    def _kind(self, unit: str) -> UnitKind | Literal["count"]:
        known = self.kitchen.units.get(unit)
        return known.kind if known else "count"

    def _times(self, of: Measure, food: Found) -> Amount | None:
        """How many times the rule's measure of this food is asked for: within a kind exactly, else by weight."""
        kind = self._kind(of.unit)
        if kind == self._kind(self.measure.unit) and kind != "count":
            asked, one = (base(measure, self.kitchen.units) for measure in (self.measure, of))
            return asked.times(1 / one.lo) if asked and one and len(self.item.measures) == 1 else None
        weight = self._weight_of(of, food)
        return self.weight.times(1 / weight) if self.weight and weight else None

    def _weight_of(self, of: Measure, food: Found) -> Fraction | None:
        """What the rule's measure weighs by the usual figures."""
        if self._kind(of.unit) == "count":
            piece = self.kitchen.larder.piece(food.goods, of.unit)
            return piece.usual * of.amount.lo if piece else None
        worth = base(of, self.kitchen.units)
        if worth is None or self._kind(of.unit) == "mass":
            return worth.lo if worth else None
        density = self.kitchen.larder.density(food.goods, food.states)
        return worth.lo * density.usual if density else None

    def _told(
        self, amount: Amount | None, unit: str, name: str, food: Found, sources: tuple[str, ...], note: str
    ) -> Instead | None:
        if amount is None:
            return None
        name = self._called(name, food)
        words = self._words(amount, unit, name)
        if not unit and amount.hi > 1:
            name = food.goods.plural or plural(name, self.kitchen.language)
        return Instead(f"{words} {name}{self._beside(amount, unit, food)}", sources, note, tuple(self._brings(food)))

    def _words(self, amount: Amount, unit: str, name: str) -> str:
        """The amount in the house's own cups and spoons; pieces to the quarter."""
        if self._kind(unit) == "count":
            quarters = [max(Fraction(round(end * 4), 4), Fraction(1, 4)) for end in amount]
            return measure_text(Measure(Amount(*quarters), unit), name, self.kitchen.units)
        if self._kind(unit) == "mass":
            return ends(amount, grams, self.kitchen.language)
        spoons = convert(Measure(amount, unit), "tsp", self.kitchen.units)
        assert spoons is not None
        return measure_text(spoons, name, self.kitchen.units)

    def _beside(self, amount: Amount, unit: str, food: Found) -> str:
        """The same in grams, where one density holds for the food."""
        density = self.kitchen.larder.density(food.goods, food.states)
        ml = base(Measure(amount, unit), self.kitchen.units)
        if self._kind(unit) != "volume" or density is None or ml is None or density.hi > ALIKE * density.lo:
            return ""
        return f" ({ends(ml.times(density.usual), grams, self.kitchen.language)})"

    def _brings(self, food: Found) -> Iterable[str]:
        return [allergen for allergen in food.goods.allergens if allergen not in self.goods.allergens]
