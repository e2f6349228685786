"""Small words that lose their last letter before the next word and are written on to it: *d'ail*, *jusqu'à*.

They are words of their own, so a phrase of the data is parted as a cook's text is cut, and put together again as lists
spell it. In a language without them a phrase is just parted at its spaces.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from tamis.patterns import pattern
from tamis.words import one_of, word_lists


class Elision:
    """The elided words of a language."""

    __slots__ = ("_inside", "words")

    def __init__(self, language: str) -> None:
        lists = word_lists(language, "clause")
        self.words: tuple[str, ...] = lists.get("elided", {}).get("words", ())
        self._inside = pattern(rf"\b({one_of(self.words)})(?=\w)") if self.words else None

    def parted(self, phrase: str) -> list[str]:
        """The words of a phrase as they are cut: `huile d'olive` has three."""
        return (self._inside.sub(r"\1 ", phrase) if self._inside else phrase).split(" ")

    def joined(self, words: Sequence[str]) -> str:
        """Words that were cut, as lists spell them."""
        if not self.words:
            return " ".join(words)
        return "".join(self._spaced(words))

    def _spaced(self, words: Iterable[str]) -> Iterable[str]:
        before = ""
        for word in words:
            if before and before not in self.words:
                yield " "
            yield word
            before = word
