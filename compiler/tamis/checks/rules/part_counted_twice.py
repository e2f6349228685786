"""A measured food comes off another one: it is listed, bought and weighed beside it.

Cream skimmed off a can of coconut milk is in that can already: with both on the list it is bought twice, and the dish
weighs too much.

Name the whole food, and the part as what is left of it: `Skim [2 cans coconut milk], [leaving 4 tbsp coconut cream]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Ingredient, Reference
from tamis.reading.plain import phrases, plain_of
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain

RULE = "part-counted-twice"
LEVEL: Severity = "warning"
BAD = """\
title: Coconut rice
serves: 4

# Rice

Skim [4 tbsp coconut cream] off [2 cans coconut milk] [into a pan].
Add [300 g jasmine rice] and [simmer for 20 min] [until tender].
"""
GOOD = """\
title: Coconut rice
serves: 4

# Rice

Skim [2 cans coconut milk] [into a pan], [leaving 4 tbsp coconut cream].
Add [300 g jasmine rice] and [simmer for 20 min] [until tender].
Stir in [the coconut cream].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """Two clauses with no more than *off* or *from* between them, the first of which is a measured food."""
    for action in view.recipe.actions:
        for part, whole in _off(view, action):
            if isinstance(whole, Reference) and view.kitchen.cupboard.find(whole.name.lower().split()):
                continue  # from the pan
            message = f"“{part.name}” comes off “{whole.name}”, and is listed and weighed beside it"
            yield Diagnostic(RULE, LEVEL, part.clause.span, message, _hint(view, part))


def _hint(view: View, part: Ingredient) -> str:
    from tamis.quantity.display import written

    measure = written(part.measures[0], view.recipe.language)
    left = example(view.recipe.language, "leaving_some", measure=measure, name=part.name)
    return f"if it is part of that, name that alone, with {left}, and go on with what is left by its name"


def _off(view: View, action: Action) -> Iterator[tuple[Ingredient, Ingredient | Reference]]:
    """Each measured food of a line with that which it comes off."""
    reads = {read.clause.span: read for read in action.reads if isinstance(read, Ingredient | Reference)}
    for before, words, after in zip(action.parts, action.parts[1:], action.parts[2:], strict=False):
        part, whole = reads.get(before.span), reads.get(after.span)
        if not isinstance(part, Ingredient) or whole is None or not isinstance(words, Text):
            continue
        counted = part.measures and not part.purpose and not part.part
        if counted and plain_of(words.text, view.kitchen).ask(_is_off):
            yield part, whole


def _is_off(plain: Plain) -> bool:
    """Whether words say that what stands before them comes off what stands behind them, and nothing more."""
    language = plain.kitchen.language
    size = plain.phrase(phrases(check_words(language).small.off, language), 0)
    return bool(size) and size == len(plain)
