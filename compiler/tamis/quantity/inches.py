"""Lengths in inches with their centimetres beside them, for a kitchen whose tins are marked in those."""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from tamis.patterns import pattern
from tamis.record import NamedTuple
from tamis.words import one_of, word_lists

INCH = Fraction(254, 10)
"""Millimetres; NIST Handbook 44, Appendix C: exactly 25.4."""

_NUMBER = r"\d+(?:[ -]\d/\d+|\.\d+|/\d+|[¼-¾⅓-⅞])?|[¼-¾⅓-⅞]"
_DASHES = ("–", "-")
_WHOLE_CM = 100
_IN_MM = 20


def with_centimetres(text: str, language: str) -> str:
    """`a 9-inch tin` as `a 9-inch (23 cm) tin`: millimetres below two centimetres, halves of a centimetre below ten.

    Where a round bracket follows, the cook has said it.
    """
    words = _words(language)
    if not any(name in text for name in words.names):
        return text
    return words.lengths.sub(lambda found: _beside(found, words), text)


class _Words(NamedTuple):
    """`lengths` finds one length in inches, or two with what stands between them."""

    names: tuple[str, ...]
    through: tuple[str, ...]
    lengths: re.Pattern[str]


@cache
def _words(language: str) -> _Words:
    words = word_lists(language, "units")["inches"]
    between = one_of((*words["by"], *words["range"], *_DASHES, "×"))
    inches = one_of(words["names"])
    lengths = rf"(?<![\d/.,])({_NUMBER})(?:(\s?{between}\s?)({_NUMBER}))?[ \u00a0-]?{inches}\b(?!\s*\()"
    return _Words(words["names"], (*words["range"], *_DASHES), pattern(lengths))


def _beside(found: re.Match[str], words: _Words) -> str:
    ends = [_value(said) * INCH for said in (found[1], found[3]) if said]
    small = min(ends) < _IN_MM
    said = [str(round(end)) if small else _centimetres(end) for end in ends]
    joint = "–" if (found[2] or "").strip() in words.through else " × "
    return f"{found[0]} ({joint.join(said)} {'mm' if small else 'cm'})"


def _centimetres(mm: Fraction) -> str:
    if mm >= _WHOLE_CM:
        return str(round(mm / 10))
    halves = round(mm / 5)
    return f"{halves // 2}{'.5' if halves % 2 else ''}"


def _value(said: str) -> Fraction:
    """The number of `1 1/2`, `1½`, `3/4` or `0.5`."""
    whole, _, part = said.replace("-", " ").partition(" ")
    if not whole[-1].isascii():
        from unicodedata import numeric  # few recipes have inches

        return Fraction(whole[:-1] or 0) + Fraction(numeric(whole[-1])).limit_denominator(8)
    return Fraction(whole) + (Fraction(part) if part else 0)
