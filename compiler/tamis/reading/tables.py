"""The tables of `roles.toml`: words by which a clause is read, as data that a cook can read too."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import Any

from tamis.assets import asset_text
from tamis.record import NamedTuple

Phrases = dict[str, list[tuple[tuple[str, ...], str]]]


class Tables(NamedTuple):
    """Word lists ready for look-up. A `Phrases` maps a first word to whole phrases, longest first, each with what
    it stands for."""

    hedges: Phrases
    articles: frozenset[str]
    openers: Phrases
    endings: tuple[tuple[tuple[str, ...], str], ...]
    prepositions: Phrases
    dividing: frozenset[str]
    setting_words: frozenset[str]
    rooms: Phrases
    states: frozenset[str]
    repeat_nouns: dict[str, str]
    fractions: dict[str, Fraction]
    rest: Phrases
    some: Phrases
    no_name: frozenset[str]
    hints: Phrases
    all: Phrases
    how: frozenset[str]
    vague: Phrases
    stops: frozenset[str]
    purposes: Phrases
    optional: frozenset[str]
    size_words: frozenset[str]
    constant: tuple[str, ...]
    sometimes: tuple[str, ...]
    once: tuple[str, ...]
    hands: frozenset[str]
    free: frozenset[str]


def _phrases(*groups: tuple[str, list[str]]) -> Phrases:
    table: Phrases = {}
    for meaning, phrases in groups:
        for phrase in phrases:
            words = tuple(phrase.split(" "))
            table.setdefault(words[0], []).append((words, meaning or phrase))
    for entries in table.values():
        entries.sort(key=lambda entry: (-len(entry[0]), entry[0]))
    return table


def match(table: Phrases, keys: tuple[str, ...], start: int) -> tuple[str, int] | None:
    """The longest phrase of the table that begins at `keys[start]`: what it stands for, and its number of words."""
    if start < len(keys):
        for words, meaning in table.get(keys[start], ()):
            if keys[start : start + len(words)] == words:
                return meaning, len(words)
    return None


@cache
def tables() -> Tables:
    """The tables, read once."""
    import tomllib

    raw: dict[str, Any] = tomllib.loads(asset_text("grammar/roles.toml"))
    shares, measures, tending = raw["shares"], raw["measures"], raw["tending"]
    return Tables(
        hedges=_phrases(("", raw["hedges"])),
        articles=frozenset(raw["articles"]),
        openers=_phrases(*raw["openers"].items()),
        endings=tuple(
            (tuple(phrase.split(" ")), role) for role, phrases in raw["endings"].items() for phrase in phrases
        ),
        prepositions=_phrases(("", raw["prepositions"]["food"])),
        dividing=frozenset(raw["prepositions"]["dividing"]),
        setting_words=frozenset(raw["settings"]["words"]),
        rooms=_phrases(("", raw["settings"]["rooms"])),
        states=frozenset(raw["targets"]["states"]),
        repeat_nouns={plural: kind for kind, plural in raw["repeats"]["nouns"].items()},
        fractions={word: Fraction(text) for word, text in shares["fractions"].items()},
        rest=_phrases(("", shares["rest"])),
        no_name=frozenset(raw["namings"]["not"]),
        hints=_phrases(*((said, [tried]) for tried, said in raw["hints"].items())),
        some=_phrases(("", shares["some"])),
        all=_phrases(("", shares["all"])),
        how=frozenset(measures["how"]),
        vague=_phrases(("", measures["vague"])),
        stops=frozenset(raw["names"]["stops"]),
        purposes=_phrases(("", raw["after-comma"]["purposes"])),
        optional=frozenset(raw["after-comma"]["optional"]),
        size_words=frozenset(raw["sizes"]["words"]),
        constant=tuple(tending["constant"]),
        sometimes=tuple(tending["sometimes"]),
        once=tuple(tending["once"]),
        hands=frozenset(raw["attention"]["hands"]),
        free=frozenset(raw["attention"]["free"]),
    )
