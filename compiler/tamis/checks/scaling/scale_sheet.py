"""A sheet of a stated size, rolled or poured out of more food or less when a recipe is scaled.

Three times the dough on 30 × 30 cm is three times as thick: it bakes, dries or folds as another thing.

Work in so many batches, each with a sheet of that size, or make the sheet larger by the area that the message names.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.model.effects import Splits
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._pans import Pan
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Target

RULE = "scale-sheet"
LEVEL: Severity = "warning"
ABOUT = ("target",)
FACTOR = Fraction(3)
BAD = """\
title: Crackers
makes: 24 crackers

# Crackers

Stir [200 g plain flour] with [100 g water] [in a bowl].
Roll out [to a sheet of 30 × 30 cm] and cut [into 24 pieces].
[Bake for 12–15 min at 200 °C] [until crisp].
"""
GOOD = """\
title: Crackers
makes: 24 crackers

# Crackers

Stir [200 g plain flour] with [100 g water] [in a bowl].
Roll out [2 mm thick] and cut [into 24 pieces].
[Bake for 12–15 min at 200 °C] [until crisp].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The sizes of sheets, each told once, if the factor is beyond the limits of tins."""
    limits = practice().limits
    if limits["emptier"] <= scene.factor <= limits["fuller"]:
        return
    found: dict[Pan, list[Target]] = {}
    for target, sheet in _sheets(scene):
        found.setdefault(sheet, []).append(target)
    for sheet, targets in found.items():
        yield _finding(scene, sheet, targets)


def _sheets(scene: Scene) -> Iterator[tuple[Target, Pan]]:
    """Sizes of what is made of the whole batch: not of each of its pieces."""
    from tamis.checks.scaling._pans import read_pan

    pieces = _in_pieces(scene)
    for action in scene.recipe.actions:
        if action.number in pieces or _of_each(scene, action):
            continue
        for target in (target for target in action.targets if target.kind == "size"):
            sheet = read_pan(target.clause.text, scene.kitchen)
            known = sheet is not None and (len(sheet.sides) == 2 or sheet.shape)
            if sheet is not None and known and (sheet.area or 0) >= practice().amounts["sheet"] * 100:
                yield target, sheet


def _in_pieces(scene: Scene) -> set[int]:
    """The lines whose batch lies in several pieces that were not put together again; where their number stays, each is
    larger."""
    from tamis.checks.scaling._kept import kept

    recipe = scene.recipe
    larger = {one.read.clause.span for one in kept(recipe)}
    parted: dict[int, int] = {}
    for entry in recipe.log:
        if isinstance(entry.effect, Splits) and entry.effect.number is not None and entry.clause not in larger:
            parted.setdefault(entry.effect.batch, entry.action)
    places = recipe.places.lines
    return {line.number for line in recipe.actions if parted.get(places[line.number].batch, line.number) < line.number}


def _of_each(scene: Scene, action: Action) -> bool:
    """Whether a line tells what is done to each piece."""
    from tamis.reading.tables import tables

    words = " ".join(part.text for part in action.parts).lower().replace(",", " ").split()
    return not tables(scene.recipe.language).each.isdisjoint(words)


def _finding(scene: Scene, sheet: Pan, targets: list[Target]) -> Diagnostic:
    from math import sqrt

    from tamis.quantity.numerals import decimal

    grown, whole = sqrt(float(scene.factor)), scene.factor > 1 and scene.factor.denominator == 1
    size = " × ".join(str(round(float(side) * grown / 10)) for side in sheet.sides)
    size = f"{size} cm {sheet.shape if len(sheet.sides) == 1 else ''}".rstrip()
    fits = "is too small for it" if scene.factor > 1 else "is too large for it"
    message = f"{times_text(scene.factor)}: {sheet.text} {fits} at the same thickness"
    lots = f"work in {decimal(scene.factor)} batches of this size, or " if whole else ""
    labels = tuple(Label(target.clause.span, "and here") for target in targets[1:])
    return Diagnostic(RULE, LEVEL, targets[0].clause.span, message, f"{lots}make it {size}", labels)
