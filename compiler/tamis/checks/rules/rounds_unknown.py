"""Food is cooked so much at a time, and nobody can know in how many rounds.

Of a ladleful of batter at a time, each fried for two minutes a side, the whole takes as many times four minutes as
there are ladlefuls. Where no number of pieces is known, the timeline counts the time only once.

Say in how many batches it is done, `[in 8 batches]`, or how many pieces the recipe makes, and how many at a time.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Manner
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "rounds-unknown"
LEVEL: Severity = "information"
ABOUT = ("manner",)
BAD = """\
title: Pancakes
serves: 4

Whisk [200 g plain flour] with [4 eggs] and [500 ml whole milk] [in a bowl].
Fry [a ladleful at a time] [in a frying pan] [over medium heat] [for 2 min on each side] [until golden and 71 °C].
"""
GOOD = """\
title: Pancakes
serves: 4

Whisk [200 g plain flour] with [4 eggs] and [500 ml whole milk] [in a bowl].
[In 8 batches], fry [in a frying pan] [over medium heat] [for 2 min on each side] [until golden and 71 °C].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """What is cooked so much at a time, in a line that is planned as done once."""
    for action, read in view.each(Manner):
        once = action.work.given == "text" and action.batches == action.times == 1
        if once and read.measure is not None and _cooks(view, action, read):
            message = f"how many rounds “{read.clause.text.strip()}” makes is not known: the timeline counts one"
            hint = f"say it: {example(view.recipe.language, 'two_batches')}, or how many pieces there are"
            yield Diagnostic(RULE, LEVEL, read.clause.span, message, hint)


def _cooks(view: View, action: Action, manner: Manner) -> bool:
    """Whether the work before it is what cooks for so long, and nothing that is added meanwhile."""
    start = manner.clause.span.start
    before = sorted((use for use in action.verbs if use.span.start < start), key=lambda use: use.span.start)
    if not before or not before[-1].verb.cooks or before[-1].verb.base != action.work.verb:
        return False
    between = view.source.text[before[-1].span.end : start].lower().split()
    return not any(view.kitchen.verbs.participle(word.strip(",;")) for word in between)
