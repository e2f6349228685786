"""The words that show what happens to raw food, from `grammar/words/<language>/safety.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.kitchen.settings import AUTHORITIES, Authority
from tamis.patterns import Whole, pattern
from tamis.quantity.degrees import degree_words
from tamis.record import NamedTuple
from tamis.words import Lists, one_of, word_lists

Words = tuple[str, ...]


class Accepted(NamedTuple):
    """What an authority accepts instead of a temperature: a word for it, and what finds any."""

    example: str
    found: Whole


class Cues(NamedTuple):
    """What a cue or a target says. Words are looked for whole, in a text in small letters."""

    either: Whole
    """Between two cues of which one is enough."""
    either_scale: re.Pattern[str]
    """… or one temperature in two scales: "74 °C or 165 °F"."""
    parts: re.Pattern[str]
    """Between two cues that must both hold."""
    elsewhere: Whole
    upper: Whole
    at_least: Whole
    not_there: Whole
    stuffed: Whole
    partly: Whole
    denies: Whole
    baked: Whole
    browned: Whole
    whites: Whole
    boils: Words
    tepid: Whole
    target_simmers: Words
    target_boils: Words
    accepted: dict[tuple[Authority, str], Accepted]
    """By authority and hazard."""


class States(NamedTuple):
    """What is said of a food beside its name."""

    cooked: frozenset[str]
    ready: frozenset[str]
    """… and all else that is raw no longer."""
    packed: Words
    small: frozenset[str]
    fine: frozenset[str]
    minced: frozenset[str]
    mixed: frozenset[str]
    no_whole_nuts: Words
    harmless: frozenset[str]
    cut: frozenset[str]
    at_the_boil: frozenset[str]
    lies_in: frozenset[str]


class Signs(NamedTuple):
    """What burns, scalds or spoils, in plain words and clauses."""

    hot_metal: Whole
    smokes: Words
    caramel: Words
    fat: Words
    closed: Whole
    cold: Whole
    mills: Whole
    preserves: frozenset[str]


class Purposes(NamedTuple):
    """What food is for."""

    steam: frozenset[str]
    frying: frozenset[str]
    dusting: frozenset[str]
    needed: frozenset[str]
    covering: frozenset[str]
    beside: frozenset[str]


class Claims(NamedTuple):
    """How tags end, begin or are called that promise something, and which do `but` look so."""

    ends: tuple[str, ...]
    begins: tuple[str, ...]
    but: tuple[str, ...]
    also: tuple[str, ...]


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
    claims: Claims
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
            cooked=frozenset(states["cooked"]),
            ready=frozenset((*states["cooked"], *states["ready"])),
            packed=states["packed"],
            small=frozenset(states["small"]),
            fine=frozenset(states["fine"]),
            minced=frozenset(states["minced"]),
            mixed=frozenset(states["mixed"]),
            no_whole_nuts=states["no-whole-nuts"],
            harmless=frozenset(states["harmless"]),
            cut=frozenset(states["cut"]),
            at_the_boil=frozenset(states["at-the-boil"]),
            lies_in=frozenset(states["lies-in"]),
        ),
        signs=Signs(
            hot_metal=Whole(signs["hot-metal"]),
            smokes=signs["smokes"],
            caramel=signs["caramel"],
            fat=signs["fat"],
            closed=Whole(signs["closed"]),
            cold=Whole(signs["cold"]),
            mills=Whole(signs["mills"]),
            preserves=frozenset(signs["preserves"]),
        ),
        purposes=Purposes(*(frozenset(purposes[name]) for name in Purposes._fields)),
        served_raw=frozenset(served["raw"]),
        served_unfinished=frozenset(served["unfinished"]),
        fresh=frozenset(lists["tools"]["fresh"]),
        tags={tag: promise for promise, tags in lists["tags"].items() for tag in tags},
        claims=Claims(**lists["claims"]),
    )


def _cues(language: str, lists: Lists) -> Cues:
    cues, targets = lists["cues"], lists["targets"]
    either = one_of(cues["or"])
    return Cues(
        either=Whole(cues["or"]),
        either_scale=pattern(rf"({degree_words(language).found.pattern})\s+{either}\s+(?=\d)", re.IGNORECASE),
        parts=pattern(rf",| {one_of(cues['and'])} |;"),
        elsewhere=Whole(cues["elsewhere"]),
        upper=Whole(cues["upper"]),
        at_least=Whole(cues["at-least"]),
        not_there=Whole(cues["not-there"]),
        stuffed=Whole(cues["stuffed"]),
        partly=Whole(cues["partly"]),
        denies=Whole(cues["denies"]),
        baked=Whole(cues["baked"]),
        browned=Whole(cues["browned"]),
        whites=Whole(cues["whites"]),
        boils=cues["boils"],
        tepid=Whole(cues["tepid"]),
        target_simmers=targets["simmers"],
        target_boils=targets["boils"],
        accepted={
            (authority, hazard): Accepted(words[0], Whole(words))
            for authority in AUTHORITIES
            for hazard, words in lists.get(authority, {}).items()
        },
    )
