"""Where a factor misleads: the rules of scaling, run on a recipe and its factor.

They are no part of `tamis check`, for a recipe is not wrong because it could be doubled. A house's levels hold for
them as for all rules.
"""

from __future__ import annotations

from tamis.checks.registry import scaling_rules
from tamis.checks.run import run_each
from tamis.checks.scaling._contents import vessels_of
from tamis.checks.scaling._medium import staying
from tamis.checks.scaling._scene import Scene, practice
from tamis.checks.signs import scaling_signs
from tamis.diagnostics import Diagnostic, in_order
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen
    from tamis.model.recipe import Recipe


def misleading(
    original: Compiled, factor: Fraction, kitchen: Kitchen, exchanged: frozenset[int] = frozenset()
) -> list[Diagnostic]:
    """What to mind when a recipe is scaled, by place in the file as it was written.

    `exchanged` are the places of clauses whose tin gives way to another.
    """
    if factor == 1:
        return []
    scene = scene_of(original.recipe, factor, kitchen, exchanged)
    levels = kitchen.settings.checks
    found, failed = run_each(scaling_rules(), scene, scaling_signs)
    kept = []
    for finding in found:
        level = levels.get(finding.rule, finding.severity)
        if level != "off":
            kept.append(finding._replace(severity=level))
    return [*failed, *in_order(kept)]


def scene_of(recipe: Recipe, factor: Fraction, kitchen: Kitchen, exchanged: frozenset[int] = frozenset()) -> Scene:
    """A recipe with a factor, as the rules look at it."""
    hands, media = recipe.history.hands(len(recipe.actions)), staying(recipe, kitchen)
    scene = Scene(recipe, kitchen, factor, exchanged, hands, media)
    return scene._replace(vessels=vessels_of(scene)) if factor >= practice().limits["fuller"] else scene
