"""Levels of the house and allows of the cook hold for what only the library finds, too."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.library.library import open_library

OATS = """\
title: Oats
serves: 2
{line}

# Oats

Stir [100 g rolled oats] into [200 ml milk] [in a bowl].
[Chill for 8 h].
"""


def told(folder: Path, line: str, levels: str = "") -> list[tuple[str, str]]:
    (folder / "oats.tamis").write_text(OATS.format(line=line), encoding="utf-8")
    (folder / "kitchen.toml").write_text(f"[checks]\n{levels}", encoding="utf-8")
    return [(finding.rule, finding.severity) for _, finding in open_library(folder).findings()]


@pytest.mark.parametrize(
    ("line", "levels", "expected"),
    [
        ("image: oats.png", "", [("image-missing", "warning")]),
        ("image: oats.png", 'image-missing = "off"', []),
        ("image: oats.png", 'image-missing = "error"', [("image-missing", "error")]),
        ("uses: muesli", "", [("uses-unknown", "error")]),
        ("uses: muesli", 'uses-unknown = "warning"', [("uses-unknown", "warning")]),
        ("% allow image-missing: to be taken on Sunday\nimage: oats.png", "", []),
        ("% allow image-missing: to be taken on Sunday", "", [("allow-unused", "warning")]),
        (
            "% allow image-mising: to be taken\nimage: oats.png",
            "",
            [("allow-unknown", "error"), ("image-missing", "warning")],
        ),
    ],
)
def test_levels_and_allows(line: str, levels: str, expected: list[tuple[str, str]], tmp_path: Path) -> None:
    assert told(tmp_path, line, levels) == expected
