"""The house's files as most of them are written, read without the general reader of TOML.

To import that one takes as long as to read a recipe. This knows tables with a plain name, and on the line of its key a
string without escapes, a number, a truth, or a flat list or table of these. For any other text it gives None, and the
general reader reads it, or tells what is wrong with it.
"""

from __future__ import annotations

import re

from tamis.patterns import pattern
from tamis.typed import Any, Literal

Truth = Literal["true", "false"]
TRUTHS: dict[Truth, bool] = {"true": True, "false": False}

_QUOTED = r""" "[^"\\\x00-\x08\x0a-\x1f\x7f]*" | '[^'\x00-\x08\x0a-\x1f\x7f]*' """
_KEY = rf"(?:[A-Za-z0-9_-]+ | {_QUOTED})"
_VALUE = rf"(?:{_QUOTED} | {'|'.join(TRUTHS)} | [+-]?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?)"
_PAIR = rf"{_KEY}[ \t]*=[ \t]*{_VALUE}"
_COMMA = r"[ \t]*,[ \t]*"
_LINE = pattern(
    rf"""[ \t]*(?:
        \[[ \t]*(?P<table>{_KEY})[ \t]*\]
      | (?P<key>{_KEY})[ \t]*=[ \t]*(?:
            (?P<value>{_VALUE})
          | \[[ \t]*(?P<list>(?:{_VALUE}(?:{_COMMA}{_VALUE})*(?:{_COMMA})?)?)[ \t]*\]
          | \{{[ \t]*(?P<pairs>(?:{_PAIR}(?:{_COMMA}{_PAIR})*)?)[ \t]*\}}
        )
    )?[ \t]*(?:\#[^\x00-\x08\x0a-\x1f\x7f]*)?""",
    re.VERBOSE,
)
_VALUES = pattern(_VALUE, re.VERBOSE)
_PAIRS = pattern(rf"({_KEY})[ \t]*=[ \t]*({_VALUE})", re.VERBOSE)


_LONGEST = 500
"""Longer lines are left to the other reader, so that no pattern has to go over one again and again."""


def read(text: str) -> dict[str, Any] | None:
    """The tables of a text; None where it is not plain."""
    said: dict[str, Any] = {}
    table = said
    for line in text.replace("\r\n", "\n").split("\n"):
        found = _LINE.fullmatch(line) if len(line) <= _LONGEST else None
        if found is None:
            return None
        if found["table"]:
            head = _name(found["table"])
            if head in said:
                return None
            table = said[head] = {}
        elif found["key"]:
            key, value = _name(found["key"]), _value(found)
            if key in table or value is None:
                return None
            table[key] = value
    return said


def _value(found: re.Match[str]) -> Any:
    if found["value"]:
        return _simple(found["value"])
    if found["list"] is not None:
        return [_simple(value) for value in _VALUES.findall(found["list"])]
    pairs = _PAIRS.findall(found["pairs"])
    said = {_name(key): _simple(value) for key, value in pairs}
    return said if len(said) == len(pairs) else None


def _name(key: str) -> str:
    return key[1:-1] if key[0] in "\"'" else key


def _simple(text: Any) -> Any:
    if text[0] in "\"'":
        return text[1:-1]
    if text in TRUTHS:
        return TRUTHS[text]
    return float(text) if "." in text else int(text)
