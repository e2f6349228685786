"""Temperatures in a text: `74 °C`, `165 degrees Fahrenheit`, `140–150 F`."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.typed import Literal
from tamis.words import one_of, word_lists

Scale = Literal["C", "F"]

_NUMBER = r"\d+(?:\.\d+)?"


class Degrees(NamedTuple):
    """A temperature as it is written: of a range both ends, else one twice."""

    lo: Fraction
    hi: Fraction
    scale: Scale


class DegreeWords(NamedTuple):
    """How a language writes temperatures: `found` is one of them, `names` stand for the sign before one of `scales`."""

    found: re.Pattern[str]
    names: tuple[str, ...]
    scales: tuple[str, ...]
    fahrenheit: frozenset[str]

    @property
    def phrases(self) -> tuple[str, ...]:
        """What stands for the sign, with a scale or without."""
        return (*(f"{name} {scale}" for name in self.names for scale in self.scales), *self.names)


@cache
def degree_words(language: str) -> DegreeWords:
    """The words of a language, read once."""
    said = word_lists(language, "degrees")["degrees"]
    scales = (*said["celsius"], *said["fahrenheit"])
    scale = rf"(?P<scale>{one_of(scales)})\b"
    sign = rf"(?:°|º|{one_of(said['names'])}\.?)"
    return DegreeWords(
        pattern(
            rf"(?P<lo>{_NUMBER})(?:\s*(?:[-–]|{one_of(said['range'])})\s*(?P<hi>{_NUMBER}))?\s*{sign}\s*{scale}"
            rf"|(?P<bare>{_NUMBER}) ?(?P<letter>(?-i:[CF]))\b",
            re.IGNORECASE,
        ),
        said["names"],
        scales,
        frozenset(said["fahrenheit"]),
    )


def degrees_in(text: str, language: str) -> Iterator[Degrees]:
    """The temperatures in a text, in order."""
    words = degree_words(language)
    for found in words.found.finditer(text):
        lo = Fraction(found["lo"] or found["bare"])
        scale = (found["scale"] or found["letter"]).lower()
        yield Degrees(lo, Fraction(found["hi"]) if found["hi"] else lo, "F" if scale in words.fahrenheit else "C")
