"""Regular expressions that are compiled when they are first used.

A phase has dozens of them, and a check of a sound recipe uses few: those that look into a mistake wait until there is
one. To compile one takes as long as to import a small module.
"""

from __future__ import annotations

import re

from tamis.typed import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterable


class Whole:
    """Words and phrases, to be found whole in a text in small letters; of two that begin alike, the longer is found.

    What a regular expression of all of them would find; that takes as long to compile as a dozen clauses to read."""

    __slots__ = ("words",)

    def __init__(self, words: Iterable[str]) -> None:
        self.words = sorted(words, key=lambda word: (-len(word), word))

    def search(self, text: str) -> bool:
        """Whether one stands in the text."""
        return any([_at(word, text) >= 0 for word in self.words if word in text])

    def without(self, text: str) -> str:
        """The text without them."""
        for word in self.words:
            while word in text and (at := _at(word, text)) >= 0:
                text = text[:at] + text[at + len(word) :]
        return text


def _at(word: str, text: str) -> int:
    """Where a word stands in a text as no part of a longer one; -1 if nowhere."""
    at = text.find(word)
    while at >= 0:
        before, after = text[at - 1 : at] if at else "", text[at + len(word) : at + len(word) + 1]
        if not (_letter(before) or _letter(after)):
            return at
        at = text.find(word, at + 1)
    return -1


def _letter(sign: str) -> bool:
    return sign.isalnum() or sign == "_"


if TYPE_CHECKING:

    def pattern(text: str, flags: int = 0) -> re.Pattern[str]:
        """What `re.compile` gives."""
else:

    class pattern:
        """Stands for what `re.compile` gives; a method that was asked for once is an attribute from then on."""

        def __init__(self, text: str, flags: int = 0) -> None:
            self.pattern = text
            self._flags = flags

        def __getattr__(self, name: str) -> Any:
            found = getattr(re.compile(self.pattern, self._flags), name)
            setattr(self, name, found)
            return found
