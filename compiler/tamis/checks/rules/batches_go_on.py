"""Food that goes in where the work is still done in batches.

`[in 2 batches]` holds to the end of its step: what is poured over there is shared between the batches, and a
simmer of 40 minutes is planned twice.

Begin a new step, after a blank line, where the batches come together.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.reading.clauses import Repeat
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "batches-go-on"
LEVEL: Severity = "information"
ABOUT = ("repeat",)
BAD = """\
title: Braised mushrooms
serves: 4

# Mushrooms

Fry [1 kg mushrooms, sliced] [in 30 g butter] [in a frying pan] [in 2 batches] [for 8 min] [until brown].
Pour [300 ml water] over.
[Simmer for 20 min] [until soft].
"""
GOOD = """\
title: Braised mushrooms
serves: 4

# Mushrooms

Fry [1 kg mushrooms, sliced] [in 30 g butter] [in a frying pan] [in 2 batches] [for 8 min] [until brown].

Pour [300 ml water] over.
[Simmer for 20 min] [until soft].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Measured food that goes into the batch after the line of the repeat, in its paragraph."""
    repeat: Repeat | None = None
    step = None
    for action in view.recipe.actions:
        if (action.component, action.step) != step:
            step, repeat = (action.component, action.step), None
        if repeat is not None:
            told = list(_added(view, action, repeat))
            yield from told
            repeat = None if told else repeat
            continue
        kinds = (read for read in action.reads if isinstance(read, Repeat) and read.kind in ("batches", "loads"))
        repeat = next(kinds, None)


def _added(view: View, action: Action, repeat: Repeat) -> Iterator[Diagnostic]:
    for use in action.uses:
        food = view.recipe.uses[use].ingredient
        if food.measured and view.recipe.uses[use].in_batch:
            how = repeat.clause.text.lower()
            message = f"this is shared out too: the work is done {how} to the end of the step"
            hint = "if the batches have come together here, begin a new step, after a blank line"
            yield Diagnostic(RULE, LEVEL, food.clause.span, message, hint, (Label(repeat.clause.span, "from here on"),))
            return
