"""How verbs are formed in a language, and what may stand about them: `grammar/words/<language>/verbs.toml`."""

from __future__ import annotations

from functools import cache

from tamis.quantity.nouns import Endings, changed, endings
from tamis.record import NamedTuple
from tamis.words import word_lists, word_tables


class VerbWords(NamedTuple):
    """The rules of one language."""

    names: dict[str, tuple[str, ...]] | None
    """The words for each verb of the data, by its base; None where the data's own are the language's."""
    purposes: dict[str, str]
    """What a purpose of the data is called."""
    articles: frozenset[str]
    """After these stands a noun: *leave the rest*."""
    before: frozenset[str]
    """After these stands a verb: *to rise*."""
    after: frozenset[str]
    """Before these a verb stands by itself."""
    joints: tuple[str, ...]
    """Between two verbs that are one piece of work: top *and* tail."""
    forms: dict[str, tuple[str, ...]]
    """The participles where the spelling rules do not reach."""
    other_foods: frozenset[str]
    """Participles that make another food of one: *bœuf haché* is minced, though *hacher* is to chop."""
    rules: tuple[Endings, ...]
    vowels: frozenset[str]
    doubled: frozenset[str]

    def participles(self, base: str) -> tuple[str, ...]:
        """The participles of a verb: `stir` gives `stirring` and `stirred`."""
        odd = self.forms.get(base)
        if odd:
            return odd
        stem = base + base[-1] if self._doubles(base) else base
        return tuple([changed(stem, rule) for rule in self.rules])

    def _doubles(self, base: str) -> bool:
        """Whether the last letter is doubled: one vowel in all, before one last consonant (stir, whip, cut)."""
        last = base.rpartition("-")[2]
        vowels = [letter in self.vowels for letter in last]
        return len(last) > 2 and vowels[-2] and sum(vowels) == 1 and last[-1] in self.doubled


@cache
def verb_words(language: str) -> VerbWords:
    """The rules of a language, read once."""
    lists = word_lists(language, "verbs")
    lets, doubling = lists["lets"], lists.get("doubling", {})
    return VerbWords(
        names=lists.get("names"),
        purposes=word_tables(language, "verbs").get("purposes", {}),
        articles=frozenset(lets["articles"]),
        before=frozenset(lets["before"]),
        after=frozenset(lets["after"]),
        joints=word_lists(language, "clause")["closed"]["AND"],
        forms=lists.get("forms", {}),
        other_foods=frozenset(lists.get("other-foods", {}).get("words", ())),
        rules=tuple(map(endings, lists["participles"].values())),
        vowels=frozenset(doubling.get("vowels", ())),
        doubled=frozenset(doubling.get("doubled", ())),
    )
