"""Pieces whose number does not come out whole when a recipe is scaled, or by whose number the recipe goes.

Nobody shapes two and a half loaves; as many pieces as before are heavier or lighter then, and bake longer or shorter.
And where a dough that lies in pieces is cut again, twelve triangles may be all that there are, or those of each piece.
Where the recipe takes *the first piece* and *the second*, *one of the layers* of two tins, or lays four squares one
upon another, their number belongs to the recipe, and stays.

Choose a factor that leaves the pieces whole, or go by what to look for instead of the time. If each piece is cut into
so many, say so: `[into 12 triangles each]`; that number stays. Where the header makes as many as there are of each
piece together (`makes: 24 croissants`), it is understood so.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import times_text
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.reading.clauses import Division
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._kept import Kept
    from tamis.checks.scaling._scene import Scene

RULE = "scale-pieces"
LEVEL: Severity = "warning"
ABOUT = ("division", "reference")
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
    """Divisions into a number that the factor does not leave whole, those of pieces without a word for each, and those
    by whose number the recipe goes."""
    from tamis.checks.scaling._again import cut_again
    from tamis.checks.scaling._kept import kept
    from tamis.quantity.numerals import decimal

    again, stay = dict(cut_again(scene.recipe)), {one.read.clause.span for one in kept(scene.recipe)}
    yield from _kept(scene)
    yield from _told_apart(scene)
    for action in scene.recipe.actions:
        for read in action.reads:
            if not isinstance(read, Division) or read.number is None or read.of_each or again.get(read.clause.span):
                continue
            if read.clause.span in stay:
                continue
            noun, stays = read.noun or "pieces", decimal(read.number.lo)
            wanted = read.number.lo * scene.factor
            if wanted.denominator != 1:
                message = (
                    f"{times_text(scene.factor)} would be {decimal(wanted)} {noun}: "
                    f"the number stays at {stays}, each {decimal(scene.factor)} times as heavy"
                )
                hint = "their cooking time changes: go by the sign to look for"
                yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)
            elif again.get(read.clause.span, False) is None:
                message = f"{times_text(scene.factor)}: counted as {decimal(wanted)} {noun} from all pieces together"
                hint = f"if each piece is cut so, it stays {stays}: say `[{read.clause.text.strip()} each]`"
                yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)


def _told_apart(scene: Scene) -> Iterator[Diagnostic]:
    """What goes into *the first piece* and what into *the second*, once there are more of each."""
    from tamis.checks.scaling._kept import told_apart
    from tamis.quantity.numerals import decimal

    for one in told_apart(scene.recipe):
        wanted = one.number.lo * scene.factor
        if scene.factor <= 1 or scene.factor.denominator != 1:
            continue
        noun, factor = one.read.noun or "pieces", decimal(scene.factor)
        was = f"“{one.words}” is one of {decimal(one.number.lo)} {noun}"
        message = f"{times_text(scene.factor)}: {was}, of {decimal(wanted)} now"
        hint = f"what is said of one of them is for {factor}: divide what goes into it between these"
        yield Diagnostic(RULE, LEVEL, one.read.clause.span, message, hint)


def _kept(scene: Scene) -> Iterator[Diagnostic]:
    """Divisions whose number stays, because the recipe goes by each of the pieces: told once for pieces of a name."""
    from tamis.checks.scaling._kept import kept, taken_by_number
    from tamis.quantity.numerals import decimal

    told: dict[str, list[Kept]] = {}
    for one in kept(scene.recipe):
        told.setdefault(one.read.noun, []).append(one)
    for noun, (first, *more) in told.items():
        stays, factor = decimal(first.number.lo), decimal(scene.factor)
        depends = f"“{first.words}” depends on {stays} {noun or 'pieces'}"
        message = f"{times_text(scene.factor)}: {depends}: the number stays at {stays}"
        lots = f", or work in {factor} batches as written" if scene.factor > 1 and scene.factor.denominator == 1 else ""
        labels = tuple(Label(one.read.clause.span, "and here") for one in more)
        hint = f"each is {factor} times as heavy{lots}"
        yield Diagnostic(RULE, LEVEL, first.read.clause.span, message, hint, labels)
    of_tins = min(taken_by_number(scene.recipe) if not told and scene.factor > 1 else [], default=None)
    if of_tins is not None:
        factor = decimal(scene.factor)
        message = f"{times_text(scene.factor)}: this depends on the number of the tins, which stays"
        hint = f"the method is for one lot of tins: repeat it {factor} times, or take tins {factor} times as large"
        yield Diagnostic(RULE, LEVEL, of_tins, message, hint)
