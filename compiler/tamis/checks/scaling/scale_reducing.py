"""Liquid that boils down or simmers for a stated time, in a scaled recipe.

Twice as much water does not boil away in the same time from the same pan, and half as much burns.

Go by the cue or by the measure left, not by the minutes; a wider pan shortens the wait.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._hand import Hand
    from tamis.checks.scaling._scene import Scene
    from tamis.model.recipe import Action
    from tamis.reading.clauses import Time
    from tamis.source import Span

BOILS = 100
"""°C at which water boils; what is hotter has lost some."""

RULE = "scale-reducing"
LEVEL: Severity = "warning"
FACTOR = Fraction(2)
BAD = """\
title: Wine syrup
makes: 100 ml

# Syrup

Bring [300 ml red wine] and [50 g sugar] [to the boil] [in a saucepan].
[Boil for 10–15 min] [until it coats a spoon].
"""
GOOD = """\
title: Wine and honey
makes: 350 ml

# Wine

Warm [300 ml red wine] with [50 g honey] [in a saucepan] [over low heat] [until the honey has melted, 2–3 min].
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The boiling and simmering of a recipe, told once, if the factor is beyond the limit."""
    from tamis.checks.scaling._scene import practice, times_text

    limit = practice().limits["reducing"]
    if 1 / limit < scene.factor < limit:
        return
    both = zip(scene.recipe.actions, scene.hands, strict=True)
    places = [place for action, hand in both if (place := _place(scene, action, hand))]
    if places:
        longer = "longer" if scene.factor > 1 else "less time"
        message = f"{times_text(scene.factor)}: what boils down or comes to the simmer takes {longer} than stated"
        labels = tuple(Label(place, "and here") for place in places[1:])
        yield Diagnostic(RULE, LEVEL, places[0], message, "go by the cue and what is left, not by the minutes", labels)


def _place(scene: Scene, action: Action, hand: Hand) -> Span | None:
    """Where an action states a time for boiling down or coming to the simmer, or what is to be left of the liquid."""
    from tamis.checks.scaling._scene import practice
    from tamis.checks.words import check_words
    from tamis.reading.clauses import Cue, Target, Time

    reduced = check_words(scene.recipe.language).scaling.reducing
    verbs = practice().verbs
    for read in action.reads:
        if isinstance(read, Target) and read.kind == "measure":
            return read.clause.span
        if isinstance(read, Cue) and any(word in read.text for word in reduced):
            return read.clause.span
        if isinstance(read, Time) and read.verb is not None:
            if read.verb.base in verbs["reducing"]:
                return read.clause.span
            slow = _boils_down(scene, action, hand, read) or _comes_back(scene, action, hand, read)
            if read.verb.base in verbs["boiling"] and slow:
                return read.clause.span
    return None


def _boils_down(scene: Scene, action: Action, hand: Hand, time: Time) -> bool:
    """Whether liquid of the dish itself boils away: not from under a lid, and not what is topped up. What flour
    thickens is thick after a few minutes, however much it is."""
    from tamis.checks.scaling._hand import grams, liquid, tended
    from tamis.checks.scaling._scene import practice

    topped_up = tended(action, practice().verbs["replenishing"], scene.kitchen)
    if hand.medium or topped_up or _covered(action, time):
        return False
    amounts, recipe = practice().amounts, scene.recipe
    thick = _thick(scene, action)
    goods = [recipe.uses[index].ingredient.goods for index in hand.uses]
    if any(food is not None and (food.role == "flour" or food.id in practice().thickeners) for food in goods):
        return thick and (time.duration.hi or time.duration.lo) > amounts["thickens"]
    return thick or not hand.uses or liquid(recipe, hand.uses) >= amounts["liquid"] * grams(recipe, hand.uses)


def _thick(scene: Scene, action: Action) -> bool:
    """Whether it ends when it is thick, or hotter than water boils."""
    from tamis.checks.words import check_words
    from tamis.reading.clauses import Cue

    words = check_words(scene.recipe.language).scaling.thick
    cues = [read for read in action.reads if isinstance(read, Cue)]
    return any(
        any(word in cue.text for word in words) or (cue.celsius is not None and cue.celsius.hi > BOILS) for cue in cues
    )


def _covered(action: Action, time: Time) -> bool:
    """Whether a lid is put on before the time: a `cover` with no food of its own behind it."""
    from tamis.checks.scaling._scene import practice
    from tamis.reading.clauses import Ingredient, Reference

    if any(tool.equipment.kind == "lid" for tool in action.tools):
        return True
    ends = [use.span.start for use in action.verbs[1:]] + [time.clause.span.start]
    for use, end in zip(action.verbs, ends, strict=True):
        foods = (read for read in action.reads if isinstance(read, Ingredient | Reference))
        over = any(use.span.end <= food.clause.span.start < end for food in foods)
        if use.verb.base in practice().verbs["covering"] and use.span.start < time.clause.span.start and not over:
            return True
    return False


def _comes_back(scene: Scene, action: Action, hand: Hand, time: Time) -> bool:
    """Whether food goes in and the pot must come back to the boil within a short time."""
    from tamis.checks.scaling._scene import practice
    from tamis.reading.clauses import Target

    if time.duration.lo > practice().amounts["returns"]:
        return False
    if any(isinstance(read, Target) and read.clause.span.start < time.clause.span.start for read in action.reads):
        return False  # it is brought to the boil first
    weighs = any(scene.recipe.uses[index].mass.hi for index in action.uses if index in hand.uses)
    return bool(weighs or action.takings)
