"""What is to be left of a liquid grows with it, however it is said."""

from __future__ import annotations

import pytest

from .kitchen_table import one_line, sentence, times


@pytest.mark.parametrize(
    ("clause", "shown"),
    [
        ("until reduced to 150 ml, about 15 min", "until reduced to 450 ml, about 15 min"),
        ("to 150 ml", "to 450 ml"),
        ("until 82 °C and it coats the spoon", "until 82 °C (180 °F) and it coats the spoon"),
    ],
)
def test_what_is_left(clause: str, shown: str) -> None:
    made = times(one_line(f"Boil [750 ml red wine] [in a wide pan] [{clause}]."), 3)
    assert shown in sentence(made)
