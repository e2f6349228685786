"""The quick reader of data files takes what TOML takes, or raises: it leaves nothing out."""

from __future__ import annotations

import tomllib

import pytest

from tamis.string_tables import tables

GOOD = """\
# words

[first]
plain = "one, two"   # why
"two words" = ""
it-has = "'quotes' = [and] # more"

[second]
"""


def test_what_it_takes() -> None:
    assert tables(GOOD) == tomllib.loads(GOOD) != {}


@pytest.mark.parametrize(
    "line",
    [
        "number = 3",
        'list = ["a", "b"]',
        "single = 'quotes'",
        'escaped = "a\\tb"',
        'open = "a',
        'after = "a" b',
        '"half = "a"',
        ' indented = "a"',
        'tight="a"',
        "[[many]]",
        "[open",
        "words",
        'plain = "again"',
        "[first]",
    ],
)
def test_what_it_cannot_take_raises(line: str) -> None:
    with pytest.raises(ValueError, match=r"line 6|twice"):
        tables(GOOD.replace("it-has = \"'quotes' = [and] # more\"", line))


def test_a_string_outside_a_table_raises() -> None:
    with pytest.raises(ValueError, match="before"):
        tables('plain = "one"\n')
