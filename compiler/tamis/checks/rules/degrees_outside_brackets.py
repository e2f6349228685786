"""A temperature in the plain words of a line.

No oven is heated to it in time, no other scale is printed beside it, and no check of food safety counts it.

Put it in a bracket: `heat [the oven] [to 200 °C]`, `[until 74 °C inside]`.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.degrees import with_sign
from tamis.reading.plain import phrases
from tamis.reading.plain_amounts import amount_opener
from tamis.record import NamedTuple
from tamis.syntax.document import Clause, Part
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import Stretch, View
    from tamis.reading.plain import Phrases
    from tamis.reading.plain_amounts import Amount

RULE = "degrees-outside-brackets"
LEVEL: Severity = "warning"
ABOUT = ("view amounts",)
BAD = """\
title: Baked squash
serves: 4

# Squash

Heat the oven to 200 °C.
Lay [1 squash, halved] [in a roasting tin].
[Roast for 40 min] [at 200 °C] [until soft].
"""
GOOD = """\
title: Baked squash
serves: 4

# Squash

Heat [the oven] [to 200 °C].
Lay [1 squash, halved] [in a roasting tin].
[Roast for 40 min] [until soft].
"""


class _Words(NamedTuple):
    """What opens a temperature in plain words."""

    openers: Phrases
    turns: frozenset[str]
    to: Phrases


@cache
def _words(language: str) -> _Words:
    words = check_words(language)
    return _Words(
        phrases(words.degrees.openers, language),
        frozenset(words.degrees.turns),
        phrases(words.small.toward, language),
    )


def check(view: View) -> Iterator[Diagnostic]:
    """Degrees in plain words, in a line that has none in its brackets, or to which something is turned up or down; a
    second scale beside a bracket is no harm."""
    told: Stretch | None = None
    for words, degrees in view.amounts:
        asked = _words(view.recipe.language)
        if degrees.kind != "degrees" or words is told:
            continue
        told = words
        if _is_set(words, degrees, asked) or not any(_has_degrees(other) for other in words.action.parts):
            yield _told(words, degrees, asked)


def _is_set(words: Stretch, degrees: Amount, asked: _Words) -> bool:
    """`then turn up to 220 °C`, `turn the oven down to 180 °C`: right after a verb."""
    plain, opener = words.plain, amount_opener(words.plain, degrees, asked.to)
    if opener is None:
        return False
    turned = opener > 0 and plain.said[opener - 1] in asked.turns
    for use in words.action.verbs:
        behind = plain.after(use.span.end - words.start) if use.span.end >= words.start else len(plain)
        if behind <= opener and all(map(plain.is_word, range(behind, opener))) and (use.verb.sets or turned):
            return True
    return False


def _told(words: Stretch, degrees: Amount, asked: _Words) -> Diagnostic:
    plain, opener = words.plain, amount_opener(words.plain, degrees, asked.openers)
    first = degrees.first if opener is None else opener
    text = plain.slice(first, degrees.end)
    message = f"“{text}” stands outside brackets: no oven is heated for it, and no check counts it"
    # Degrees without their sign may be taken for cups in a bracket.
    return Diagnostic(RULE, LEVEL, words.span(first, degrees.end), message, f"write `[{with_sign(text)}]`")


def _has_degrees(part: Part) -> bool:
    return isinstance(part, Clause) and ("#temperature" in part.items.keys or "#gas" in part.items.keys)
