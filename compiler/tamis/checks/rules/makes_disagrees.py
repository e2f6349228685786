"""The header makes another number than the method divides the batch into.

Whoever scales the recipe, or weighs the pieces, works from the wrong one.

Make the two agree: `makes: 12 buns` and `[into 12 pieces]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Division
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.header import Makes

RULE = "makes-disagrees"
LEVEL: Severity = "warning"
ABOUT = ("division",)
BAD = """\
title: Soft rolls
makes: 24 rolls

# Rolls

Knead [500 g bread flour], [7 g instant yeast], [10 g fine salt] and [330 g water] [for 10 min].
[Rise for 1 h] [until doubled]. Divide [into 12 pieces].
[Bake for 15 min at 220 °C] [until golden].
"""
GOOD = """\
title: Soft rolls
makes: 12 rolls

# Rolls

Knead [500 g bread flour], [7 g instant yeast], [10 g fine salt] and [330 g water] [for 10 min].
[Rise for 1 h] [until doubled]. Divide [into 12 pieces].
[Bake for 15 min at 220 °C] [until golden].
"""

# A batch in two or three parts is mostly cut further.
_FEW = 3


def check(view: View) -> Iterator[Diagnostic]:
    """A recipe that divides its batch once: into fewer pieces than it makes, or into as many as it does not make."""
    makes, divisions = view.recipe.header.makes, view.each(Division)
    if makes is None or makes.measure or not makes.noun or len(divisions) != 1:
        return
    division = divisions[0][1]
    if division.of_each or _is_repeated(view) or not _disagree(makes, division, view):
        return
    message = f"the batch is divided {division.text.strip()}, but the recipe makes {makes.text}"
    label = Label(view.recipe.header.span("makes"), "what the header says")
    yield Diagnostic(RULE, LEVEL, division.clause.span, message, "make the two numbers agree", (label,))


def _is_repeated(view: View) -> bool:
    """Whether some line is done again, or cuts by words of its own: then the pieces are more than they seem."""
    actions = view.recipe.actions
    cuts = sum(any(use.verb.divides for use in action.verbs) for action in actions)
    return cuts > 1 or any(action.times != 1 or action.batches != 1 for action in actions)


def _disagree(makes: Makes, division: Division, view: View) -> bool:
    number = division.number
    if number is None or (number.hi > makes.amount.lo - 1 and number.lo < makes.amount.hi + 1):
        return False  # a scaled recipe makes 85 1/3 of 85 pieces
    singular = nouns(view.recipe.language).singular
    if singular(makes.noun.lower().split(" ")[-1]) == singular(division.noun.lower().split(" ")[-1]):
        return True
    return _FEW < number.hi < makes.amount.lo
