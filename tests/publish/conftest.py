"""A small library on disk, and the demo library, opened as the command opens them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.library.library import Library, open_library

from .samples import HOUSE, Writer

CHECKOUT = Path(__file__).resolve().parents[2]


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
