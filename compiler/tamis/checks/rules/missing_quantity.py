"""A food in a bracket without a measure, and without a reason for having none.

A stranger cannot tell a spoonful of sugar from a cupful, and the table, the weight of the batch and the
market list all lack it.

Write the measure: `[40 g sugar]`, `[a pinch of salt]`. Where the taste or the tin decides, say so after
a comma: `[salt, to taste]`, `[oil, for the tin]`; beside verbs such as dust, grease and season no reason
is needed. Food that a vessel is full of, `[a teacup of rice]`, has no measure either; water and ice to lie in
or over need none.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import CheckWords, check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.kitchen.food import FROM_TAP
from tamis.kitchen.likely import is_plural, likely
from tamis.reading.clauses import Ingredient
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.kitchen.goods import Goods
    from tamis.kitchen.house import Kitchen
    from tamis.reading.clauses import Tool

RULE = "missing-quantity"
LEVEL: Severity = "error"
ABOUT = ("unmeasured", "view filled")
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


def _by_eye(food: Ingredient, words: CheckWords) -> bool:
    """A little nutmeg is taken by eye, in any kitchen, and so are a splash of water and a grating of nutmeg."""
    if food.vague in words.small.by_eye:
        return True
    goods = food.goods
    if goods is None or not (goods.role == "water" or goods.salt or goods.show in ("spice", "herb")):
        return False
    return _is_part(food.clause.text.lower(), food.name.lower(), words)


def _is_part(said: str, name: str, words: CheckWords) -> bool:
    """Whether a vague measure stands before the name: *a splash of water*."""
    before = said[: said.rindex(name)].split() if name in said else []
    return bool(before) and before[-1] in words.small.between


def check(view: View) -> Iterator[Diagnostic]:
    """Foods without a measure: named bare, or told only by the vessel that holds them."""
    yield from _bare(view)
    yield from _in_vessels(view)


def _in_vessels(view: View) -> Iterator[Diagnostic]:
    """Food that stands only as what a vessel holds: a teacup of rice, a plate of flour to turn it in."""
    for tool in view.filled:
        goods = None if tool.definite else _held(tool, view.kitchen)
        if goods is None:
            continue
        held = tool.contains
        message = f"how much {held}? “{tool.name}” is read as equipment, so what it holds is not counted"
        measure = likely(goods, held, view.recipe.language)
        yield Diagnostic(RULE, LEVEL, tool.clause.span, message, f"write `[{measure} {held}]`")


def _held(tool: Tool, kitchen: Kitchen) -> Goods | None:
    """The food that a vessel is full of; None if it is there to lie in: water, ice, fat to fry in."""
    found = kitchen.larder.named(tool.contains)
    if found is None or found.goods.merchant == FROM_TAP:
        return None
    return None if tool.preposition and found.goods.role == "fat" else found.goods


def _bare(view: View) -> Iterator[Diagnostic]:
    """Unmeasured foods whose verb gives no purpose and whose comma gives no reason."""
    words = check_words(view.recipe.language)
    reasons = (*(f"{word} " for word in words.foods.reasons), *words.foods.alone)
    for action, food in view.each(Ingredient):
        if food.role != "unmeasured" or food.measured or food.purpose or food.optional:
            continue
        if food.preparation.startswith(reasons) or _by_eye(food, words):
            continue
        seasons = food.goods is not None and (food.goods.salt or food.goods.show in ("spice", "herb"))
        behind = (use.verb.base for use in action.verbs if use.span.end + 1 == food.clause.span.start)
        if seasons and any(verb in words.small.by_hand for verb in behind):
            continue
        said = food.clause.text.split(",")[0].strip().removeprefix(food.preposition).lstrip()
        much = f"is “{said}”" if _is_part(said, food.name, words) else food.name
        many = "many" if is_plural(food.name, view.recipe.language) and not _is_part(said, food.name, words) else "much"
        message = f"how {many} {much}? expected a measure, or a reason why there is none"
        reason = "to_taste" if seasons else "for_the_pan" if food.goods and food.goods.role == "fat" else "as_needed"
        measure = likely(food.goods, food.name, view.recipe.language)
        hint = f"write `[{measure} {food.name}]`, or {example(view.recipe.language, reason, food=food.name)}"
        yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint)
