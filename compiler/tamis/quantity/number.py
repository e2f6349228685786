"""Numbers as a cook writes them, read into exact fractions.

A recipe says "1 1/2", "1-1/2", "1½", "half" or "a dozen", and three thirds of a cup must make a cup, so
nothing here is ever a float. Two writings are refused because they have two readings: "1,5" and "1,000".
"""

from __future__ import annotations

from fractions import Fraction

from tamis.patterns import pattern
from tamis.quantity.number_words import number_words

# No kitchen counts further, and the arithmetic must not be made to.
MOST_DIGITS = 12
LONGEST = 36

VULGAR = {
    "½": (1, 2), "⅓": (1, 3), "⅔": (2, 3), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8),
    "⅞": (7, 8), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6), "⅐": (1, 7),
    "⅑": (1, 9), "⅒": (1, 10), "↉": (0, 3),
}  # fmt: skip

# What may part the whole from its fraction: "1 1/2", "1-1/2". A space may be one that does not break.
_APART = r"(?:[ \t\u00a0]+|-)"
_FRACTION = pattern(rf"(?:([0-9]+){_APART})?([0-9]+)[/⁄]([0-9]+)")
_VULGAR = pattern(rf"(?:([0-9]+){_APART}?)?([¼½¾⅐-⅞↉])")
_COMMA = pattern(r"([0-9]{1,3}(?:,[0-9]{3})+)|([0-9]+),([0-9]+)")


def is_kitchen_fraction(top: int, bottom: int) -> bool:
    """Whether kitchens write this fraction: halves, thirds, quarters, eighths, sixteenths, one of some others. Any
    other two numbers with a slash may be a range."""
    return top < bottom and (bottom in (2, 3, 4, 8, 16) or (top == 1 and bottom in (5, 6, 10, 12)))


def parse(text: str, language: str) -> Fraction | None:
    """The exact number that a text says, in figures or words; None if it says none, has too many digits or a wrong
    fraction."""
    number = figures(text)
    if number is not None or len(text) > LONGEST:
        return number
    words = number_words(language)
    number = words.parse(text)
    return number if number is not None else figures(words.without_joins(text))


def figures(text: str) -> Fraction | None:
    """The same of a number in figures alone."""
    text = text.strip()
    if len(text) > LONGEST or _digits(text) > MOST_DIGITS:
        return None
    for read in (decimal, _fraction, _vulgar):
        number = read(text)
        if number is not None:
            return number
    return None


def decimal(text: str) -> Fraction | None:
    """The number of plain figures, `420` or `0.5`; None for anything else."""
    if text.isdigit() and text.isascii():
        return Fraction(int(text)) if len(text) <= MOST_DIGITS else None
    digits = text.replace(".", "", 1)
    if len(digits) > MOST_DIGITS or not (digits.isdigit() and digits.isascii()):
        return None
    places = len(text) - text.index(".") - 1
    return Fraction(int(digits), 10**places) if places else None


def problem(text: str) -> str | None:
    """What is wrong with a number that a cook may well have meant, in words, or None.

    Says both readings of a comma, a fraction over nothing, a mixed number whose fraction is not less than
    one, and too many digits.
    """
    text = text.strip()
    if _digits(text) > MOST_DIGITS:
        return f"a number has at most {MOST_DIGITS} digits"
    comma = _COMMA.fullmatch(text)
    if comma:
        return _readings(text, thousands=comma[1] is not None)
    broken = _FRACTION.fullmatch(text)
    if broken and int(broken[3]) == 0:
        return f"“{text}” divides by nothing"
    if broken and broken[1] and int(broken[2]) >= int(broken[3]):
        return f"“{text}”: after a whole number the fraction is less than one"
    return None


def _digits(text: str) -> int:
    return sum(letter.isdecimal() for letter in text)


def _readings(text: str, thousands: bool) -> str:
    decimal = text.replace(",", ".")
    if not thousands:
        apart = text.replace(",", " and ")
        return f"“{text}” can be read as {decimal} or as {apart}: a decimal is written with a point"
    if text.count(",") > 1:
        return f"“{text}” is written without commas: {text.replace(',', '')}"
    plain = text.replace(",", "")
    return f"“{text}” can be read as {plain} or as {decimal}: write it without the comma, or with a point"


def _fraction(text: str) -> Fraction | None:
    found = _FRACTION.fullmatch(text)
    if not found:
        return None
    whole, top, bottom = found[1], int(found[2]), int(found[3])
    if bottom == 0 or (whole and top >= bottom):
        return None
    return int(whole or 0) + Fraction(top, bottom)


def _vulgar(text: str) -> Fraction | None:
    found = _VULGAR.fullmatch(text)
    if not found:
        return None
    return int(found[1] or 0) + Fraction(*VULGAR[found[2]])
