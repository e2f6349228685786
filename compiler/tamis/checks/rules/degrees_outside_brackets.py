"""A temperature in the plain words of a line.

No oven is heated to it in time, no other scale is printed beside it, and no check of food safety counts it.

Put it in a bracket: `heat [the oven] [to 200 °C]`, `[until 74 °C inside]`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from tamis.checks.words import check_words
from tamis.diagnostics import Diagnostic, Severity
from tamis.patterns import pattern
from tamis.quantity.degrees import degree_words
from tamis.source import Span
from tamis.syntax.document import Clause, Part, Text
from tamis.typed import TYPE_CHECKING
from tamis.words import one_of

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.model.recipe import Action

RULE = "degrees-outside-brackets"
LEVEL: Severity = "warning"
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


# Degrees without their sign, which a bracket may take for cups.
_BARE = pattern(r"(\d) ?([CF])\Z")


@cache
def degrees_in_words(language: str) -> re.Pattern[str]:
    """Degrees and gas marks as they stand in plain words."""
    marks, words = one_of(check_words(language).degrees.marks), degree_words(language)
    return pattern(
        r"(?<![\w.,])(?:\d{2,3}(?:[–-]\d{2,3})? ?"
        rf"(?:[°º](?: ?[CF]\b)?|(?-i:[CF])\b|{one_of(words.names)} ?{one_of(words.scales)}\b)|{marks} \d\b)",
        re.IGNORECASE,
    )


@cache
def _to(language: str) -> re.Pattern[str]:
    """The words between a verb and what it sets something to."""
    small, turns = check_words(language).small, one_of(check_words(language).degrees.turns)
    return pattern(rf"[\w ]{{0,24}}?\b({turns}\s+)?{one_of(small.toward)}\s+(?:{one_of(small.hedges)}\s+)?")


@cache
def _opener(language: str) -> re.Pattern[str]:
    openers, hedges = check_words(language).degrees.openers, check_words(language).small.hedges
    return pattern(rf"\b{one_of(openers)}\s+(?:{one_of(hedges)}\s+)?\Z", re.IGNORECASE)


def check(view: View) -> Iterator[Diagnostic]:
    """Degrees in plain words, in a line that has none in its brackets, or to which something is turned up or down; a
    second scale beside a bracket is no harm."""
    language = view.recipe.language
    degrees = degrees_in_words(language)
    for action in view.recipe.actions:
        for part in action.parts:
            found = degrees.search(part.text) if isinstance(part, Text) else None
            if found and (
                _is_set(action, part, found, language) or not any(_has_degrees(other) for other in action.parts)
            ):
                yield _told(view, part, found)


def _is_set(action: Action, part: Part, found: re.Match[str], language: str) -> bool:
    """`then turn up to 220 °C`, `turn the oven down to 180 °C`: right after a verb."""
    start, at = part.span.start, part.span.start + found.start()
    for use in action.verbs:
        if start <= use.span.end <= at:
            to = _to(language).fullmatch(found.string, use.span.end - start, found.start())
            if to and (use.verb.sets or to[1]):
                return True
    return False


def _told(view: View, part: Part, found: re.Match[str]) -> Diagnostic:
    opener = _opener(view.recipe.language).search(found.string, 0, found.start())
    span = Span(opener.start() if opener else found.start(), found.end()).shifted(part.span.start)
    text = view.source.slice(span).rstrip()
    message = f"“{text}” stands outside brackets: no oven is heated for it, and no check sees it"
    written = _BARE.sub(r"\1 °\2", text)
    return Diagnostic(RULE, LEVEL, Span(span.start, span.start + len(text)), message, f"write `[{written}]`")


def _has_degrees(part: Part) -> bool:
    return isinstance(part, Clause) and ("#temperature" in part.items.keys or "#gas" in part.items.keys)
