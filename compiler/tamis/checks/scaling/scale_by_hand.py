"""More than one pair of hands can work when a recipe is scaled.

Nobody kneads 5 kg of dough smooth in one piece and in the same minutes; and three times the taffy is hard before half
of it is pulled.

Work in pieces, or with more hands. About 3 kg of dough are kneaded in one piece, and about 1 kg of boiled sugar pulled
before it sets (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._hand import grams, sweet
from tamis.checks.scaling._scene import practice, times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action

RULE = "scale-by-hand"
LEVEL: Severity = "warning"
ABOUT = ("view by_hand",)
FACTOR = Fraction(3)
_Done = Literal["", "by hand", "pulled"]
BAD = """\
title: White bread
makes: 2 loaves

# Bread

Stir [900 g strong white flour], [7 g instant yeast] and [2 tsp fine salt] with [600 g water].
[Knead for 10 min] [until smooth].
Cover and [rise for 1 h] [until doubled].
Shape [into 2 loaves], [prove for 40 min] and [bake for 35 min at 220 °C] [until brown].
"""
GOOD = """\
title: White bread
makes: 1 loaf

# Bread

Stir [500 g strong white flour], [4 g instant yeast] and [1 tsp fine salt] with [330 g water].
[Knead for 10 min] [until smooth].
Cover and [rise for 1 h] [until doubled].
Shape into a loaf, [prove for 40 min] and [bake for 35 min at 220 °C] [until brown].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """Dough that is kneaded and sugar that is pulled by hand, told once for a component."""
    told: set[int] = set()
    mixers = {action.component for action, _ in scene.mixers}
    for action in scene.recipe.actions:
        done = _done_by_hand(scene, action)
        if not done or action.component in told or action.component in mixers:
            continue
        most = practice().amounts[done]
        weight = grams(scene.recipe, scene.hands[action.number].uses)
        if weight <= most < weight * scene.factor:
            told.add(action.component)
            yield _said(scene, action, done, weight * scene.factor)


def _done_by_hand(scene: Scene, action: Action) -> _Done:
    """What a line works by hand, as the rules of thumb call the most of it; "" where it does no such work."""
    rules, verb = practice(), action.work.verb
    if verb in rules.verbs["kneading"]:
        return "by hand"
    words = check_words(scene.recipe.language).scaling.pulls
    said = " ".join(part.text for part in action.parts if isinstance(part, Text)).lower().split()
    pulls = verb in rules.verbs["pulling"] and not set(words).isdisjoint(said)
    return "pulled" if pulls and sweet(scene.recipe, scene.hands[action.number].uses) else ""


def _said(scene: Scene, action: Action, done: _Done, weight: Fraction) -> Diagnostic:
    from tamis.quantity.display import grams as shown

    most = practice().amounts[done]
    lots = int(-(-weight // most))
    message = f"{times_text(scene.factor)}: {shown(weight)} are more than one pair of hands works at once"
    does, more = "worked in one piece", f"take {lots} pieces, or more hands"
    if done == "pulled":
        does, more = "pulled before it sets", f"boil it in {lots} lots, or pull with more hands"
    hint = f"about {shown(most)} are {does} (common practice): {more}"
    span = action.reads[0].clause.span if action.reads else action.span
    return Diagnostic(RULE, LEVEL, span, message, hint)
