"""Text in lines: what stays together, and where each line begins."""

from __future__ import annotations

import pytest

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
