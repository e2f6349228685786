"""The core temperature that a cue or a target asks for, if it asks for one.

A thermometer reads many things: "until the oil is at 180 °C", "until below 20 °C", "until golden or 74 °C inside"
name a temperature and yet promise nothing about the middle of the chicken. Only a part of a cue that must hold, and
that speaks of the food itself, counts; of two scales that disagree, the colder.
"""

from __future__ import annotations

from fractions import Fraction

from tamis.quantity.degrees import degree_words, degrees_in, may_name
from tamis.quantity.temperature import c_from_f
from tamis.safety.data import rules
from tamis.safety.words import Cues, safety_words

_HOTTEST = Fraction(110)
"""Above this it is oil or sugar, not the middle of food that holds water (common practice)."""


def core_temperature(text: str, language: str) -> Fraction | None:
    """Exact °C that the food itself must reach for this cue to hold; None if it promises none. Of two places the
    colder."""
    return min((core for _, core in cores(text, language)), default=None)


def cores(text: str, language: str) -> tuple[tuple[str, Fraction], ...]:
    """The same for each part of a cue, with its words: *63 °C in the fish and 74 °C in the stuffing*."""
    if not may_name(text, language) or degree_words(language).found.search(text) is None:
        return ()
    cues = safety_words(language).cues
    if cues.either.search(text.lower()) and cues.either.search(cues.either_scale.sub(r"\1 ", text).lower()):
        return ()
    found = [(part.lower(), _of(part, cues, language)) for part in cues.parts.split(text)]
    return tuple((part, value) for part, value in found if value is not None and value <= _HOTTEST)


def temperatures(text: str, language: str) -> list[Fraction]:
    """All the temperatures in a text, exact °C, printed pairs as they are meant; of a range the lower end."""
    if not may_name(text, language):
        return []
    printed = rules().printed
    return [
        c_from_f(degrees.lo) if degrees.scale == "F" else printed.get(degrees.lo, degrees.lo)
        for degrees in degrees_in(text, language)
    ]


def _of(part: str, cues: Cues, language: str) -> Fraction | None:
    values = temperatures(part, language)
    if not values:
        return None
    words = cues.at_least.without(part.lower())
    if any(words_of.search(words) for words_of in (cues.elsewhere, cues.upper, cues.not_there)):
        return None
    near = max(values) - min(values) <= 1
    return max(values) if near else min(values)
