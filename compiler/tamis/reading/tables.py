"""The tables of `words/en/reading.toml`: words by which a clause is read, as data that a cook can read too."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.words import word_tables

Phrases = dict[str, list[tuple[int, dict[tuple[str, ...], str]]]]


class Tables(NamedTuple):
    """Word lists ready for look-up. A `Phrases` maps a first word to the phrases of each length, longest first: a
    phrase to what it stands for."""

    hedges: Phrases
    articles: frozenset[str]
    openers: Phrases
    endings: tuple[tuple[tuple[str, ...], str], ...]
    prepositions: Phrases
    dividing: frozenset[str]
    setting_words: frozenset[str]
    heats: frozenset[str]
    rooms: Phrases
    cold_rooms: Phrases
    states: frozenset[str]
    repeat_nouns: dict[str, str]
    fractions: dict[str, Fraction]
    rest: Phrases
    some: Phrases
    no_name: frozenset[str]
    kinds: dict[str, frozenset[str]]
    made: frozenset[str]
    hints: Phrases
    all: Phrases
    how: frozenset[str]
    vague: Phrases
    stops: frozenset[str]
    ends: frozenset[str]
    purposes: Phrases
    optional: frozenset[str]
    size_words: frozenset[str]
    constant: tuple[str, ...]
    sometimes: tuple[str, ...]
    once: tuple[str, ...]
    hands: frozenset[str]
    free: frozenset[str]


def _phrases(*groups: tuple[str, list[str]]) -> Phrases:
    table: dict[str, dict[int, dict[tuple[str, ...], str]]] = {}
    for meaning, phrases in groups:
        for phrase in phrases:
            words = tuple(phrase.split(" "))
            by_length = table.setdefault(words[0], {})
            by_length.setdefault(len(words), {}).setdefault(words, meaning or phrase)
    return {first: sorted(by_length.items(), reverse=True) for first, by_length in table.items()}


def match(table: Phrases, keys: tuple[str, ...], start: int) -> tuple[str, int] | None:
    """The longest phrase of the table that begins at `keys[start]`: what it stands for, and its number of words."""
    if start < len(keys):
        for length, phrases in table.get(keys[start], ()):
            meaning = phrases.get(keys[start : start + length])
            if meaning is not None:
                return meaning, length
    return None


def raw_tables() -> dict[str, dict[str, list[str]]]:
    """The tables as they are written, each key with its words."""
    raw = word_tables("en", "reading")
    return {name: {key: text.split(", ") for key, text in table.items()} for name, table in raw.items()}


@cache
def tables() -> Tables:
    """The tables, read once."""
    raw = raw_tables()
    numbers, shares, measures, tending = raw["numbers"], raw["shares"], raw["measures"], raw["tending"]
    return Tables(
        hedges=_phrases(("", numbers["hedges"])),
        articles=frozenset(numbers["articles"]),
        openers=_phrases(*raw["openers"].items()),
        endings=tuple(
            (tuple(phrase.split(" ")), role) for role, phrases in raw["endings"].items() for phrase in phrases
        ),
        prepositions=_phrases(("", raw["prepositions"]["food"])),
        dividing=frozenset(raw["prepositions"]["dividing"]),
        setting_words=frozenset(raw["settings"]["words"]),
        heats=frozenset(raw["settings"]["nouns"]),
        rooms=_phrases(("", raw["settings"]["rooms"])),
        cold_rooms=_phrases(("", raw["settings"]["cold"])),
        states=frozenset(raw["targets"]["states"]),
        repeat_nouns={plural: kind for kind, (plural,) in raw["repeats"].items()},
        fractions={word: Fraction(text) for word, (text,) in raw["fractions"].items()},
        rest=_phrases(("", shares["rest"])),
        no_name=frozenset(raw["namings"]["not"]),
        kinds={word: frozenset(kinds) for word, kinds in raw["kinds"].items()},
        made=frozenset(map(nouns("en").singular, raw["made"]["words"])),
        hints=_phrases(*((said, [tried]) for tried, (said,) in raw["hints"].items())),
        some=_phrases(("", shares["some"])),
        all=_phrases(("", shares["all"])),
        how=frozenset(measures["how"]),
        vague=_phrases(("", measures["vague"])),
        stops=frozenset(raw["names"]["stops"]),
        ends=frozenset(raw["names"]["ends"]),
        purposes=_phrases(("", raw["after-comma"]["purposes"])),
        optional=frozenset(raw["after-comma"]["optional"]),
        size_words=frozenset(raw["sizes"]["words"]),
        constant=tuple(tending["constant"]),
        sometimes=tuple(tending["sometimes"]),
        once=tuple(tending["once"]),
        hands=frozenset(raw["attention"]["hands"]),
        free=frozenset(raw["attention"]["free"]),
    )
