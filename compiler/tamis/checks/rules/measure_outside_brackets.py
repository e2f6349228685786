"""A measure in the plain words of a line.

What stands in plain words reaches no table, no shopping list and no scaled recipe, and its allergens are
not seen: it looks measured, and is not.

Put it in a bracket: `add [2 tbsp sugar]`. Food that was measured before is called by its name alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.reading.clauses import Ingredient
from tamis.source import Span
from tamis.syntax.document import Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View

RULE = "measure-outside-brackets"
LEVEL: Severity = "warning"
BAD = """\
title: Sweet cream
serves: 4

# Cream

Whip [300 ml double cream] [in a bowl] [until thick], then add 2 tbsp sugar and fold.
"""
GOOD = """\
title: Sweet cream
serves: 4

# Cream

Whip [300 ml double cream] [in a bowl] [until thick], then add [2 tbsp sugar] and fold.
"""

_OPEN = pattern(r"(?<!\\)\[")
_KINDS = ("mass", "volume")


@cache
def _number(language: str) -> re.Pattern[str]:
    """A number (as figures, a kitchen fraction, or a small word) and up to four of the words after it."""
    words = one_of(check_words(language).small.numbers)
    return pattern(
        rf"(?<![\w.,])(\d[\d.,/ ]{{0,12}}[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞]|{words}(?= ))"
        r"[ \u00a0-]?((?:[^\W\d_]{1,30}\.?[ \u00a0-]?){1,4})",
        re.IGNORECASE,
    )


@cache
def _more(language: str) -> re.Pattern[str]:
    """`plus 1 yolk`, as all that is said after a comma."""
    small = check_words(language).small
    number = rf"\d+|{one_of(small.numbers)}"
    return pattern(rf"{one_of(small.added)} ({number}) ([^\W\d_]+(?: [^\W\d_]+)?)\Z", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """A number and a unit of weight or volume with a food after it; a jug's size is no measure of food."""
    number, plus = _number(view.recipe.language), _more(view.recipe.language)
    for action in view.recipe.actions:
        for part in action.parts:
            if isinstance(part, Text) and number.search(part.text):
                yield from _in_words(view, part, "stands outside brackets")
        for read in action.reads:
            if isinstance(read, Ingredient) and number.search(read.preparation):
                yield from _in_words(view, _after_comma(read), "stands in another food’s bracket")
            if isinstance(read, Ingredient) and (more := plus.match(read.preparation)):
                yield from _plus(view, _after_comma(read), more)


def _after_comma(food: Ingredient) -> Text:
    """The words after a food's comma: `[1 egg, beaten with 1 tbsp milk]`."""
    start = food.clause.inner + max(0, food.clause.text.find(food.preparation))
    return Text(food.preparation, Span(start, start + len(food.preparation)))


def _plus(view: View, part: Text, found: re.Match[str]) -> Iterator[Diagnostic]:
    """`1 egg plus 1 yolk`: pieces of another food."""
    if view.kitchen.larder.find(found[2].lower().split()):
        span = Span(found.start(1), found.end(2)).shifted(part.span.start)
        text = view.source.slice(span)
        message = f"“{text}” stands in another food’s bracket: no table and no check sees it"
        yield Diagnostic(RULE, LEVEL, span, message, f"write `[{text}]`")


def _in_words(view: View, part: Text, where: str) -> Iterator[Diagnostic]:
    small = check_words(view.recipe.language).small
    for found in _number(view.recipe.language).finditer(part.text):
        words = found[2].replace("\u00a0", " ").replace("-", " ").split()
        unit = view.kitchen.units.get(words[0])
        if unit is None or unit.kind not in _KINDS:
            continue
        # After a bracket that nothing closes, the words were meant as a clause, and that is told already.
        if _OPEN.search(part.text, 0, found.start()):
            return
        name = [word.lower().rstrip(".") for word in words[1:] if word.lower() not in small.between]
        length = _food(view, name)
        if not length:
            continue
        end = found.start(2) + _end_of(found[2], name[length - 1])
        span = Span(found.start(), end).shifted(part.span.start)
        text = view.source.slice(span)
        message = f"“{text}” {where}: no table and no check sees it"
        yield Diagnostic(RULE, LEVEL, span, message, f"write `[{text}]`")


def _food(view: View, words: list[str]) -> int:
    """How many of the words name a food that the kitchen knows; 0 if none do, or if they name equipment."""
    for end in range(len(words), 0, -1):
        if view.kitchen.cupboard.find(words[:end]):
            return 0
        if view.kitchen.larder.find(words[:end]):
            return end
    return 0


def _end_of(text: str, word: str) -> int:
    return text.lower().rindex(word) + len(word)
