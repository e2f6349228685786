"""Pieces whose number does not come out whole when a recipe is scaled.

Nobody shapes two and a half loaves; as many pieces as before are heavier or lighter then, and bake longer or shorter.

Choose a factor that leaves the pieces whole, or go by the cue instead of the time.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene

RULE = "scale-pieces"
LEVEL: Severity = "warning"
FACTOR = Fraction(5, 4)
BAD = """\
title: Oat balls
makes: 6 balls

# Balls

Stir [200 g rolled oats] with [100 g honey] [in a bowl].
Divide [into 6 pieces (50 g each)] and roll into balls.
"""
GOOD = """\
title: Oat balls
makes: 8 balls

# Balls

Stir [200 g rolled oats] with [100 g honey] [in a bowl].
Divide [into 8 pieces (50 g each)] and roll into balls.
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Divisions into a number that the factor does not leave whole."""
    from tamis.checks.scaling._scene import times_text
    from tamis.quantity.numerals import decimal
    from tamis.reading.clauses import Division

    for action in scene.recipe.actions:
        for read in action.reads:
            if not isinstance(read, Division) or read.number is None:
                continue
            wanted = read.number.lo * scene.factor
            if wanted.denominator != 1:
                message = (
                    f"{times_text(scene.factor)} would be {decimal(wanted)} {read.noun or 'pieces'}: "
                    f"there stay {decimal(read.number.lo)}, each {decimal(scene.factor)} times as heavy"
                )
                hint = "they take a longer or shorter time: go by the cue"
                yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)
