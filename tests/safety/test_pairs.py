"""For each safety rule recipes that break it in the least suspicious way, each with a sound twin.

A folder holds `broken.tamis` with what finds it in `rule`, `sound.tamis`, or one of the two alone; perhaps recipes that
these use. A comment in it names the guidance that it breaks.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tamis.assets import asset_text
from tamis.library.library import open_library
from tamis.string_tables import tables

GRAMMAR = Path(__file__).parents[2] / "grammar"
PAIRS = Path(__file__).parent / "pairs"
BROKEN = sorted(file.parent for file in PAIRS.glob("*/broken.tamis"))
SOUND = sorted(file.parent for file in PAIRS.glob("*/sound.tamis"))
SAFETY = {
    "beans-not-soaked", "finished-later", "garlic-in-oil", "hazard-not-cleared", "hazard-unknown", "jar-untested",
    "raw-flour", "raw-milk-or-sprouts", "reheat-too-cool", "rest-too-short", "soft-egg", "tag-contradicted",
    "thaw-at-room", "unwashed-tool", "warm-too-long",
}  # fmt: skip


def rules_of(folder: Path, name: str) -> list[str]:
    """The rules that find something in one file of a folder."""
    library = open_library(folder)
    entry = next(entry for entry in library.entries if entry.compiled.source.stem == name)
    return [finding.rule for finding in entry.compiled.findings]


def _asked(folder: Path) -> set[str]:
    return set((folder / "rule").read_text().split())


@pytest.mark.parametrize("folder", BROKEN, ids=lambda path: path.name)
def test_broken(folder: Path) -> None:
    assert set(rules_of(folder, "broken")) == _asked(folder)


@pytest.mark.parametrize("folder", SOUND, ids=lambda path: path.name)
def test_sound(folder: Path) -> None:
    assert rules_of(folder, "sound") == []


WORDS = sorted(f"words/{path.parent.name}/{path.stem}" for path in (GRAMMAR / "words").glob("*/*.toml"))


@pytest.mark.parametrize("name", ["safety", "verbs", "equipment", "preparations", *WORDS])
def test_data_is_read_as_toml(name: str) -> None:
    import tomllib

    text = asset_text(f"grammar/{name}.toml")
    assert tables(text) == tomllib.loads(text)


def test_every_rule_has_a_pair() -> None:
    assert set().union(*map(_asked, BROKEN)) == SAFETY
