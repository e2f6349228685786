"""The core temperature that a cue or a target asks for, if it asks for one.

A thermometer reads many things: "until the oil is at 180 °C", "until below 20 °C", "until golden or 74 °C inside"
name a temperature and yet promise nothing about the middle of the chicken. Only a part of a cue that must hold, and
that speaks of the food itself, counts; of two scales that disagree, the colder.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from tamis.patterns import pattern
from tamis.quantity.temperature import c_from_f
from tamis.safety.data import rules

_DEGREES = pattern(
    r"(?P<lo>\d+(?:\.\d+)?)(?:\s*(?:[-–]|to)\s*\d+(?:\.\d+)?)?\s*(?:°|º|deg(?:rees?)?\.?)\s*(?P<scale>[CF])"
    r"|(?P<bare>\d+(?:\.\d+)?) ?(?P<plain>(?-i:[CF]))\b"
    r"|(?P<lo2>\d+(?:\.\d+)?)\s*(?:°|º|degrees?)\s*(?P<long>celsius|fahrenheit|centigrade)",
    re.IGNORECASE,
)
_TWO_SCALES = pattern(r"(°\s*[cf])\s+or\s+(?=\d)")
_OR = pattern(r"\bor\b")
_PARTS = pattern(r",| and |;")
_DIGIT = pattern(r"\d")
_LEAST = pattern(r"\b(no|not) (less|lower|cooler) than\b")
_HOTTEST = Fraction(110)
"""Above this it is oil or sugar, not the middle of food that holds water (common practice)."""


def core_temperature(text: str) -> Fraction | None:
    """Exact °C that the food itself must reach for this cue to hold; None if it promises none."""
    if not _DIGIT.search(text):
        return None
    if _OR.search(_without_degrees(text.lower())):
        return None
    found = [_of(part) for part in _PARTS.split(text)]
    stated = [value for value in found if value is not None and value <= _HOTTEST]
    return max(stated) if stated else None


def temperatures(text: str) -> list[Fraction]:
    """All the temperatures in a text, exact °C, printed pairs as they are meant; of a range the lower end."""
    values: list[Fraction] = []
    if not _DIGIT.search(text):
        return values
    for found in _DEGREES.finditer(text):
        number = Fraction(found["lo"] or found["bare"] or found["lo2"])
        scale = (found["scale"] or found["plain"] or found["long"])[0].upper()
        values.append(c_from_f(number) if scale == "F" else rules().printed.get(number, number))
    return values


def _of(part: str) -> Fraction | None:
    values = temperatures(part)
    if not values:
        return None
    words = _LEAST.sub("at least", part.lower())
    if any(_says(words, which) for which in ("elsewhere", "upper", "not_there")):
        return None
    near = max(values) - min(values) <= 1
    return max(values) if near else min(values)


@cache
def _one_of(which: str) -> re.Pattern[str]:
    """The words of a list of the data, in the singular or the plural."""
    words = "|".join(re.escape(word) for word in rules().words[which])
    return pattern(rf"\b(?:{words})s?\b" if words else "(?!)")


def _says(text: str, which: str) -> bool:
    return _one_of(which).search(text) is not None


def says(text: str, which: str) -> bool:
    """Whether a text has one of the words of a list of the data."""
    return _says(text.lower(), which)


def _without_degrees(text: str) -> str:
    """The cue without `or` between two scales of one temperature: "74 °C or 165 °F"."""
    return _TWO_SCALES.sub(r"\1 ", text)
