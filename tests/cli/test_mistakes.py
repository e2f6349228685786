"""What a cook sees after the commonest slips of the keyboard, and files that are accepted though they look odd.

The messages are snapshots: read them when they change. Slips that are a rule's own example stand in
`tests/rules/`.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tamis.cli.findings import as_text
from tamis.library.library import open_library

WHOLE = """\
title: Oats
serves: 2

# Oats

Stir [100 g rolled oats] with [200 ml milk] [in a bowl].
[Chill for 8–12 h].
"""

MISTAKES = {
    "a bracket over two paragraphs": WHOLE.replace("with [200", "with [200\n\n"),
    "a time without its unit": WHOLE.replace("8–12 h", "8"),
    "a range the wrong way round": WHOLE.replace("8–12", "12–8"),
    "an opener that nobody knows": WHOLE.replace("[Chill", "[between times], [chill"),
    "a heading without steps": WHOLE + "\n# Topping\n\n% to be written\n",
    "no title": WHOLE.replace("title: Oats\n", ""),
    "a NUL": WHOLE.replace("Oats\n\nStir", "Oats\n\nSt\0ir"),
    "an empty file": "",
    "nothing but white space": " \n\n\t\n",
    "a number of 5,000 digits": WHOLE.replace("200", "2" * 5000),
    "a line of a megabyte of brackets": WHOLE + "[" * 1_000_000 + "\n",
    "a header alone": "title: Oats\nserves: 2\n",
    "prose alone": "Oats with milk.\n",
}


def said(data: bytes, folder: Path) -> str:
    """Everything that is said about a file of these bytes."""
    (folder / "oats.tamis").write_bytes(data)
    return "\n\n".join(as_text(source, finding) for source, finding in open_library(folder).findings())


@pytest.mark.parametrize("name", MISTAKES)
def test_message(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, snapshot: SnapshotAssertion) -> None:
    monkeypatch.chdir(tmp_path)
    text = said(MISTAKES[name].encode(), tmp_path)
    assert text, "a mistake must be told"
    assert text == snapshot


@pytest.mark.parametrize("end", ["\r", "\r\n"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
def test_line_ends_and_byte_order_mark_are_accepted(end: str, mark: str, tmp_path: Path) -> None:
    assert said((mark + WHOLE.replace("\n", end)).encode(), tmp_path) == ""
