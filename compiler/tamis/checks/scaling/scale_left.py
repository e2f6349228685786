"""Something made of which a scaled recipe takes no more than fewer batches give.

A stock for keeping gives seven litres, and the soup takes one of them: three soups take three, and not three times the
stock, in a pot three times as big that takes hours longer to boil and to cool.

Make as many batches of it as the hint says, and the rest of the recipe as it is scaled.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import whole
from tamis.checks.scaling._scene import practice, times_text
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.amount import total
from tamis.quantity.measure import base
from tamis.reading.clauses import Reference
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Taking

RULE = "scale-left"
LEVEL: Severity = "warning"
ABOUT = ("view parts_taken",)
FACTOR = Fraction(3)
BAD = """\
title: Berries with syrup
serves: 4

# Syrup

Bring [300 g caster sugar] and [400 ml water] [to the boil] [in a pan] and [cool for 1 h].
Pour [into a bowl].

# Berries

% allow product-left-over: the rest is for another day
Stir [500 g raspberries] with [50 ml of the syrup] [in a wide bowl].
"""
GOOD = """\
title: Berries with sugar
serves: 4

# Berries

Stir [500 g raspberries] with [60 g caster sugar] [in a wide bowl].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Components of which only a part is taken, each told where it is first taken."""
    taken: defaultdict[int, list[Taking]] = defaultdict(list)
    for taking in scene.recipe.takings:
        taken[taking.product].append(taking)
    for number, takings in taken.items():
        product = scene.recipe.products[number]
        if product.kind != "component" or any(taking.rest for taking in takings) or scene.factor <= 1:
            continue
        parts = [_part(scene, taking) for taking in takings]
        wanted = whole(total(parts) * scene.factor)
        if all(parts) and wanted < scene.factor:
            batches = "one batch" if wanted == 1 else f"{wanted} batches"
            message = f"{times_text(scene.factor)} takes no more of “{product.name}” than {batches} of it as written"
            hint = "make so much of it, and the rest as it is scaled: more takes longer to make, and to cool"
            yield Diagnostic(RULE, LEVEL, takings[0].span, message, hint)


def _part(scene: Scene, taking: Taking) -> Fraction:
    """What part of a product is taken; 0 where nobody knows. Of a measure of what may have boiled away, as if a part of
    it had."""
    if taking.fraction is not None:
        return taking.fraction
    product = scene.recipe.products[taking.product]
    reads = scene.recipe.actions[taking.action].reads
    shares = (read.share for read in reads if isinstance(read, Reference) and read.clause.span == taking.span)
    measure = next((share.measure for share in shares if share is not None), None)
    amount = base(measure, scene.kitchen.units) if measure is not None and measure.unit else None
    foods = [(food.mass.hi, scene.kitchen.larder.get(food.goods) if food.goods else None) for food in product.foods]
    wet = total([mass for mass, goods in foods if goods is not None and goods.wet])
    made = (wet or product.mass.hi) * practice().amounts["made more"]
    return amount.hi / made if amount is not None and product.mass.known and made else Fraction(0)
