"""The words that the pages ask of a recipe, from `grammar/words/<language>/publish.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists


class PageWords(NamedTuple):
    """By which a recipe's words are set on a page."""

    language: str
    apart: tuple[str, ...]
    """How a preparation begins without which the sentence would be another."""
    conditions: frozenset[str]
    """What tells whether a food goes in at all."""
    between: re.Pattern[str]
    """What parts a measure from its food, as the last word."""
    plus: frozenset[str]
    """What stands before more of the food."""
    night: frozenset[str]
    """What is a length of time without a number."""
    supplies: re.Pattern[str]
    """How a purpose begins that is not eaten."""
    unchecked: re.Pattern[str]
    """What stands after a source that was not looked up again."""


@cache
def page_words(language: str) -> PageWords:
    lists = word_lists(language, "publish")
    sentence = lists["sentence"]
    return PageWords(
        language=language,
        apart=sentence["apart"],
        conditions=frozenset(sentence["conditions"]),
        between=pattern(rf" {one_of(sentence['between'])}\Z"),
        plus=frozenset(word_lists(language, "clause")["closed"]["PLUS"]),
        night=frozenset(word_lists(language, "clause")["open"]["OVERNIGHT"]),
        supplies=pattern(rf"{one_of(lists['supplies']['purposes'])} "),
        unchecked=pattern(rf", {one_of(lists['sources']['unchecked'])}\Z"),
    )
