"""What a market list asks of a recipe's words and foods, from `grammar/words/<language>/market.toml`."""

from __future__ import annotations

import re
from functools import cache

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists, word_tables


class MarketWords(NamedTuple):
    """By which it is known what must be bought."""

    tap: frozenset[str]
    """The merchant of what nobody buys."""
    fresh: frozenset[str]
    tinned: str
    """The merchant who sells by the tin and the jar what those sell fresh."""
    bought: frozenset[str]
    """States in which food is bought."""
    cooked: frozenset[str]
    """States that make another food of pulses, whoever cooked them."""
    ready: frozenset[str]
    """States in which food is sold without what is thrown away."""
    prepared: frozenset[str]
    """States that say: the weight is what is left after the work."""
    unpeeled: re.Pattern[str]
    """What is cooked in its skin loses none of it."""
    wholes: dict[str, str]
    """What a part is bought as, by their ids, unless the house says how the part itself is sold."""


@cache
def market_words(language: str) -> MarketWords:
    lists = word_lists(language, "market")
    merchants, states = lists["merchants"], {key: frozenset(words) for key, words in lists["states"].items()}
    return MarketWords(
        tap=frozenset(merchants["tap"]),
        fresh=frozenset(merchants["fresh"]),
        tinned=merchants["tinned"][0],
        unpeeled=pattern(rf"\b{one_of(lists['preparations']['unpeeled'])}\b"),
        wholes=word_tables(language, "market")["wholes"],
        **states,
    )
