"""A food in a bracket without a measure, and without a reason for having none.

A stranger cannot tell a spoonful of sugar from a cupful, and the table, the weight of the batch and the
shopping list all lack it.

Write the measure: `[40 g sugar]`, `[a pinch of salt]`. Where the taste or the tin decides, say so after
a comma: `[salt, to taste]`, `[oil, for the tin]`; beside verbs such as dust, grease and season no reason
is needed.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from tamis.checks.likely import likely
from tamis.diagnostics import Diagnostic, Severity

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.clauses import Ingredient

RULE = "missing-quantity"
LEVEL: Severity = "error"
BAD = """\
title: Lemon water
serves: 4

# Water

Stir [1 l water] with [sugar] [in a jug].
"""
GOOD = """\
title: Lemon water
serves: 4

# Water

Stir [1 l water] with [40 g sugar] [in a jug].
"""


def _by_eye(food: Ingredient) -> bool:
    """A splash of water and a grating of nutmeg are taken by eye, in any kitchen."""
    goods = food.goods
    if goods is None or not (goods.role == "water" or goods.salt or goods.show in ("spice", "herb")):
        return False
    said = food.clause.text.lower()
    return food.name.lower() in said and said[: said.index(food.name.lower())].split()[-1:] == ["of"]


_REASONS = ("to ", "for ", "as ", "if ", "enough")


def check(view: View) -> Iterator[Diagnostic]:
    """Unmeasured foods whose verb gives no purpose and whose comma gives no reason."""
    for food in view.ingredients:
        if food.measured or food.role != "unmeasured" or food.purpose or food.optional:
            continue
        if food.preparation.startswith(_REASONS):
            continue
        said = food.clause.text.split(",")[0].strip().removeprefix(food.preposition).lstrip()
        vague = food.name in said and said[: said.rindex(food.name)].split()[-1:] == ["of"]
        much = f"is “{said}”" if vague else food.name
        message = f"how much {much}? expected a measure, or a reason why there is none"
        if _by_eye(food):
            continue
        seasons = food.goods is not None and (food.goods.salt or food.goods.show in ("spice", "herb"))
        reason = "to taste" if seasons else "for the pan" if food.goods and food.goods.role == "fat" else "as needed"
        hint = f"write `[{likely(food.goods)} {food.name}]`, or `[{food.name}, {reason}]`"
        yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
