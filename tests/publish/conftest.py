"""A small library on disk, and the demo library, opened as the command opens them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tamis.library.library import Library, open_library

CHECKOUT = Path(__file__).resolve().parents[2]

HOUSE = """\
[publish]
name = "Tern Quay"
address = "https://example.org/"
"""

CUSTARD = """\
title: Poured custard
makes: 600 ml
serves: 4–6
tags: sauce, vegetarian
course: pudding
tested: 2026-10-11
keeps: 3 days, in the fridge

Warm over a crumble, *cold* over plums.

# Custard

Warm [400 ml whole milk] and [1 split vanilla pod] [in a saucepan] [over medium heat] [until steaming, about 5 min].
[Off the heat], [infuse for 10–30 min].

[Meanwhile], whisk [6 egg yolks] with [70 g (1/3 cup) caster sugar, sifted] [in a bowl] [until thick and pale].

Pour [the milk] slowly on to [the yolks], [whisking all the time].
Return it to the pan and cook [over low heat], [stirring all the time], [until 82 °C and it coats the spoon, 6–9 min].

Note: above about 85 °C the yolks curdle.
"""

Writer = Callable[..., Library]


@pytest.fixture
def library(tmp_path: Path) -> Writer:
    """Writes recipes (stem=text) into a folder and opens it."""
    folder = tmp_path / "recipes"

    def write(house: str = HOUSE, **recipes: str) -> Library:
        folder.mkdir(exist_ok=True)
        (folder / "kitchen.toml").write_text(house, encoding="utf-8")
        for stem, text in recipes.items():
            (folder / f"{stem}.tamis").write_text(text, encoding="utf-8")
        return open_library(folder)

    return write


@pytest.fixture(scope="session")
def demo() -> Library:
    """The demo library of the checkout."""
    return open_library(CHECKOUT / "recipes")


@pytest.fixture(scope="session")
def demo_site(demo: Library, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo library, built."""
    from tamis.publish.site import build_site

    out = tmp_path_factory.mktemp("site") / "public"
    report = build_site(demo, out, keep_going=True)
    assert not report.refused
    return out
