"""Text in lines for a terminal."""

from __future__ import annotations

from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

_FRACTIONS = frozenset("⅛¼⅓⅜½⅝⅔¾⅞")
_SIGNS = frozenset("%°")
_BLANKS = frozenset("\t\n\v\f\r")


def wrap(text: str, width: int, rest: str = "", first: str = "") -> list[str]:
    """Lines of at most a width, where words allow: `first` begins the first of them, `rest` the others.

    A number stays beside its unit, also one with a hyphen.
    """
    if len(first) + len(text) <= width:
        return [first + text]
    words = _with_units(text.split(" "))
    held = " ".join(words)
    room = width - max(len(first), len(rest))
    if all(0 < len(word) <= room for word in words) and _BLANKS.isdisjoint(held):
        lines = _filled(words, width, first, rest)
    else:
        from textwrap import wrap as cut  # which takes longer to import than most tables to print

        lines = cut(held, width, initial_indent=first, subsequent_indent=rest, break_on_hyphens=False)
    return [line.replace("\u00a0", " ") for line in lines]


def _with_units(words: list[str]) -> list[str]:
    """Words, those that may be units as one with the number before them."""
    held: list[str] = []
    for word in words:
        number = held[-1][-1:] if held else ""
        if ("a" <= word[:1] <= "z" or word[:1] in _SIGNS) and (number.isdecimal() or number in _FRACTIONS):
            held[-1] += f"\u00a0{word}"
        else:
            held.append(word)
    return held


def _filled(words: list[str], width: int, first: str, rest: str) -> list[str]:
    """Words in lines, none of which is longer than a line."""
    lines = [first + words[0]]
    for word in words[1:]:
        if len(lines[-1]) + 1 + len(word) <= width:
            lines[-1] += f" {word}"
        else:
            lines.append(rest + word)
    return lines


def series(words: Sequence[str]) -> str:
    """Words in a row, the last behind *and*: `flour, water and salt`."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))
