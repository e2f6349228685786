"""The words by which a measure is asked for, from `grammar/words/<language>/convert.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.patterns import pattern
from tamis.quantity import degrees as written
from tamis.record import NamedTuple
from tamis.typed import Literal
from tamis.words import one_of, word_lists

Wanted = Literal["c", "f", "fan", "gas"]

_NUMBER = r"[−-]?[\d.¼½¾/ ]*[\d¼½¾]"


class DegreeWords(NamedTuple):
    """By which a temperature is asked."""

    degrees: re.Pattern[str]
    """Its groups are `low`, `high`, `sign`, `c`, `f` and `fan`: each may be missing but the first."""
    mark: re.Pattern[str]
    """A gas mark, whose number is the group."""
    oven: re.Pattern[str]
    """An oven's heat in a word, which is the group."""
    heats: dict[str, tuple[int, int]]
    """The ends of such heats in °F."""
    scales: dict[str, Wanted]


class PieceWords(NamedTuple):
    """By which pieces of a food are named."""

    articles: frozenset[str]
    piece: frozenset[str]
    sizes: frozenset[str]
    """These stand before the food, and take no plural."""


@cache
def degree_words(language: str) -> DegreeWords:
    lists = word_lists(language, "convert")
    said, degrees = lists["degrees"], written.degree_words(language)
    named: dict[Wanted, tuple[str, ...]] = {
        "c": degrees.celsius,
        "f": degrees.fahrenheit,
        "fan": lists["scales"]["fan"],
        "gas": lists["scales"]["gas"],
    }
    of = {scale: one_of(words) for scale, words in named.items()}
    heats = {word: (int(ends[0]), int(ends[-1])) for word, ends in lists["heats"].items()}
    scales: dict[str, Wanted] = {word: scale for scale, words in named.items() for word in words}
    return DegreeWords(
        degrees=pattern(
            rf"(?P<low>{_NUMBER})(?:(?: ?[–—-] ?| {degrees.between} )(?P<high>{_NUMBER}))? ?"
            rf"(?P<sign>{degrees.sign})? ?"
            rf"(?:(?P<c>{of['c']})|(?P<f>{of['f']}))?(?P<fan> {of['fan']})?",
            re.I,
        ),
        mark=pattern(rf"{of['gas']} ?([\d¼½ /]+)", re.I),
        oven=pattern(rf"(?:{one_of(said['articles'])} )?({one_of(heats)}) {one_of(said['oven'])}", re.I),
        heats=heats,
        scales=scales,
    )


@cache
def piece_words(language: str) -> PieceWords:
    return PieceWords(**{key: frozenset(words) for key, words in word_lists(language, "convert")["pieces"].items()})
