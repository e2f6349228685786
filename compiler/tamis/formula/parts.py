"""What lies in a dough, and by which way it came there.

The ingredient table adds up all that a recipe uses; a baker asks what is in the *dough*: not the egg wash, not the
filling, not the levain that is kept for next time, and of the poolish that went in, what it is made of. So the flow is
walked back from the dough's component to those whose products went into it, each a part with lines of its own.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from functools import cached_property
from math import lcm

from tamis.formula.words import dough_words
from tamis.kitchen.food import FERMENTING
from tamis.model.names import bare_name
from tamis.quantity.amount import ZERO, Amount
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.model.mass import Mass
    from tamis.model.recipe import Product, Recipe, Taking, Use

ONE = Fraction(1)


class Line(NamedTuple):
    """One food in a part, in grams; `known` is false where it has no weight (and counts nothing)."""

    name: str
    goods: Goods | None
    grams: Amount
    known: bool = True

    @property
    def key(self) -> str:
        """What makes two lines the same food."""
        return self.goods.id if self.goods else self.name.lower()

    @property
    def role(self) -> str:
        """Its place in a formula, as the goods say; empty where they don't."""
        return self.goods.role if self.goods else ""

    @property
    def flour(self) -> bool:
        """Whether it counts as flour."""
        return self.goods is not None and self.goods.flour


class Part:
    """A component's product as it goes into the next one.

    `lines` is what went in by name, `parts` what came from other components (their `grams` are what went in here).
    `taken` tells how much of the product as made went on: all of it, or less where some is kept or used elsewhere;
    lines and parts are what goes on. `sure` is false where a share of unknown size went in.
    """

    def __init__(
        self,
        component: int,
        name: str,
        lines: tuple[Line, ...],
        parts: tuple[Part, ...],
        taken: Fraction = ONE,
        sure: bool = True,
    ) -> None:
        self.component = component
        self.name = name
        self.lines = lines
        self.parts = parts
        self.taken = taken
        self.sure = sure

    @cached_property
    def own_flour(self) -> Amount:
        """Grams of flour that went in by name."""
        return total(line.grams for line in self.lines if line.flour)

    @cached_property
    def flour(self) -> Amount:
        """Grams of all flour in it."""
        return total([self.own_flour, *(part.flour for part in self.parts)])

    @property
    def base_flour(self) -> Amount:
        """What its own percentages are of: the flour that is put into it by name, if any is."""
        return self.own_flour if self.own_flour.hi else self.flour

    @cached_property
    def grams(self) -> Amount:
        """What it weighs, all in all."""
        return total([*(line.grams for line in self.lines), *(part.grams for part in self.parts)])

    @cached_property
    def ferments(self) -> bool:
        """Whether yeast or a starter is in it."""
        return any(line.role in FERMENTING for line in self.lines) or any(part.ferments for part in self.parts)

    def times(self, factor: Fraction, taken: Fraction) -> Part:
        """So much of it; `taken` is what that is of the product as made."""
        if factor == 1:
            return Part(self.component, self.name, self.lines, self.parts, taken, self.sure)
        lines = tuple(line._replace(grams=line.grams.times(factor)) for line in self.lines)
        parts = tuple(part.times(factor, part.taken) for part in self.parts)
        return Part(self.component, self.name, lines, parts, taken, self.sure)


def total(amounts: Iterable[Amount]) -> Amount:
    """The sum, end by end."""
    there = list(amounts)
    if len(there) < 2:
        return there[0] if there else ZERO
    lo = _sum([amount.lo for amount in there])
    if all(amount.lo is amount.hi for amount in there):
        return Amount(lo, lo)
    return Amount(lo, _sum([amount.hi for amount in there]))


