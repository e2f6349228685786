"""A measure in the plain words of a line.

What stands in plain words reaches no table, no market list and no scaled recipe, and its allergens are
not counted: it looks measured, and is not.

Put it in a bracket: `add [2 tbsp sugar]`. Food that was measured before is called by its name alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tamis.checks.view import Stretch
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.reading.clauses import Ingredient
from tamis.reading.plain import plain_of
from tamis.reading.plain_amounts import amount_words, amounts
from tamis.source import Span
from tamis.syntax.cutting import NUMBER_WORD
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action
    from tamis.reading.plain import Plain
    from tamis.reading.plain_amounts import Amount

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

_KINDS = ("mass", "volume")
# A word that may be part of a name.
_IN_NAMES = frozenset(("WORD", "TRAIT"))
_MOST_WORDS = 6


@cache
def _of(language: str) -> frozenset[str]:
    return frozenset(check_words(language).small.between)


@cache
def _plus(language: str) -> frozenset[str]:
    return frozenset(check_words(language).small.added)


def check(view: View) -> Iterator[Diagnostic]:
    """A number and a unit of weight or volume with a food after it; a jug's size is no measure of food."""
    for words, amount in view.amounts:
        yield from _in_words(view, words, amount, "stands outside brackets")
        yield from _before_bracket(view, words, amount)
    plus = _plus(view.recipe.language)
    for action, food in view.each(Ingredient):
        for span in food.preparation_spans:
            words = Stretch(action, plain_of(view.source.slice(span), view.kitchen), span.start)
            if len(words.plain.said) < 2:
                continue
            read = {other.measure_span.start for other in action.reads if isinstance(other, Ingredient)}
            for amount in words.plain.ask(amounts):
                if words.span(amount.first, amount.end).start not in read:  # of a food that this one is worked with
                    yield from _in_words(view, words, amount, "stands in another food’s bracket")
            if words.plain.said[0] in plus:
                yield from _more(view, words)


def _before_bracket(view: View, words: Stretch, amount: Amount) -> Iterator[Diagnostic]:
    """`3 l [cold water]`: a measure with nothing between it and the bracket of a food without one."""
    if amount.kind not in _KINDS or amount.end < len(words.plain):
        return
    span = words.span(amount.first, amount.end)
    between = (view.source.slice(Span(span.end, read.clause.span.start)) for read in _unmeasured(words.action, span))
    if any(not gap.strip() for gap in between):
        text = words.plain.slice(amount.first, amount.end)
        message = f"“{text}” stands before the bracket of its food: it is left out of tables and checks"
        yield Diagnostic(RULE, LEVEL, span, message, f"begin the bracket before it: `[{text} …]`")


def _unmeasured(action: Action, before: Span) -> Iterator[Ingredient]:
    """The foods of a line behind a place that have no measure, and of which missing-quantity asks for none."""
    for read in action.reads:
        if not isinstance(read, Ingredient) or read.measured or read.clause.span.start < before.end:
            continue
        if read.role != "unmeasured" or read.purpose or read.optional or read.preparation:
            yield read


def _more(view: View, words: Stretch) -> Iterator[Diagnostic]:
    """`1 egg plus 1 yolk`: pieces of another food, as all that is said after its name."""
    plain = words.plain
    if len(plain) < 3:
        return
    number = 1 if plain.is_count(1) else plain.phrase(amount_words(view.recipe.language).numbers, 1)
    names_food = all(map(plain.is_word, range(1 + number, len(plain))))
    if number and names_food and view.kitchen.larder.find(plain.said[1 + number :]):
        text = plain.slice(1, len(plain))
        message = f"“{text}” stands in another food’s bracket: it is left out of tables and checks"
        yield Diagnostic(RULE, LEVEL, words.span(1, len(plain)), message, f"write `[{text}]`")


def _in_words(view: View, words: Stretch, amount: Amount, where: str) -> Iterator[Diagnostic]:
    # After a bracket that nothing closes, the words were meant as a clause, and that is told already.
    if amount.kind in _KINDS and not _is_open(words, amount.first) and (end := _end_of_food(view, words, amount.end)):
        text = words.plain.slice(amount.first, end)
        message = f"“{text}” {where}: it is left out of tables and checks"
        yield Diagnostic(RULE, LEVEL, words.span(amount.first, end), message, f"write `[{text}]`")


def _is_open(words: Stretch, end: int) -> bool:
    """Whether a bracket stands open before a place."""
    return any(words.plain.said[at] == "[" and words.plain.said[at - 1 : at] != ["\\"] for at in range(end))


def _is_name(plain: Plain, at: int) -> bool:
    return bool(plain.is_a(at, _IN_NAMES)) or plain.fixed[at] is NUMBER_WORD


def _end_of_food(view: View, words: Stretch, at: int) -> int:
    """Where the name of a food ends that begins at a place; 0 if none does, or if it is one of equipment."""
    plain, of = words.plain, _of(view.recipe.language)
    places: list[int] = []
    while at < len(plain) and len(places) < _MOST_WORDS and (plain.said[at] in of or _is_name(plain, at)):
        places += [at] if plain.said[at] not in of else []
        at += 1
    name = [plain.said[at] for at in places]
    for size in range(len(name), 0, -1):
        if view.kitchen.cupboard.find(name[:size]):
            return 0
        if view.kitchen.larder.find(name[:size]):
            return places[size - 1] + 1
    return 0
