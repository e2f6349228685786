"""How temperatures are written: `74 °C`, `165 degrees Fahrenheit`, `140–150 F`, `200C`.

The signs and the letters of the scales are the same in every language; its words for them stand in
`grammar/words/<language>/degrees.toml`.
"""

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

SIGN = "[°º]"
_NUMBER = r"\d+(?:\.\d+)?"
_SPACE = r"[ \u00a0]?"
_ONE_SIGN: dict[str, Scale] = {"℃": "C", "℉": "F"}
_SIGNS = ("°", "º", *_ONE_SIGN)
_LETTERS: tuple[Scale, ...] = ("C", "F")
_LETTER = rf"(?-i:[{''.join(_LETTERS)}])\b"
_UNSIGNED = pattern(rf"(?<=\d){_SPACE}({_LETTER})")


class Degrees(NamedTuple):
    """A temperature as it is written: of a range both ends, else one twice."""

    lo: Fraction
    hi: Fraction
    scale: Scale


class Typed(NamedTuple):
    """A temperature by itself, as a command or a setting takes it: `24`, `−18 °C`, `75 f`. `scale` is None where it
    names none, `signed` whether it has the sign or the letter of one."""

    value: Fraction
    scale: Scale | None
    signed: bool


class DegreeWords(NamedTuple):
    """How a language writes temperatures."""

    found: re.Pattern[str]
    """One temperature, or a range."""
    sign: str
    """Of a regular expression: the sign, or a name for it."""
    between: str
    """… and what stands between the ends of a range, beside a dash."""
    names: tuple[str, ...]
    celsius: tuple[str, ...]
    fahrenheit: tuple[str, ...]

    @property
    def phrases(self) -> tuple[str, ...]:
        """What stands for the sign, with a scale or without."""
        scales = (*self.celsius, *self.fahrenheit)
        return (*(f"{name} {scale}" for name in self.names for scale in scales), *self.names)


@cache
def degree_words(language: str) -> DegreeWords:
    """The words of a language, read once."""
    said = word_lists(language, "degrees")["degrees"]
    scales, whole = one_of((*said["celsius"], *said["fahrenheit"])), f"[{''.join(_ONE_SIGN)}]"
    sign, between = rf"(?:{SIGN}|{one_of(said['names'])}\.?)", one_of(said["range"])
    return DegreeWords(
        pattern(
            rf"(?P<lo>{_NUMBER})(?:\s*(?:[-–]|{between})\s*(?P<hi>{_NUMBER}))?"
            rf"(?:\s*{sign}\s*(?P<scale>{scales})\b|\s*(?P<whole>{whole})|{_SPACE}(?P<letter>{_LETTER}))",
            re.IGNORECASE,
        ),
        sign,
        between,
        said["names"],
        said["celsius"],
        said["fahrenheit"],
    )


def may_name(text: str, language: str) -> bool:
    """Whether a temperature may stand in a text: few texts need the pattern, which takes long to compile."""
    if any([sign in text for sign in _SIGNS]):
        return True
    lower = text.lower()
    return any([name in lower for name in degree_words(language).names]) or _lacks_sign(text)


def _lacks_sign(text: str) -> bool:
    """Whether the letter of a scale may stand right behind a number."""
    ends = [at for at, letter in enumerate(text) if letter in _LETTERS]
    return any([text[:at].rstrip(" \u00a0")[-1:].isdigit() for at in ends])


def degrees_in(text: str, language: str) -> Iterator[Degrees]:
    """The temperatures in a text, in order."""
    words = degree_words(language)
    for found in words.found.finditer(text):
        lo = Fraction(found["lo"])
        said = found["scale"] or found["letter"] or _ONE_SIGN[found["whole"]]
        scale: Scale = "F" if said.lower() in words.fahrenheit else "C"
        yield Degrees(lo, Fraction(found["hi"]) if found["hi"] else lo, scale)


def typed_degrees(text: str) -> Typed | None:
    """A temperature that is all of a text, by its sign and the letter of its scale alone; None if it is none."""
    said = text.strip()
    minus = said[:1] in ("-", "−")
    letter = said[-1:].upper() if said[-1:] in ("C", "c", "F", "f") else ""
    rest = said[minus : len(said) - len(letter)].rstrip()
    sign = rest[-1:] in ("°", "º")
    number = rest[: len(rest) - sign].rstrip()
    parts = number.split(".")
    if len(parts) > 2 or any([not part.isdecimal() or len(part) > 3 for part in parts]):
        return None
    value = Fraction(number) * (-1 if minus else 1)
    return Typed(value, "F" if letter == "F" else "C" if letter else None, sign or bool(letter))


def with_sign(text: str) -> str:
    """Degrees that were typed without it get their sign: `200C` is `200 °C`."""
    return _UNSIGNED.sub(r" °\1", text) if _lacks_sign(text) else text
