"""Tins and pans by their size, and one in place of another.

The batter for a 20 cm tin comes out thin and dry from a 23 cm one: what has to fit is the area, or the volume where the
depth is known. Area of a circle: π/4 of its diameter's square; the rest is multiplication.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from itertools import pairwise

from tamis.checks.scaling._scene import practice
from tamis.checks.words import Words, check_words
from tamis.kitchen.house import Kitchen
from tamis.reading.clauses import Tool
from tamis.record import NamedTuple
from tamis.syntax.clause import parse_clause
from tamis.syntax.items import Item, Product, Quantity, Word
from tamis.typed import Literal

PI = Fraction(3141592653589793, 10**15)
FINEST = 1000
"""Factors that hold π are taken to the nearest fraction with a denominator up to this: 1 in a million."""

Shape = Literal["", "round", "square", "rectangular"]


@cache
def shapes(language: str) -> dict[str, Shape]:
    """The shapes of tins, by the words that name them."""
    words = check_words(language).scaling
    named: tuple[tuple[Shape, Words], ...] = (
        ("round", words.rounds),
        ("square", words.squares),
        ("rectangular", words.rectangles),
    )
    return {word: shape for shape, group in named for word in group}


class Pan(NamedTuple):
    """A tin: its shape ("" if nobody says), its sides or diameter and depth in mm, or what it holds in ml."""

    shape: Shape
    sides: tuple[Fraction, ...]
    depth: Fraction | None
    holds: Fraction | None
    size: str

    @property
    def area(self) -> Fraction | None:
        """Its base in mm²; None if only its volume is known."""
        if len(self.sides) == 2:
            return self.sides[0] * self.sides[1]
        if not self.sides:
            return None
        return self.sides[0] ** 2 * (PI / 4 if self.shape == "round" else 1)

    @property
    def volume(self) -> Fraction | None:
        """What it holds in ml, if that is said or the depth is."""
        if self.holds is not None or self.area is None or self.depth is None:
            return self.holds
        return self.area * self.depth / 1000

    @property
    def text(self) -> str:
        """Size and shape in words: "23 cm round"."""
        return f"{self.size} {self.shape}".rstrip() if self.shape != "rectangular" else self.size


def read_pan(text: str, kitchen: Kitchen) -> Pan | None:
    """`23 cm round`, `9-inch square, 2 inches deep`, `20 × 30 cm`, `2 litre`; None where no size stands."""
    items = parse_clause(text, kitchen.language).items
    at = next((n for n, item in enumerate(items) if _is_size(item)), None)
    if at is None:
        return None
    item = items[at]
    known = shapes(kitchen.language)
    words = [word.lower for word in items if isinstance(word, Word)]
    shape: Shape = next((known[word] for word in words if word in known), "")
    size = text[item.span.start : item.span.end].replace("-", " ")
    if isinstance(item, Quantity) and item.kind in ("mass", "volume"):
        unit = kitchen.units.get(item.unit)
        holds = item.amount.lo * unit.factor if unit and item.kind == "volume" else None
        return Pan(shape, (), None, holds, size) if holds else None
    lengths = _lengths(item, kitchen)
    depth = _depth(items[at + 1 :], kitchen)
    if shape == "round" and len(lengths) == 2:
        return Pan(shape, lengths[:1], max(lengths[1:]), None, size)
    if len(lengths) > 2:
        *_, depth = lengths
        lengths = lengths[:2]
    if not 1 <= len(lengths) <= 2 or not all(lengths):
        return None
    return Pan("rectangular" if len(lengths) == 2 else shape, lengths, depth, None, size)


def _is_size(item: Item) -> bool:
    if isinstance(item, Product):
        return item.kind == "length"
    return isinstance(item, Quantity) and item.kind in ("length", "volume")


def _lengths(item: Item, kitchen: Kitchen) -> tuple[Fraction, ...]:
    assert isinstance(item, Product | Quantity)
    unit = kitchen.units.get(item.unit)
    factors = item.factors if isinstance(item, Product) else (item.amount,)
    return tuple(factor.lo * (unit.factor if unit else 0) for factor in factors)


def _depth(items: tuple[Item, ...], kitchen: Kitchen) -> Fraction | None:
    """`5 cm deep`, somewhere after the size."""
    upright = check_words(kitchen.language).scaling.depths
    for item, word in pairwise(items):
        deep = isinstance(word, Word) and word.lower in upright
        if deep and isinstance(item, Quantity) and item.kind == "length":
            return _lengths(item, kitchen)[0]
    return None


def by_the_piece(tool: Tool, kitchen: Kitchen) -> bool:
    """Whether more food takes more of these, whatever their size: jars, glasses, and of several dishes and tins those
    that hold a portion each, as ramekins do."""
    if not tool.equipment.grows or not tool.equipment.station:
        return tool.equipment.grows
    pan = pan_of(tool, kitchen) if tool.number > 1 else None
    return pan is not None and _is_portion(pan)


def _is_portion(pan: Pan) -> bool:
    amounts = practice().amounts
    if pan.volume is not None:
        return pan.volume <= amounts["portion"]
    return pan.area is not None and pan.area <= amounts["portion base"] * 100


def pan_of(tool: Tool, kitchen: Kitchen) -> Pan | None:
    """The size of a recipe's tin or pan; None without one. A cake tin is round if nothing else is said."""
    if tool.equipment.kind != "vessel" or not tool.size:
        return None
    pan = read_pan(tool.size, kitchen)
    if pan is None or (len(pan.sides) == 1 and _is_depth(tool, kitchen)):
        return None
    words = tool.clause.text.lower().replace("-", " ").split()
    known = shapes(kitchen.language)
    shape: Shape = next((known[word] for word in words if word in known), "")
    if not shape and tool.equipment.round:
        shape = "round"
    depth = _depth(tool.clause.items.items, kitchen)
    if len(pan.sides) == 1:
        pan = pan._replace(shape=shape)
    return pan._replace(depth=pan.depth or depth)


def _is_depth(tool: Tool, kitchen: Kitchen) -> bool:
    """*(65 mm deep)*: whether its only size tells how deep it is, and nobody says how wide."""
    behind = tool.clause.text.partition(tool.size)[2].lower().strip(" -").partition(" ")[0]
    return behind.rstrip("),") in check_words(kitchen.language).scaling.depths


def pan_factor(old: Pan, new: Pan) -> Fraction | None:
    """How much more the new tin takes: by volume where both depths are known, else by area; None if unknown.

    Exact for tins of one shape; where π does not cancel, to one in a million.
    """
    if not new.shape and len(new.sides) == 1:
        new = new._replace(shape=old.shape)
    if len(old.sides) == len(new.sides) == 1 and "" in (old.shape, new.shape) and old.shape != new.shape:
        return None
    for one, other in ((old.volume, new.volume), (old.area, new.area)):
        if one and other:
            return (other / one).limit_denominator(FINEST)
    return None
