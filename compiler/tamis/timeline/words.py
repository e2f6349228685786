"""The words that a timeline asks of a recipe, from `grammar/words/<language>/timeline.toml`, and those of its rows."""

from __future__ import annotations

import re
from functools import cache

from tamis.patterns import pattern
from tamis.quantity.nouns import nouns
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists, word_tables


class TitleWords(NamedTuple):
    """By which the name of a piece of work is made."""

    joints: frozenset[str]
    compares: frozenset[str]
    """Joints that belong to the words behind them: *as much of*."""
    pairs: frozenset[str]
    """Joints between things that belong together: *salt and pepper*."""
    during: frozenset[str]
    """With which a line begins that is done in the wait of the one before: *while they fry, …*."""
    relative: frozenset[str]
    numbers: frozenset[str]
    pronouns: frozenset[str]
    prepositions: frozenset[str]
    empty: frozenset[str]
    """Prepositions too."""
    places: tuple[str, ...]
    into: frozenset[str]
    where: frozenset[str]
    through: frozenset[str]
    boils_in: frozenset[str]
    over: frozenset[str]
    plenty: frozenset[str]
    turned_to: tuple[str, ...]
    particles: frozenset[str]
    for_tools: frozenset[str]


class PreparationWords(NamedTuple):
    """By which the words after an ingredient's comma are understood."""

    kept_cold: frozenset[str]
    of_part: re.Pattern[str]
    """Two words that are a phrase of their own: *casings removed*."""
    manner: re.Pattern[str]
    lies: tuple[str, ...]
    """Behind a word that is no work then: *cut side up*."""
    thick: frozenset[str]
    """Behind the measure of how steaks are cut: *2 cm thick*."""
    present: tuple[str, ...]
    """How a participle ends that says what is yet to be done: *for dusting*."""
    to: frozenset[str]
    """Behind one of these stands what is to be done, or reached, and no participle: *enough to spread*."""


class RowWords(NamedTuple):
    """The rows that no line has in its own words."""

    heat: str
    heat_to: str
    set: str
    set_to: str
    off: str
    work: str
    add: str
    calls: str
    part: str
    boil_up: str
    boils: str
    round: str
    stations: dict[str, str]


@cache
def row_words(language: str) -> RowWords:
    said = word_tables(language, "rows")
    return RowWords(**said["rows"], stations=said["stations"])


@cache
def title_words(language: str) -> TitleWords:
    lists = word_lists(language, "timeline")["titles"]
    closed = word_lists(language, "clause")["closed"]
    prepositions = (*closed["PREP"], *closed["INTO"], *lists["prepositions"])
    return TitleWords(
        joints=frozenset(lists["joints"]),
        compares=frozenset(lists["compares"]),
        pairs=frozenset(lists["pairs"]),
        during=frozenset(closed.get("WHILE", ())),
        relative=frozenset(lists["relative"]),
        numbers=frozenset(word_tables(language, "numbers")["ones"]),
        pronouns=frozenset(lists["pronouns"]),
        prepositions=frozenset(prepositions),
        empty=frozenset((*prepositions, *lists["empty"], *nouns(language).articles)),
        places=lists["places"],
        into=frozenset(closed["INTO"]),
        where=frozenset(closed["PREP"]) | frozenset(closed["INTO"]),
        through=frozenset(word_lists(language, "model")["sieving"]["through"]),
        boils_in=frozenset(lists["boils_in"]),
        over=frozenset(lists["over"]),
        plenty=frozenset(lists["plenty"]),
        turned_to=tuple(f"{word} " for word in closed["TO"]),
        particles=frozenset(word_lists(language, "prose")["imperative"]["particles"]),
        for_tools=frozenset(lists["for_tools"]),
    )


@cache
def preparation_words(language: str) -> PreparationWords:
    lists = word_lists(language, "timeline")["preparations"]
    joint, article = rf"[,;]|\b{one_of(lists['joints'])}\b", one_of(nouns(language).definite)
    word = rf"(?!{joint})[^\W\d_]+"
    out = one_of(word_lists(language, "prose")["imperative"]["particles"])
    return PreparationWords(
        kept_cold=frozenset(lists["kept_cold"]),
        of_part=pattern(
            rf"(?:^|{joint})\s*(?:{article} )?((?:{word} ){{0,2}}{word}) ([^\W\d_]+)( {out})?\s*(?=$|{joint})"
        ),
        manner=pattern(rf"\w+{one_of(lists['adverbs'])}|{one_of(lists['manner'])}"),
        lies=word_lists(language, "prose")["imperative"]["lies"],
        thick=frozenset(lists["thick"]),
        present=lists["present"],
        to=frozenset(word_lists(language, "clause")["closed"]["TO"]),
    )
