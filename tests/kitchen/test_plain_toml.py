"""A plain file of the house says what it says to the general reader of TOML."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.kitchen.plain_toml import read

ROOT = Path(__file__).parents[2]
PARTS = (
    *("[kitchen]", "[a-b]", "[a.b]", "[[a]]", "[ a ]", '["a"]', "a", "b", "-", "1", "a.b", '"a"', " = ", "=", "\n"),
    *('"oat # and rye"', "'x'", '"\\n"', '"""', '"', "'", "true", "false", "nan", "0", "-7", "+1", "01", "1_0", "0.5"),
    *("1e3", "1.", "2026-10-18", "[", "]", "{", "}", ",", ", ", " ", "\t", "# a remark", "\r\n", "\r", "\0", "é", "£"),
)
LINES = st.sampled_from(PARTS) | st.sampled_from(
    ["[kitchen]\n", "a = 1\n", "b = [1, 'x',]\n", "c = { a = 1, b = 2.5 } # said\n", "d = []\n", "a = {}\n", "\n"]
)


def by_the_other(text: str) -> object:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        return error


@given(st.lists(LINES, max_size=14).map("".join))
def test_what_is_read_plainly_is_what_the_other_reads(text: str) -> None:
    said = read(text)
    assert said is None or said == by_the_other(text)


@pytest.mark.parametrize(
    "text",
    [
        *((ROOT / name).read_text("utf-8") for name in ("recipes/kitchen.toml", "recipes/goods.toml")),
        "\"a.b\" = 1\n['c'] # d\n'a.b' = {\"e f\" = 2}\n",
        *re.findall(r"^```toml \S+\n(.*?)^```$", (ROOT / "grammar/reference.md").read_text("utf-8"), re.M | re.S),
        "a = { b = 1, c = 'd' }\r\ne = [1, 2.50, true,]\r\n",
        "",
    ],
)
def test_the_files_that_houses_write_are_plain(text: str) -> None:
    assert read(text) == tomllib.loads(text)


@pytest.mark.parametrize(
    "text",
    [
        *(
            "[a]\n[a]\n",
            "a = 1\na = 2\n",
            "a = {b = 1, b = 2}",
            "a.b = 1",
            '"a" = 1\na = 2',
            '[a."b"]',
            'a = "\\u0041"',
            "a",
        ),
        *("a = 2026-10-18", "a = [[1]]", "a = [1,\n2]", "a = 01", "a = 1e3", "a = ", "a = \0", f"a = [1,{' ' * 600}"),
    ],
)
def test_any_other_text_is_left_to_the_other(text: str) -> None:
    assert read(text) is None
