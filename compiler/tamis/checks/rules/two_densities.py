"""One ingredient with two measures in two places, and a cup of it weighs more in one than in the other.

The cook who uses cups gets another dish than the one who weighs, and no single figure can put the table right.

Take one weight for the cup and keep to it throughout the recipe. The check allows 10 %.
"""

# 10 %: of 316 foods for which USDA SR28 gives both a cup and a tablespoon, 90 % agree within 9.2 %.

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.quantity.measure import grams, millilitres
from tamis.record import NamedTuple
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.clauses import Ingredient

RULE = "two-densities"
LEVEL: Severity = "warning"
ABOUT = ("view also",)
BAD = """\
title: Two syrups
makes: 600 ml

# Syrup

Stir [200 g (1 cup) granulated sugar] with [250 ml boiling water] [in a jug] [until clear, about 2 min].
Add [230 g (1 cup) granulated sugar] and [stir for 2 min].
"""
GOOD = """\
title: Two syrups
makes: 600 ml

# Syrup

Stir [200 g (1 cup) granulated sugar] with [250 ml boiling water] [in a jug] [until clear, about 2 min].
Add [200 g (1 cup) granulated sugar] and [stir for 2 min].
"""

_TOLERANCE = Fraction(10, 100)


class _Implied(NamedTuple):
    """Grams per millilitre that a clause's two measures imply, half a gram either way."""

    lo: Fraction
    hi: Fraction
    span: Span


def check(view: View) -> Iterator[Diagnostic]:
    """Each use of an ingredient, in the same state, against the first that says both weight and volume."""
    first: dict[tuple[str, tuple[str, ...]], _Implied] = {}
    for food in view.also:
        implied = _implied(view, food) if food.goods else None
        if implied is None or food.goods is None:
            continue
        earlier = first.setdefault((food.goods.id, food.states), implied)
        limit = 1 + _TOLERANCE
        if implied.lo <= earlier.hi * limit and earlier.lo <= implied.hi * limit:
            continue
        message = f"a cup of {food.name} weighs {_cup(view, implied)} here and {_cup(view, earlier)} before"
        labels = (Label(earlier.span, "said before"),)
        yield Diagnostic(RULE, LEVEL, implied.span, message, "keep to one weight of the cup", labels)


def _implied(view: View, food: Ingredient) -> _Implied | None:
    units = view.kitchen.units
    said = (*food.measures, *food.also)
    mass = next((worth for measure in said if (worth := grams(measure, units))), None)
    volume = next((worth for measure in said if (worth := millilitres(measure, units))), None)
    if len(food.measures) != 1 or mass is None or volume is None or not volume.lo:
        return None
    half = Fraction(1, 2)
    return _Implied((mass.lo - half) / volume.hi, (mass.hi + half) / volume.lo, food.clause.span)


def _cup(view: View, implied: _Implied) -> str:
    from tamis.quantity.display import grams as shown

    cup = view.kitchen.units.get("cup")
    assert cup is not None  # every kitchen has a cup
    return shown((implied.lo + implied.hi) / 2 * cup.factor)
