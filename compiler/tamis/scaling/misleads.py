"""Where a factor misleads: the rules of scaling, run on a recipe and its factor.

They are no part of `tamis check`, for a recipe is not wrong because it could be doubled. A house's levels hold for
them as for all rules.
"""

from __future__ import annotations

from tamis.checks.registry import scaling_checks
from tamis.checks.run import run_each
from tamis.checks.scaling._contents import vessels_of
from tamis.checks.scaling._medium import staying
from tamis.checks.scaling._scene import Scene, practice
from tamis.diagnostics import Diagnostic, in_order
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from tamis.compile import Compiled
    from tamis.kitchen.house import Kitchen


def misleading(
    original: Compiled, factor: Fraction, kitchen: Kitchen, exchanged: frozenset[int] = frozenset()
) -> list[Diagnostic]:
    """What to mind when a recipe is scaled, by place in the file as it was written.

    `exchanged` are the places of clauses whose tin gives way to another.
    """
    if factor == 1:
        return []
    recipe = original.recipe
    hands, media = recipe.history.hands(len(recipe.actions)), staying(recipe, kitchen)
    scene = Scene(recipe, kitchen, factor, exchanged, hands, media)
    if factor >= practice().limits["fuller"]:
        scene = scene._replace(vessels=vessels_of(scene))
    levels = kitchen.settings.checks
    found, failed = run_each(scaling_checks(), scene)
    kept = []
    for finding in found:
        level = levels.get(finding.rule, finding.severity)
        if level != "off":
            kept.append(finding._replace(severity=level))
    return [*failed, *in_order(kept)]
