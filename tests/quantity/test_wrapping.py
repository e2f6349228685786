"""Text in lines: what stays together, and where each line begins."""

from __future__ import annotations

import re
import textwrap

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tamis.quantity.wrapping import wrap


@pytest.mark.parametrize(
    ("text", "width", "lines"),
    [
        ("", 8, [""]),
        ("add salt", 8, ["add salt"]),
        ("add 100 g salt", 8, ["add", "100 g", "salt"]),
        ("heat to 180 °C", 11, ["heat to", "180 °C"]),
        ("about 50 % more", 9, ["about", "50 % more"]),
        ("in 2 Pots", 5, ["in 2", "Pots"]),
        ("butterscotch", 6, ["butter", "scotch"]),
        ("one 9-inch tin", 8, ["one", "9-inch", "tin"]),
    ],
)
def test_what_stays_together(text: str, width: int, lines: list[str]) -> None:
    assert wrap(text, width) == lines


def test_how_lines_begin() -> None:
    assert wrap("flour, salt, yeast", 13, rest="    ", first="- ") == ["- flour,", "    salt,", "    yeast"]
    assert wrap("flour", 13, rest="    ", first="- ") == ["- flour"]


@given(st.text("ab -4g\u00a0\t", max_size=60), st.integers(8, 20), st.sampled_from(["", "  ", "- "]))
def test_lines_are_those_of_the_standard_library(text: str, width: int, rest: str) -> None:
    text = " ".join(text.split(" "))
    held = re.sub(r"(\d) (?=[a-z%°])", "\\1\u00a0", text)
    cut = textwrap.wrap(held, width, initial_indent="* ", subsequent_indent=rest, break_on_hyphens=False)
    lines = [line.replace("\u00a0", " ") for line in cut]
    assert wrap(text, width, rest, "* ") == (["* " + text] if 2 + len(text) <= width else lines)
