"""Food is lifted out in plain words.

For the table and the plan it stays with the rest: what is boiled down and named afterwards holds it too, and it cannot
be called back by its name alone.

Name what stays behind, as in `[leaving syrup]`, and go on with `[the syrup]`; the food is then what you have in hand.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.reading.clauses import Naming
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "lifted-in-words"
LEVEL: Severity = "information"
BAD = """\
title: Pears in syrup
serves: 4

# Pears

Put [4 pears, peeled] [in a pan] with [500 ml water] and [200 g caster sugar] and [simmer for 20 min] [until tender].
Lift out the pears with a slotted spoon.
Boil [over high heat] [to 150 ml].
"""
GOOD = """\
title: Pears in syrup
serves: 4

# Pears

Put [4 pears, peeled] [in a pan] with [500 ml water] and [200 g caster sugar] and [simmer for 20 min] [until tender].
Lift out the pears with a slotted spoon, [leaving syrup].

[Meanwhile], boil [the syrup] [over high heat] [to 150 ml].

Pour [the syrup] over.
"""


@cache
def _out(language: str) -> re.Pattern[str]:
    """`Lift out the X`, and `lift the X out`; what comes out *of* something is in no hurry."""
    words, small = check_words(language).lifted, check_words(language).small
    out, the, of = one_of(words.outward), one_of(nouns(language).definite), one_of(small.between)
    either = rf"{out} {the} ([^\W\d_]+)|{the} ([^\W\d_]+) {out}"
    return pattern(rf"\b{one_of(words.verbs)} (?:{either})\b(?! {of})", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """`Lift out the X`, where X is a food of the component and the line names nothing that stays behind."""
    foods: set[str] = set()
    singular = nouns(view.recipe.language).singular
    component = -1
    for action in view.recipe.actions:
        if action.component != component:
            component, foods = action.component, set()
        if not any(isinstance(read, Naming) for read in action.reads):
            yield from _lifted(view, action, foods)
        for use in action.uses:
            foods.add(singular(view.recipe.uses[use].ingredient.name.lower().split()[-1]))


def _lifted(view: View, action: Action, foods: set[str]) -> Iterator[Diagnostic]:
    for part in action.parts:
        found = _out(view.recipe.language).search(part.text) if isinstance(part, Text) else None
        if found is None:
            continue
        word = found[1] or found[2]
        if nouns(view.recipe.language).singular(word.lower()) in foods:
            span = Span(found.start(), found.end()).shifted(part.span.start)
            message = f"“{found[0]}” in plain words: for table and plan it stays with the rest"
            hint = "name what stays behind, as in `[leaving syrup]`, and go on with that by its name"
            yield Diagnostic(RULE, LEVEL, span, message, hint)
