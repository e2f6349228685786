"""The words that the checks ask of a recipe, from `grammar/words/<language>/checks.toml`, which says what each list is.

A rule that looks for them makes its pattern from these lists, once for each language.
"""

from __future__ import annotations

from functools import cache

from tamis.reading.plain import phrases
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING, Any
from tamis.words import word_lists

if TYPE_CHECKING:
    from collections.abc import Mapping

Words = tuple[str, ...]


class Small(NamedTuple):
    """Small words around a number or a food."""

    between: Words
    toward: Words
    added: Words
    adverbs: Words
    off: Words
    by_eye: Words
    by_hand: Words


class Times(NamedTuple):
    """A time in plain words."""

    openers: Words


class Degrees(NamedTuple):
    """Degrees in plain words."""

    openers: Words
    turns: Words


class Food(NamedTuple):
    """What may stand before a food in plain words, and after it."""

    vague: Words
    before: Words
    joints: Words
    after: Words
    after_clause: Words
    next: Words


class Vessels(NamedTuple):
    """A vessel in plain words, and what says that the batch goes along; before what something is put to."""

    enters: Words
    opens: Words
    puts_in: Words
    of: Words
    some: Words
    puts_to: Words
    upon: Words
    goes_along: Words
    mixes: Words


class Lifted(NamedTuple):
    """Food that is lifted out in plain words."""

    verbs: Words
    outward: Words


class Boil(NamedTuple):
    """*To the boil* in plain words."""

    states: Words


class Keeping(NamedTuple):
    """How food is kept, heated again and thawed."""

    cold_places: Words
    units: Words
    counts: Words
    heats: Words
    reheats: Words
    thaws: Words
    rooms: Words


class Foods(NamedTuple):
    """What is said of a food."""

    soaking: Words
    reasons: Words
    alone: Words


class Twins(NamedTuple):
    """Foods that are sold fresh and dried under one name; `fresh` and `dried` side by side."""

    fresh: Words
    dried: Words
    only_dried: Words
    said_fresh: Words
    said_dried: Words


class Scaling(NamedTuple):
    """What is asked of a recipe that is scaled."""

    reducing: Words
    left: Words
    thick: Words
    thickest: Words
    airy: Words
    browns: Words
    smalls: Words
    larges: Words
    cold: Words
    catches: Words
    covers: Words
    handfuls: Words
    above: Words
    depths: Words
    rounds: Words
    squares: Words
    rectangles: Words
    singled: Words
    pieces: Words
    stacked: Words
    of_them: Words
    the_others: Words
    lots: Words
    yields: Words
    singly: Words
    into: Words
    turn: Words
    in_one: Words
    single: Words
    choice: Words
    doubled: Words
    likened: Words
    pulls: Words


class CheckWords(NamedTuple):
    """All of them, by what they are about; `cues` and `meanwhile` open a clause, whose brackets may be missing.
    `meals` gives the course and `made` the piece by their words in a header, `coated` the words for a tin with a food
    on it, by the food's id; `coats` those before the food's name."""

    small: Small
    times: Times
    degrees: Degrees
    food: Food
    vessels: Vessels
    lifted: Lifted
    boil: Boil
    keeping: Keeping
    foods: Foods
    coated: Mapping[str, Words]
    coats: Words
    twins: Twins
    scaling: Scaling
    meals: Mapping[str, str]
    made: Mapping[str, str]
    cues: Words
    meanwhile: Words


@cache
def check_words(language: str) -> CheckWords:
    lists, closed = word_lists(language, "checks"), word_lists(language, "clause")["closed"]
    kinds = (Small, Times, Degrees, Food, Vessels, Lifted, Boil, Keeping, Foods, Scaling)
    return CheckWords(
        **{kind.__name__.lower(): kind(**lists[kind.__name__.lower()]) for kind in kinds},  # type: ignore[arg-type]
        coated=lists["coated"],
        coats=lists["coats"]["openers"],
        twins=Twins(**{key.replace("-", "_"): words for key, words in lists["twins"].items()}),
        meals=_by_word(lists["meals"]),
        made=_by_word(lists["made"]),
        cues=closed["UNTIL"],
        meanwhile=closed["MEANWHILE"],
    )


def _by_word(said: Mapping[str, Words]) -> dict[str, str]:
    return {word: name for name, words in said.items() for word in words}


@cache
def word_set(language: str, name: str) -> frozenset[str]:
    """The words that begin what one of the lists holds, by its name: `lifted.verbs`."""
    found: Any = check_words(language)
    for part in name.split("."):
        found = getattr(found, part)
    return frozenset(phrases(found, language))


def keeps_cold(keeps: str, language: str) -> bool:
    """Whether what a header says of keeping tells of a cold place."""
    said = keeps.lower()
    return any(word in said for word in check_words(language).keeping.cold_places)
