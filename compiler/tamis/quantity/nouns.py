"""One spelling for one thing: the singular and the plural of nouns, by the rules of a language.

A general stemmer turns *molasses* into nonsense, so this is a handful of endings and a short list of exceptions,
which stand in `grammar/words/<language>/nouns.toml`.
"""

from __future__ import annotations

from functools import cache

from tamis.words import word_lists

Endings = dict[str, tuple[tuple[str, str], ...]]
"""Pairs of endings by the last letter of a word; under "" those for any other."""


class Nouns:
    """The nouns of one language."""

    __slots__ = ("_least", "_many", "_one", "_plural", "_singular", "_unchanged", "articles", "definite", "indefinite")

    def __init__(self, language: str) -> None:
        lists = word_lists(language, "nouns")
        self.definite = frozenset(lists["articles"]["definite"])
        self.indefinite = frozenset(lists["articles"]["indefinite"])
        self.articles = self.definite | self.indefinite
        self._many = {one: many for one, (many,) in lists["irregular"].items()}
        self._one = {many: one for one, many in self._many.items()}
        self._plural = endings(lists["plural"]["endings"])
        self._singular = endings(lists["singular"]["endings"])
        self._least = int(lists["singular"]["least"][0])
        self._unchanged = frozenset(lists["singular"]["unchanged"])

    def singular(self, word: str) -> str:
        """The singular of a lower-case noun; a word that is no plural comes back unchanged."""
        known = self._one.get(word)
        if known is None:
            plain = len(word) < self._least or word in self._unchanged
            known = self._one[word] = word if plain else changed(word, self._singular)
        return known

    def plural(self, noun: str) -> str:
        """The plural of a noun or of the last word of a phrase."""
        head, space, last = noun.rpartition(" ")
        return head + space + (self._many.get(last) or changed(last, self._plural))


@cache
def nouns(language: str) -> Nouns:
    """The nouns of a language, their rules read once."""
    return Nouns(language)


def endings(rows: tuple[str, ...]) -> Endings:
    """Pairs of endings as the data write them: `-y -ies`."""
    pairs = [(old.removeprefix("-"), new.removeprefix("-")) for old, new in (row.split(" ") for row in rows)]
    letters = {old[-1:] for old, _ in pairs} | {""}
    return {letter: tuple(pair for pair in pairs if pair[0][-1:] in (letter, "")) for letter in letters}


def changed(word: str, pairs: Endings) -> str:
    """A word with its ending changed by the first pair that fits; unchanged where none does."""
    for old, new in pairs.get(word[-1:]) or pairs[""]:
        if word.endswith(old):
            return word[: len(word) - len(old)] + new
    return word
