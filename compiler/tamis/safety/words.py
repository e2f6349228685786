"""The words that show what happens to raw food, from `grammar/words/<language>/safety.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.kitchen.settings import AUTHORITIES, Authority
from tamis.patterns import pattern
from tamis.quantity.degrees import degree_words
from tamis.record import NamedTuple
from tamis.words import Lists, one_of, word_lists

Words = tuple[str, ...]


class Accepted(NamedTuple):
    """What an authority accepts instead of a temperature: a word for it, and what finds any."""

    example: str
    found: re.Pattern[str]


class Cues(NamedTuple):
    """What a cue or a target says. A pattern finds one of its words, whole, in a text in small letters."""

    either: re.Pattern[str]
    """Between two cues of which one is enough."""
    either_scale: re.Pattern[str]
    """… or one temperature in two scales: "74 °C or 165 °F"."""
    parts: re.Pattern[str]
    """Between two cues that must both hold."""
    elsewhere: re.Pattern[str]
    upper: re.Pattern[str]
    at_least: re.Pattern[str]
    not_there: re.Pattern[str]
    stuffed: re.Pattern[str]
    partly: re.Pattern[str]
    denies: re.Pattern[str]
    baked: re.Pattern[str]
    browned: re.Pattern[str]
    whites: re.Pattern[str]
    boils: Words
    target_simmers: Words
    target_boils: Words
    accepted: dict[tuple[Authority, str], Accepted]
    """By authority and hazard."""


class States(NamedTuple):
    """What is said of a food beside its name."""

    ready: frozenset[str]
    small: frozenset[str]
    minced: frozenset[str]
    mixed: frozenset[str]
    no_whole_nuts: Words
    harmless: frozenset[str]


class Signs(NamedTuple):
    """What burns, scalds or spoils, in plain words and clauses."""

    hot_metal: re.Pattern[str]
    smokes: Words
    caramel: Words
    fat: Words
    closed: re.Pattern[str]
    preserves: frozenset[str]


class Purposes(NamedTuple):
    """What food is for."""

    steam: frozenset[str]
    frying: frozenset[str]
    dusting: frozenset[str]
    needed: frozenset[str]


class SafetyWords(NamedTuple):
    """All of them."""

    language: str
    cues: Cues
    states: States
    signs: Signs
    purposes: Purposes
    served_raw: frozenset[str]
    served_unfinished: frozenset[str]
    fresh: frozenset[str]
    """A tool that is not the one used before."""
    tags: dict[str, str]
    """The promise of the data that a tag makes."""


@cache
def safety_words(language: str) -> SafetyWords:
    """The words of a language, read once."""
    lists = word_lists(language, "safety")
    states, signs, purposes, served = lists["states"], lists["signs"], lists["purposes"], lists["served"]
    return SafetyWords(
        language=language,
        cues=_cues(language, lists),
        states=States(
            ready=frozenset(states["ready"]),
            small=frozenset(states["small"]),
            minced=frozenset(states["minced"]),
            mixed=frozenset(states["mixed"]),
            no_whole_nuts=states["no-whole-nuts"],
            harmless=frozenset(states["harmless"]),
        ),
        signs=Signs(
            hot_metal=_whole(signs["hot-metal"]),
            smokes=signs["smokes"],
            caramel=signs["caramel"],
            fat=signs["fat"],
            closed=_whole(signs["closed"]),
            preserves=frozenset(signs["preserves"]),
        ),
        purposes=Purposes(*(frozenset(purposes[name]) for name in Purposes._fields)),
        served_raw=frozenset(served["raw"]),
        served_unfinished=frozenset(served["unfinished"]),
        fresh=frozenset(lists["tools"]["fresh"]),
        tags={tag: promise for promise, tags in lists["tags"].items() for tag in tags},
    )


def _cues(language: str, lists: Lists) -> Cues:
    cues, targets = lists["cues"], lists["targets"]
    either = one_of(cues["or"])
    return Cues(
        either=_whole(cues["or"]),
        either_scale=pattern(rf"({degree_words(language).found.pattern})\s+{either}\s+(?=\d)", re.IGNORECASE),
        parts=pattern(rf",| {one_of(cues['and'])} |;"),
        elsewhere=_whole(cues["elsewhere"]),
        upper=_whole(cues["upper"]),
        at_least=_whole(cues["at-least"]),
        not_there=_whole(cues["not-there"]),
        stuffed=_whole(cues["stuffed"]),
        partly=_whole(cues["partly"]),
        denies=_whole(cues["denies"]),
        baked=_whole(cues["baked"]),
        browned=_whole(cues["browned"]),
        whites=_whole(cues["whites"]),
        boils=cues["boils"],
        target_simmers=targets["simmers"],
        target_boils=targets["boils"],
        accepted={
            (authority, hazard): Accepted(words[0], _whole(words))
            for authority in AUTHORITIES
            for hazard, words in lists.get(authority, {}).items()
        },
    )


def _whole(words: Words) -> re.Pattern[str]:
    return pattern(rf"\b{one_of(words)}\b")
