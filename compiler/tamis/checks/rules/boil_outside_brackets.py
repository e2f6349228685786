"""*To the boil* in plain words, in a line that is timed for something else.

The timeline takes the line's own time for all of it, though two litres need a quarter of an hour to come to the boil.

Put it in a bracket: `bring [to the boil] and [simmer for 20 min]`.
"""

from __future__ import annotations

from collections.abc import Iterator

from tamis.checks.words import check_words, word_set
from tamis.diagnostics import Diagnostic, Severity
from tamis.quantity.nouns import nouns
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.checks.view import View
    from tamis.reading.plain import Plain

RULE = "boil-outside-brackets"
LEVEL: Severity = "information"
ABOUT = ("said boil.states",)
BAD = """\
title: Barley broth
serves: 4

# Broth

Put [200 g pearl barley] and [2 l water] [into a large pot].
Bring to the boil and [simmer for 35–40 min] [until tender].
"""
GOOD = """\
title: Barley broth
serves: 4

# Broth

Put [200 g pearl barley] and [2 l water] [into a large pot].
Bring [to the boil] and [simmer for 35–40 min] [until tender].
"""


def check(view: View) -> Iterator[Diagnostic]:
    """The words after a verb that waits, in a line with a time; without one the line is told as untimed."""
    for words in view.saying(word_set(view.recipe.language, "boil.states")):
        place = words.plain.ask(_to_the_boil)
        if place is None or words.action.work.given != "text":
            continue
        end = words.start + len(words.plain.text)
        if any(use.verb.waits and words.start <= use.span.start < end for use in words.action.verbs):
            said = words.plain.slice(*place)
            message = f"“{said}” stands outside brackets: the timeline leaves out how long that takes"
            yield Diagnostic(RULE, LEVEL, words.span(*place), message, f"write `[{said}]`")


def _to_the_boil(plain: Plain) -> tuple[int, int] | None:
    """The tokens of *to the boil*, *to a gentle simmer*."""
    language, said = plain.kitchen.language, plain.said
    words, articles = check_words(language), nouns(language).articles
    for at in range(len(said) - 2):
        if said[at] in words.small.toward and said[at + 1] in articles:
            for end in (at + 3, at + 4):
                if plain.is_word(end - 2) and said[end - 1 : end] and said[end - 1] in words.boil.states:
                    return at, end
    return None
