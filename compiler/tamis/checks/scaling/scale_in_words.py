"""A number in plain words, in a recipe that is scaled.

*Lay the tomato on ten of them* and *it makes about 42* stand outside brackets: nobody multiplies them, and they
contradict the rest. What is told of each piece, a size, a time and *six at a time* stay true.

Reckon it anew where it counts or measures the whole; or say it without a number: *half of them*.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from tamis.checks.scaling._scene import times_text
from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Label, Severity
from tamis.source import Span
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.scaling._scene import Scene
    from tamis.checks.words import Scaling
    from tamis.reading.plain import Plain

RULE = "scale-in-words"
LEVEL: Severity = "warning"
FACTOR = Fraction(3)
BAD = """\
title: Tomato sandwiches
serves: 5

# Sandwiches

Spread [10 slices white bread] with [40 g soft butter].
Lay [5 tomatoes, sliced] on five of them, and close with the other five.
"""
GOOD = """\
title: Tomato sandwiches
serves: 5

# Sandwiches

Spread [10 slices white bread] with [40 g soft butter].
Lay [5 tomatoes, sliced] on half of them, 2 or 3 slices to each, and close with the others.
"""


def check(scene: Scene) -> Iterator[Diagnostic]:
    """The numbers of plain words that count or measure the whole, told once."""
    from tamis.reading.plain import plain_of
    from tamis.syntax.document import Text

    words, found = check_words(scene.recipe.language).scaling, list[tuple[str, Span]]()
    for action in scene.recipe.actions:
        for part in action.parts:
            if isinstance(part, Text) and not part.text.isspace():
                plain = plain_of(part.text, scene.kitchen)
                found += [
                    (plain.slice(first, end), Span(plain.starts[first], plain.ends[end - 1]).shifted(part.span.start))
                    for first, end in _of_the_whole(plain, words)
                ]
    if not found:
        return
    (said, span), *others = found
    message = f"{times_text(scene.factor)}: “{said}” stands in plain words, and stays as it is"
    hint = "reckon it anew if it counts or measures the whole"
    yield Diagnostic(RULE, LEVEL, span, message, hint, tuple(Label(other, "and this") for _, other in others))


def _of_the_whole(plain: Plain, words: Scaling) -> Iterator[tuple[int, int]]:
    """Where such a number stands, with the words that show it: those of an amount, else *of them* and its like behind
    it or *the other* before it."""
    from tamis.reading.plain_amounts import amount_words, amounts

    if not (plain.has_numbers or any(map(plain.is_count, range(len(plain))))):
        return
    singly = not set(words.singly).isdisjoint(plain.said)
    for amount in plain.ask(amounts):
        if amount.kind in ("mass", "volume") and not singly and not _is_size(plain, amount.end):
            yield amount.first, amount.end
    for at in filter(plain.is_count, range(len(plain))):
        first = at - (plain.said[at - 1] in amount_words(plain.kitchen.language).hedges) if at else 0
        before = plain.said[max(0, first - 2) : first]
        if " ".join(plain.said[at + 1 : at + 3]) in words.of_them:
            yield at, at + 3
        elif not singly and plain.said[at + 1 : at + 2] and plain.said[at + 1] in words.lots:
            yield at, at + 2
        elif " ".join(before) in words.the_others or (before[-1:] and before[-1] in words.yields and not singly):
            yield at, at + 1


def _is_size(plain: Plain, end: int) -> bool:
    """Whether an amount tells of what size a tool is: *a 2 litre dish*, *a 500 g loaf tin*."""
    behind = plain.said[end : end + 2]
    return any(plain.kitchen.cupboard.get(" ".join(behind[:n])) for n in (1, 2))
