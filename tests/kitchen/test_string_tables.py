"""The quick reader of data files takes what TOML takes, or raises: it leaves nothing out."""

from __future__ import annotations

import tomllib
from fractions import Fraction

import pytest

from tamis.string_tables import exact, tables

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


@pytest.mark.parametrize(
    "text", ["0", "3", "007", "0.25", "12.50", "1/2", "10/4", "-18", "-1/3", "1e3", ".5", "5.", " 7 ", "1_000", "٣"]
)
def test_a_number_is_what_the_library_reads(text: str) -> None:
    assert exact(text) == Fraction(text)


@pytest.mark.parametrize("text", ["", "½", "²", "1/0", "1/", "/2", "1.2.3", "1/2/3", "a", "1 /2", "0.5/2"])
def test_what_is_no_number_raises(text: str) -> None:
    for read in (exact, Fraction):
        with pytest.raises((ValueError, ZeroDivisionError)):
            read(text)
