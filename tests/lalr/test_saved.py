"""`grammar/saved/` is what the grammars, and the words, make."""

from __future__ import annotations

import pytest

from tamis import make_saved, make_tables
from tamis.make_saved import FOLDER, files

MADE = make_tables.files() | files()


@pytest.mark.parametrize("name", MADE)
def test_a_saved_file_is_what_its_sources_make(name: str) -> None:
    assert (FOLDER / name).read_text(encoding="utf-8") == MADE[name], "run python -m tamis.make_all"


def test_nothing_else_lies_there() -> None:
    assert sorted(path.relative_to(FOLDER).as_posix() for path in FOLDER.rglob("*.*")) == sorted(MADE)


def test_words_of_a_class_that_no_production_has_are_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    lists = {"closed": {"OF": ("of",), "NEAR": ("near",)}, "open": {}}
    monkeypatch.setattr(make_saved, "word_lists", lambda _language, _name: lists)
    with pytest.raises(ValueError, match=r"no production of grammar/clause\.lark has NEAR, which .*/en/clause\.toml"):
        make_saved.files()
