"""The words that the model asks of a recipe, from `grammar/words/<language>/model.toml`, which says what each is."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from tamis.patterns import Whole, pattern
from tamis.quantity.nouns import nouns
from tamis.reading.plain import Phrases, phrases
from tamis.reading.prose import prose_words
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists

Words = frozenset[str]
_MOST_KEPT = 20_000


class ModelWords(NamedTuple):
    """The words of one language."""

    cold: Words
    hot: Words
    frozen: Words
    joints: Words
    of: Words
    more: Words
    possessive: re.Pattern[str]
    separated: tuple[str, ...]
    only: frozenset[str]
    aside: tuple[str, ...]
    flour: Words
    batch: Words
    percent_in: re.Pattern[str]
    ordinals: Words
    others: Words
    back: Words
    describing: Words
    kept: re.Pattern[str]
    cooking: Words
    using: Words
    thrown: Words
    itself: Words
    rests: Words
    own_parts: dict[str, Words]
    part_words: Words
    off: Phrases
    left: Whole
    by: Words
    to: Words
    singly: Phrases
    gradual: Phrases
    few: Phrases
    brief: Phrases
    colours: tuple[str, ...]
    """Beginnings of words."""
    soon: Words
    late: Words
    pacing: Words
    them: Words
    into: Words
    small: Words
    pieces: Words
    any_piece: str
    gathered: Words
    cuts: dict[str, Words]
    fine: Words
    finest: Words
    very: Words
    made_of: dict[str, Words]
    made_without: dict[str, Words]
    liquids: Words
    takes: Words
    roles: dict[str, str]
    under: Words
    taps: Words
    through: Words


@cache
def model_words(language: str) -> ModelWords:
    """The words of a language, read once."""
    lists = word_lists(language, "model")
    names, foods, percents = lists["names"], lists["foods"], lists["percents"]
    paces = [phrase for kind in ("singly", "gradual", "few", "brief") for phrase in lists["paces"][kind]]
    return ModelWords(
        cold=frozenset(lists["liquids"]["cold"]),
        hot=frozenset(lists["liquids"]["hot"]),
        frozen=frozenset(lists["liquids"]["frozen"]),
        joints=frozenset(names["and"]),
        of=frozenset(names["of"]),
        more=frozenset(names["more"]),
        possessive=pattern(rf"{one_of(names['possessive'])}\Z"),
        separated=foods["separated"],
        only=frozenset(word for phrase in foods["only"] for word in phrase.split()),
        aside=tuple(f"{word} " for word in foods["aside"]),
        flour=frozenset(percents["flour"]),
        batch=frozenset(percents["batch"]),
        percent_in=pattern(rf" {one_of(percents['in'])}\Z"),
        ordinals=frozenset(lists["several"]["ordinals"]),
        others=frozenset(lists["several"]["others"]),
        back=frozenset(lists["several"]["back"]),
        describing=frozenset(lists["several"]["ordinals"]) | frozenset(names["describing"]),
        kept=pattern(rf"\b({one_of(lists['kept']['openers'])})\s*\Z", re.IGNORECASE),
        cooking=frozenset(lists["moments"]["cooking"]),
        using=frozenset(lists["moments"]["using"]),
        thrown=frozenset(lists["lifted"]["thrown"]),
        itself=frozenset(lists["lifted"]["itself"]),
        rests=frozenset(lists["lifted"]["rests"]),
        own_parts={kind: frozenset(parts) for kind, parts in lists["own-parts"].items()},
        part_words=frozenset(part for parts in lists["own-parts"].values() for part in parts),
        off=phrases(names["off"], language),
        left=Whole(word_lists(language, "scaling")["clauses"]["left"]),
        by=frozenset(lists["reduced"]["by"]),
        to=frozenset(lists["reduced"]["to"]),
        singly=phrases(lists["paces"]["singly"], language),
        gradual=phrases(lists["paces"]["gradual"], language),
        few=phrases(lists["paces"]["few"], language),
        brief=phrases(lists["paces"]["brief"], language),
        colours=tuple(lists["paces"]["colours"]),
        soon=frozenset(lists["paces"]["soon"]),
        late=frozenset(lists["paces"]["late"]),
        pacing=prose_words(language).each.union(phrase.rpartition(" ")[2] for phrase in paces),  # the last words of all
        them=frozenset(lists["paces"]["them"]),
        into=frozenset(lists["paces"]["into"]),
        small=frozenset(lists["paces"]["small"]),
        pieces=frozenset(lists["pieces"]["nouns"]),
        any_piece=lists["pieces"]["any"][0],
        gathered=frozenset(lists["pieces"]["gathered"]),
        cuts={verb: frozenset(nouns) for verb, nouns in lists["cuts"].items()},
        fine=frozenset(lists["fineness"]["fine"]),
        finest=frozenset(lists["fineness"]["finest"]),
        very=frozenset(lists["fineness"]["very"]),
        made_of={name: frozenset(roles) for name, roles in lists["made-of"].items()},
        made_without={name: frozenset(roles) for name, roles in lists["made-without"].items()},
        liquids=frozenset(lists["media"]["liquids"]),
        takes=frozenset(lists["media"]["takes"]),
        roles={word: role for role, words in lists["roles"].items() for word in words},
        under=frozenset(lists["rinsing"]["under"]),
        taps=frozenset(lists["rinsing"]["taps"]),
        through=frozenset(lists["sieving"]["through"]),
    )


@lru_cache(_MOST_KEPT)
def plain(name: str, language: str) -> tuple[str, ...]:
    """A name as look-ups compare it: lower case, its last word in the singular, no article."""
    rules = nouns(language)
    words = name.lower().replace("’", "'").replace(",", " ").split()
    return rules.key(words[1:] if len(words) > 1 and words[0] in rules.articles else words)


def vessel_noun(name: str, language: str) -> str:
    """What a vessel is called for short: *pan* for a frying pan."""
    return nouns(language).singular(name.split()[-1])


def piece_called(noun: str, language: str) -> str:
    """What one of the pieces is called into which something was divided."""
    return nouns(language).singular(noun) if noun else model_words(language).any_piece


def before_joint(words: tuple[str, ...], language: str) -> tuple[str, ...]:
    """The first of several foods in one name: `flour` of `flour and butter`; () where there is one."""
    joints = model_words(language).joints
    return next((words[:at] for at, word in enumerate(words) if word in joints), ())
