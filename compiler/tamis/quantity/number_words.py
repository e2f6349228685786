"""Numbers in words: one to twelve, a half, two thirds, one and a half, a dozen, half a dozen, three dozen."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.quantity.nouns import nouns
from tamis.string_tables import exact
from tamis.words import word_lists, word_tables

Worth = dict[str, Fraction]


class NumberWords:
    """The words for numbers of one language."""

    __slots__ = ("_alone", "_articles", "_parts", "groups", "joins", "ones")

    def __init__(self, language: str) -> None:
        tables = word_tables(language, "numbers")
        self.ones = _worth(tables["ones"])
        self.groups = _worth(tables["groups"])
        self.joins = tuple(word_lists(language, "numbers").get("joins", {}).get("words", ()))
        parts = _worth(tables["parts"])
        self._alone = self.ones | parts | self.groups
        self._parts = parts | _worth(tables["parts-of-many"])
        self._articles = nouns(language).indefinite

    def parse(self, text: str) -> Fraction | None:
        """The number that words say; None if they say none."""
        words = [word for word in text.lower().replace("-", " ").split() if word not in self._articles]
        if len(words) == 1:
            return self._alone.get(words[0])
        if len(words) == 3 and words[1] in self.joins:
            return self._mixed(words[0], words[2])
        return self._times(*words) if len(words) == 2 else None

    def without_joins(self, text: str) -> str:
        """`1 and 1/2` as figures have it: `1 1/2`."""
        return " ".join([word for word in text.split() if word.lower() not in self.joins])

    def _mixed(self, whole: str, part: str) -> Fraction | None:
        """One and a half, and the like."""
        of_whole, of_part = self.ones.get(whole), self._parts.get(part)
        return of_whole + of_part if of_whole and of_part else None

    def _times(self, count: str, each: str) -> Fraction | None:
        if each in self.groups:
            many = self._alone.get(count) if count not in self.groups else None
            return many and many * self.groups[each]
        part, many = self._parts.get(each), self.ones.get(count)
        return many * part if part and many else None


@cache
def number_words(language: str) -> NumberWords:
    """The words of a language, read once."""
    return NumberWords(language)


def _worth(table: dict[str, str]) -> Worth:
    return {word: exact(text) for word, text in table.items()}
