"""The data files that every check reads: tables of strings.

The general reader of TOML takes ten times as long as all else that is done with them, and each of these files is kept
to what one pattern can read: tables with a plain name, and a string in double quotes on the line of its key. A test
holds the two readers together.
"""

from __future__ import annotations

import re

_LINE = re.compile(r'^(?:\[([\w-]+)\]|"?([\w\'’ -]+?)"? = "([^"]*)")', re.MULTILINE)


def tables(text: str) -> dict[str, dict[str, str]]:
    """The tables of a TOML file that holds nothing but strings, each on its line."""
    found: dict[str, dict[str, str]] = {}
    table: dict[str, str] = {}
    for head, key, value in _LINE.findall(text):
        if head:
            table = found.setdefault(head, {})
        else:
            table[key] = value
    return found
