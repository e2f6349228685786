"""Words that are asked for beside the grammar: names by their kind, what a refused clause may have meant."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import lru_cache

from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.string_tables import exact
from tamis.words import word_lists, word_tables

Phrases = dict[str, list[tuple[int, dict[tuple[str, ...], str]]]]


class Tables(NamedTuple):
    """Word lists ready for look-up. A `Phrases` maps a first word to the phrases of each length, longest first: a
    phrase to what it stands for."""

    articles: frozenset[str]
    dividing: frozenset[str]
    cut_in: frozenset[str]
    each: frozenset[str]
    few: frozenset[str]
    of: frozenset[str]
    fractions: dict[str, Fraction]
    hedges: frozenset[str]
    hints: Phrases
    kinds: dict[str, frozenset[str]]
    made: frozenset[str]
    parted: re.Pattern[str]
    parts: tuple[str, ...]
    plain: Phrases
    ands: frozenset[str]
    prepositions: Phrases
    purposes: Phrases
    repeat_nouns: frozenset[str]
    rooms: Phrases
    the: frozenset[str]
    cold_rooms: Phrases
    hangs: frozenset[str]
    until: str
    at: str
    time_parts: frozenset[str]
    for_: frozenset[str]
    then: tuple[str, ...]
    twice: frozenset[str]
    shares: frozenset[str]
    """The words that a share before its bracket ends with."""


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


@lru_cache(8)
def tables(language: str) -> Tables:
    """The tables of a language, read once."""
    clause, reading = word_lists(language, "clause"), word_lists(language, "reading")
    closed = clause["closed"]
    fractions = word_tables(language, "clause")["fractions"]
    return Tables(
        articles=frozenset(closed["ARTICLE"]),
        dividing=frozenset(closed["INTO"]),
        cut_in=frozenset(closed.get("CUTIN", ())),
        each=frozenset(closed["EACH"]),
        few=frozenset(word for phrase in clause["said"]["few"] for word in phrase.split(" ")[-1:]),
        of=frozenset(closed["OF"]),
        fractions={word: exact(text) for word, text in fractions.items()},
        hedges=frozenset(closed["HEDGE"]),
        hints=_phrases(*((said, [tried]) for tried, (said,) in reading["hints"].items())),
        kinds={word: frozenset(kinds) for word, kinds in reading["kinds"].items()},
        made=frozenset(map(nouns(language).singular, reading["made"]["words"])),
        parted=pattern(
            "|".join((*(rf"\b{re.escape(word)}\b" for word in (*closed["AND"], *closed["PLUS"])), "&", r"\+", ","))
        ),
        parts=tuple(closed["PART"]),
        plain=_phrases(("", list(reading["plain"]["words"]))),
        ands=frozenset(closed["AND"]),
        prepositions=_phrases(("", [*closed["PREP"], *closed["INTO"]])),
        purposes=_phrases(("", [*closed["PURPOSE"], *closed["FOR"]])),
        repeat_nouns=frozenset((*clause["open"]["BATCH"], *clause["open"]["ADDITION"], *closed["TIMESWORD"])),
        the=frozenset(closed["THE"]),
        rooms=_phrases(("", list(closed["ROOM"]))),
        cold_rooms=_phrases(("", list(reading["rooms"]["cold"]))),
        hangs=frozenset(reading["hangs"]["words"]),
        until=closed["UNTIL"][0],
        at=closed["AT"][0],
        time_parts=frozenset(reading["time-parts"]["words"]),
        for_=frozenset(closed["FOR"]),
        then=word_lists(language, "prose")["next"]["then"],
        twice=frozenset(closed.get("TWICE", ())),
        shares=frozenset(
            phrase.split(" ")[-1]
            for kind in ("OF", "OFTHE", "FRACTION", "REST", "PART", "PARTTHE")
            for phrase in (*closed.get(kind, ()), *clause["open"].get(kind, ()))
        ),
    )
