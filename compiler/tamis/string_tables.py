"""The data files that every check reads: tables of strings.

The general reader of TOML takes ten times as long as all else that is done with them, and each of these files is kept
to what one pattern can read: tables with a plain name, and a string in double quotes on the line of its key. Anything
else is a fault of a file that ships with the compiler, and raises. A test holds the two readers together.
"""

from __future__ import annotations

import re
from fractions import Fraction

from tamis.patterns import pattern

_LINE = pattern(r"""^(?:\[([\w-]+)\]|(?:([\w-]+)|"([^"\\\n]+)") = "([^"\\\n]*)")(?: *#.*)?$""", re.MULTILINE)


def tables(text: str) -> dict[str, dict[str, str]]:
    """The tables of a TOML file that holds nothing but strings, each on its line."""
    lines = _LINE.findall(text)
    if len(lines) != sum([line[:1] not in "#" for line in text.split("\n")]):
        raise ValueError(f"neither a table nor a string: {_unread(text)}")
    found: dict[str, dict[str, str]] = {}
    table: dict[str, str] = {}
    for head, plain, quoted, value in lines:
        if head:
            table = found[head] = {}
        else:
            table[plain or quoted] = value
    if len(found) + sum(map(len, found.values())) != len(lines):
        raise ValueError("a table or a key stands twice, or a key before all tables")
    return found


def exact(text: str) -> Fraction:
    """The number that a string is: `3`, `0.25`, `1/2`; any other as `Fraction` reads it, which takes four times as
    long."""
    whole, point, part = text.partition(".")
    if point and whole.isdigit() and part.isdigit():
        return Fraction(int(whole + part), 10 ** len(part))
    top, stroke, bottom = text.partition("/")
    if stroke and top.isdigit() and bottom.isdigit():
        return Fraction(int(top), int(bottom))
    return Fraction(int(text) if text.isdigit() else text)


def _unread(text: str) -> str:
    """The first line that is no table and no string, with its number."""
    lines = enumerate(text.split("\n"), 1)
    return next(f"line {at}, {line}" for at, line in lines if line[:1] not in "#" and not _LINE.match(line))