def _sum(numbers: list[Fraction]) -> Fraction:
    """Exact. Adding fractions one by one is what would take the time here: each step cancels anew."""
    ratios = [number.as_integer_ratio() for number in numbers]
    common = lcm(*[below for _, below in ratios])
    return Fraction(sum([above * (common // below) for above, below in ratios]), common)


# No dough is made in so many, or set aside so often; a text that is has no formula, and need not be walked through.
_MOST_COMPONENTS, _MOST_PRODUCTS = 60, 200


def dough_of(recipe: Recipe, kitchen: Kitchen) -> Part | None:
    """The part that holds the most flour, if one is put into it by name; None for a recipe without flour."""
    if len(recipe.components) > _MOST_COMPONENTS or len(recipe.products) > _MOST_PRODUCTS:
        return None
    places = {use.component for use in recipe.uses if _is_flour(use)}
    walk = _Walk(recipe, kitchen)
    doughs = [walk.part(place, ()) for place in sorted(places)]
    found = [dough for dough in doughs if dough is not None and dough.flour.hi]
    return max(found, key=lambda dough: (dough.flour.hi, dough.component)) if found else None


def _is_flour(use: Use) -> bool:
    goods = use.ingredient.goods
    return use.in_batch and goods is not None and goods.flour


class _Walk:
    """The way back from a component to all that its product is made of."""

    __slots__ = ("kept", "kitchen", "made", "recipe", "separated", "takings", "uses")

    def __init__(self, recipe: Recipe, kitchen: Kitchen) -> None:
        self.recipe = recipe
        self.kitchen = kitchen
        self.made: dict[int, Part | None] = {}
        self.separated = dough_words(kitchen.language).separated
        self.uses: dict[int, list[tuple[int, Use]]] = {}
        self.kept: dict[int, list[Amount]] = {}
        self.takings: dict[int, list[Taking]] = {}
        for at, use in enumerate(recipe.uses):
            self.uses.setdefault(use.component, []).append((at, use))
        for product in recipe.products:
            if product.kind == "by-product" and product.mass.known:
                self.kept.setdefault(product.component, []).append(Amount(product.mass.lo, product.mass.hi))
        for taking in recipe.takings:
            self.takings.setdefault(taking.product, []).append(taking)

    def part(self, component: int, within: tuple[int, ...]) -> Part | None:
        """What a component's product is made of; None for one without food. `within`: those already on the way."""
        if component not in self.made:
            self.made[component] = self._part(component, within)
        return self.made[component]

    def _part(self, component: int, within: tuple[int, ...]) -> Part | None:
        index = self.recipe.components[component].product
        if index is None or component in within:
            return None
        lines: list[Line] = []
        parts: list[Part] = []
        sure = self._gather(index, component, ONE, (*within, component), lines, parts)
        made = Part(component, self.recipe.components[component].name, tuple(lines), tuple(parts), sure=sure)
        return self._less_kept(made)

    def _less_kept(self, made: Part) -> Part:
        """Without what is kept back or left behind, of which we know the weight."""
        kept = total(self.kept.get(made.component, ()))
        if not kept.hi or kept.hi >= made.grams.hi:
            return made
        taken = 1 - kept.hi / made.grams.hi
        return made.times(taken, taken)

    def _gather(
        self,
        index: int,
        component: int,
        factor: Fraction,
        within: tuple[int, ...],
        lines: list[Line],
        parts: list[Part],
    ) -> bool:
        """Collect what a product is made of; what was set aside in the same component counts as put in by name."""
        product = self.recipe.products[index]
        sources = tuple(dict.fromkeys(product.from_products))
        before = {use for source in sources for use in self.recipe.products[source].uses}
        lines.extend(self._lines(product, component, factor, before))
        sure = True
        for source in sources:
            share = self._share(source, component)
            sure = sure and share is not None
            went_in = factor * (ONE if share is None else share)
            there = self.recipe.products[source]
            if there.component == component:
                sure = self._gather(source, component, went_in, within, lines, parts) and sure
            elif there.kind == "component":
                part = self.part(there.component, within)
                parts.extend([part.times(went_in, part.taken * went_in)] if part else [])
            else:
                lines.append(_whole(there, went_in))
        return sure

    def _share(self, source: int, component: int) -> Fraction | None:
        """How much of a product went into a component; None where the text does not say."""
        shares = [
            taking.fraction
            for taking in self.takings.get(source, ())
            if self.recipe.actions[taking.action].component == component
        ]
        known = [share for share in shares if share is not None]
        if len(known) < len(shares):
            return None
        return sum(known, Fraction(0)) if known else ONE

    def _lines(self, product: Product, component: int, factor: Fraction, before: set[int]) -> Iterator[Line]:
        """The foods that went into a product by name, in the order of the text."""
        own = set(product.uses) - before
        if product.kind == "set-aside" and not product.from_products and len(own) == 1:
            only = self.recipe.uses[next(iter(own))]
            if any(word in only.ingredient.preparation for word in self.separated):
                found = self.kitchen.larder.named(product.name)
                yield _whole(product, factor)._replace(goods=found.goods if found else None)
                return
        for at, use in self.uses.get(component, ()):
            there = at in own or (use.rest_of is not None and use.rest_of in own)
            if there and use.in_batch:
                yield _line(use, factor)


def _line(use: Use, factor: Fraction) -> Line:
    known = use.mass.known and bool(use.mass.hi)
    grams = _grams(use.mass, factor) if known else ZERO
    name, part = bare_name(use.ingredient), use.ingredient.part
    return Line(f"{name}, {part}" if part else name, use.ingredient.goods, grams, known)


def _grams(mass: Mass, factor: Fraction) -> Amount:
    lo = mass.lo if factor is ONE else mass.lo * factor
    return Amount(lo, lo) if mass.lo is mass.hi or mass.lo == mass.hi else Amount(lo, mass.hi * factor)


def _whole(product: Product, factor: Fraction) -> Line:
    """A product whose own formula is not at hand: another recipe's dish, or the yolks of separated eggs."""
    grams = _grams(product.mass, factor) if product.mass.known else ZERO
    return Line(product.name, None, grams, product.mass.known and bool(product.mass.hi))
