"""`grammar/saved/` is what the grammars make."""

from __future__ import annotations

import pytest

from tamis.make_saved import FOLDER, files

MADE = files()


@pytest.mark.parametrize("name", MADE)
def test_a_saved_file_is_what_its_sources_make(name: str) -> None:
    assert (FOLDER / name).read_text(encoding="utf-8") == MADE[name], "run python -m tamis.make_saved"


def test_nothing_else_lies_there() -> None:
    assert sorted(path.relative_to(FOLDER).as_posix() for path in FOLDER.rglob("*.*")) == sorted(MADE)
