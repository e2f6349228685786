"""Pieces whose number does not come out whole when a recipe is scaled, or of which nobody knows whether it grows.

Nobody shapes two and a half loaves; as many pieces as before are heavier or lighter then, and bake longer or shorter.
And where a dough that lies in pieces is cut again, twelve triangles may be all that there are, or those of each piece.

Choose a factor that leaves the pieces whole, or go by the cue instead of the time. If each piece is cut into so many,
say so: `[into 12 triangles each]`; that number stays.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.reading.clauses import Division
    from tamis.source import Span

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
    """Divisions into a number that the factor does not leave whole, and those of pieces without a word for each."""
    from tamis.checks.scaling._scene import times_text
    from tamis.quantity.numerals import decimal
    from tamis.reading.clauses import Division

    again = set(_pieces_again(scene))
    for action in scene.recipe.actions:
        for read in action.reads:
            if not isinstance(read, Division) or read.number is None or read.of_each:
                continue
            noun, stays = read.noun or "pieces", decimal(read.number.lo)
            wanted = read.number.lo * scene.factor
            if wanted.denominator != 1:
                message = (
                    f"{times_text(scene.factor)} would be {decimal(wanted)} {noun}: "
                    f"there stay {stays}, each {decimal(scene.factor)} times as heavy"
                )
                hint = "they take a longer or shorter time: go by the cue"
                yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)
            elif read.clause.span in again and not _is_what_it_makes(scene, read):
                message = f"{times_text(scene.factor)}: {decimal(wanted)} {noun} of all pieces together, it is taken"
                hint = f"if each piece is cut so, it stays {stays}: say `[{read.clause.text.strip()} each]`"
                yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)


def _is_what_it_makes(scene: Scene, division: Division) -> bool:
    """Whether the header makes as many: then they are all."""
    makes = scene.recipe.header.makes
    return makes is not None and makes.measure is None and makes.amount == division.number


def _pieces_again(scene: Scene) -> Iterator[Span]:
    """The divisions of a batch that lies in several pieces already."""
    from tamis.model.effects import Splits

    lie: dict[int, bool] = {}
    for entry in scene.recipe.log:
        if isinstance(entry.effect, Splits):
            batch, number = entry.effect.batch, entry.effect.number
            if lie.get(batch) and number is not None:
                yield entry.clause
            lie[batch] = number is not None and number.hi > 1
