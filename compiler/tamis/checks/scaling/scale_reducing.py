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
    from tamis.checks.scaling._scene import Scene
    from tamis.checks.words import Words
    from tamis.model.recipe import Action
    from tamis.source import Span

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
    from tamis.checks.words import check_words

    limit = practice().limits["reducing"]
    if 1 / limit < scene.factor < limit:
        return
    reduced = check_words(scene.recipe.language).scaling.reducing
    places = [place for action in scene.recipe.actions if (place := _place(action, reduced))]
    if places:
        longer = "longer" if scene.factor > 1 else "less time"
        message = f"{times_text(scene.factor)}: what boils down or comes to the simmer takes {longer} than stated"
        labels = tuple(Label(place, "and here") for place in places[1:])
        yield Diagnostic(RULE, LEVEL, places[0], message, "go by the cue and what is left, not by the minutes", labels)


def _place(action: Action, reduced: Words) -> Span | None:
    """Where an action states a time for boiling, or what is to be left of the liquid."""
    from tamis.checks.scaling._scene import practice
    from tamis.reading.clauses import Cue, Target, Time

    verbs = practice().verbs["reducing"]
    for read in action.reads:
        if isinstance(read, Target) and read.kind == "measure":
            return read.clause.span
        if isinstance(read, Cue) and any(word in read.text for word in reduced):
            return read.clause.span
        if isinstance(read, Time) and read.verb is not None and read.verb.base in verbs:
            return read.clause.span
    return None
