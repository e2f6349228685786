"""Files that are barely text: each is told in one finding, or accepted, and nothing raises."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.compile import Compiled, compile
from tamis.kitchen.house import default_kitchen
from tamis.library.library import open_library
from tamis.source import Source, decode

PLAIN = "title: Salt water\nserves: 1\n\n# Water\n\nStir [10 g fine salt] into [1 l water].\n"


def compiled(text: str) -> Compiled:
    return compile(Source("odd.tamis", text), default_kitchen("en"), {})


def rules(text: str) -> list[str]:
    return [finding.rule for finding in compiled(text).findings]


def test_plain_text_is_clean() -> None:
    assert rules(PLAIN) == []


@pytest.mark.parametrize("end", ["\r", "\r\n", "\n"])
def test_line_ends(end: str) -> None:
    text = PLAIN.replace("\n", end)
    recipe = compiled(text)
    assert recipe.findings == ()
    assert len(recipe.table.rows) == 2
    assert recipe.document.print() == text


def test_byte_order_mark() -> None:
    recipe = compiled("\ufeff" + PLAIN)
    assert recipe.findings == ()
    assert recipe.recipe.title == "Salt water"


def test_nul() -> None:
    assert rules(PLAIN.replace("Stir", "Stir\0")) == ["not-text"]


def test_empty() -> None:
    assert rules("") == ["missing-title"]
    assert rules("\n\n  \n") == ["missing-title"]


def test_not_utf8(tmp_path: Path) -> None:
    """A byte that is not UTF-8 is one error; the rest is compiled."""
    file = tmp_path / "salt-water.tamis"
    file.write_bytes(PLAIN.encode().replace(b"Salt", b"S\xe4lt"))
    (entry,) = open_library(file).entries
    assert [finding.rule for finding in entry.compiled.findings] == ["not-utf8"]
    assert len(entry.compiled.table.rows) == 2


def test_decode_keeps_places() -> None:
    text, bad = decode(b"ab\xffcd\xfe")
    assert (text, bad) == ("ab\ufffdcd\ufffd", 2)


def test_number_of_5000_digits() -> None:
    text = PLAIN.replace("10 g", "9" * 5_000 + " g")
    assert rules(text) == ["number-unclear"]


def test_megabyte_of_brackets() -> None:
    text = PLAIN + "\n" + "[" * 1_000_000 + "\n"
    assert rules(text) == ["bracket-unclosed"]


def test_megabyte_in_a_clause() -> None:
    text = PLAIN + "\nStir [" + "a" * 1_000_000 + "].\n"
    assert rules(text) == ["clause-length"]


def test_deep_round_brackets() -> None:
    text = PLAIN + "\nStir [" + "(" * 900 + "a" + ")" * 900 + "].\n"
    assert "clause-role" in rules(text) or "clause-syntax" in rules(text)


def test_no_headings() -> None:
    """Without a heading the first paragraph with a clause opens the only component, named by the title."""
    text = PLAIN.replace("# Water", "A [link](https://example.org/).")
    recipe = compiled(text)
    assert recipe.findings == ()
    assert [component.name for component in recipe.recipe.components] == ["Salt water"]
    assert recipe.recipe.headnote.startswith("A [link]")
