"""One spelling for one thing: the singular and the plural of nouns, by the rules of a language.

A general stemmer turns *molasses* into nonsense, so this is a handful of endings and a short list of exceptions,
which stand in `grammar/words/<language>/nouns.toml`.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import cache, lru_cache

from tamis.typed import Literal
from tamis.words import word_lists

Where = Literal["before", "after", "first", "last", "every"]
"""Where a word stands in a phrase."""
Endings = dict[str, tuple[tuple[str, str], ...]]
"""Pairs of endings by the last letter of a word; under "" those for any other."""

_MOST_KEPT = 20_000


class Nouns:
    """The nouns of one language.

    `orders` tells where adjectives stand, `plural_within` that not only the last word of a phrase takes the plural.
    `articles` are the `definite` and the `indefinite` ones.
    """

    __slots__ = (
        "_every", "_least", "_many", "_one", "_plural", "_singular", "_unchanged", "_until", "_until_words", "articles",
        "definite", "indefinite", "orders", "plural_within", "singular",
    )  # fmt: skip

    def __init__(self, language: str) -> None:
        lists = word_lists(language, "nouns")
        phrases: Mapping[str, tuple[Where, ...]] = lists["phrases"]  # type: ignore[assignment]  # the file says which
        self.orders: tuple[Where, ...] = phrases["adjectives"]
        self.plural_within = phrases["plural"] == ("every",)
        self._until: tuple[str, ...] = phrases.get("until", ())
        self._until_words = frozenset(self._until)
        self._every = phrases["singular"] == ("every",)
        self.definite = frozenset(lists["articles"]["definite"])
        self.indefinite = frozenset(lists["articles"]["indefinite"])
        self.articles = self.definite | self.indefinite
        self._many = {one: many for one, (many,) in lists["irregular"].items()}
        self._one = {many: one for one, many in self._many.items()}
        self._plural = endings(lists["plural"]["endings"])
        self._singular = endings(lists["singular"]["endings"])
        self._least = int(lists["singular"]["least"][0])
        self._unchanged = frozenset(lists["singular"]["unchanged"])
        self.singular: Callable[[str], str] = lru_cache(_MOST_KEPT)(self._singular_of)
        """The singular of a lower-case noun; a word that is no plural comes back unchanged."""

    def _singular_of(self, word: str) -> str:
        known = self._one.get(word)
        if known is not None or len(word) < self._least or word in self._unchanged:
            return known or word
        return changed(word, self._singular)

    def key(self, words: Sequence[str]) -> tuple[str, ...]:
        """A name as it is looked up, in the singular."""
        if self._every:
            return tuple(map(self.singular, words))
        if len(words) > 2 and not self._until_words.isdisjoint(words):  # legs of lamb
            end = self._end(words)
            words = (*words[: end - 1], self.singular(words[end - 1]), *words[end:])
        return (*words[:-1], self.singular(words[-1])) if words else ()

    def plural(self, noun: str) -> str:
        """The plural of a noun or a phrase."""
        words = noun.split(" ")
        end = self._end(words)
        first = 0 if self.plural_within else end - 1
        return " ".join((*words[:first], *map(self._several, words[first:end]), *words[end:]))

    def one(self, phrase: str) -> str:
        """A phrase in lower case with its nouns in the singular."""
        words = phrase.split(" ")
        if self._every:
            return " ".join(self.key(words))
        end = self._end(words)
        return " ".join((*words[: end - 1], self.singular(words[end - 1]), *words[end:]))

    def _end(self, words: Sequence[str]) -> int:
        """Where the noun that takes the plural ends: *blades | of mace*."""
        return next((at for at, word in enumerate(words) if at and self._ends_before(word)), len(words))

    def _ends_before(self, word: str) -> bool:
        """Whether what goes along with a noun ends before a word: *pommes | de terre*, *huiles | d'olive*."""
        return word in self._until or any(word.startswith(each) for each in self._until if each[-1] == "'")

    def _several(self, word: str) -> str:
        return self._many.get(word) or changed(word, self._plural)


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
