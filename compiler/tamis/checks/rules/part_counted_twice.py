"""A measured food comes off another one: it is listed, bought and weighed beside it.

Cream skimmed off a can of coconut milk is in that can already: with both on the list it is bought twice, and the dish
weighs too much.

Name the whole food, and the part as what is left of it: `Skim [2 cans coconut milk], [leaving 4 tbsp coconut cream]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words, word_set
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Ingredient, Reference
from tamis.reading.plain import phrases
from tamis.typed import TYPE_CHECKING
from tamis.words import example

if TYPE_CHECKING:
    from tamis.checks.view import Stretch, View
    from tamis.reading.clauses import Read
    from tamis.reading.plain import Plain

RULE = "part-counted-twice"
LEVEL: Severity = "warning"
ABOUT = ("said small.off",)
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
    for words in view.saying(word_set(view.recipe.language, "small.off")):
        match _beside(words) if words.plain.ask(_is_off) else ():
            case Ingredient() as part, (Ingredient() | Reference()) as whole if part.measures:
                if part.purpose or part.part or _is_piece(whole, view):
                    continue
                message = f"“{part.name}” comes off “{whole.name}”, but both are listed and weighed"
                yield Diagnostic(RULE, LEVEL, part.clause.span, message, _hint(view, part, whole.name))


def _is_piece(whole: Ingredient | Reference, view: View) -> bool:
    """Whether it is equipment: from the pan."""
    return isinstance(whole, Reference) and bool(view.kitchen.cupboard.find(whole.name.lower().split()))


def _hint(view: View, part: Ingredient, whole: str) -> str:
    from tamis.quantity.display import written

    measure = written(part.measures[0], view.recipe.language)
    left = example(view.recipe.language, "leaving_some", measure=measure, name=part.name)
    return f"if it is part of “{whole}”, write only that, with {left}, and call the part by its name afterwards"


def _beside(words: Stretch) -> list[Read | None]:
    """The food or the name right before some words, and that right behind them, where clauses stand there."""
    parts = words.action.parts
    reads = {read.clause.span: read for read in words.action.reads if isinstance(read, Ingredient | Reference)}
    at = [part.span.start for part in parts].index(words.start)
    return [reads.get(part.span) for part in (*parts[max(0, at - 1) : at], *parts[at + 1 : at + 2])]


def _is_off(plain: Plain) -> bool:
    """Whether words say that what stands before them comes off what stands behind them, and nothing more."""
    language = plain.kitchen.language
    size = plain.phrase(phrases(check_words(language).small.off, language), 0)
    return bool(size) and size == len(plain)
