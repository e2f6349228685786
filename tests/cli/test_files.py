"""Which files are recipes, which house they belong to, and that nothing is ever half-written."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tamis.library.files import (
    SITE_MARK,
    Unreadable,
    absolute,
    house_folder,
    read_text,
    recipe_paths,
    shown,
    write_atomic,
)


def made(folder: Path, *names: str) -> None:
    for name in names:
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("")


def test_recipes_are_found_in_order_without_hidden_folders_and_sites(tmp_path: Path) -> None:
    made(tmp_path, "b.tamis", "a/z.tamis", "a.tamis", ".git/c.tamis", ".d.tamis", "notes.txt", "e.tamis.bak")
    made(tmp_path, f"public/{SITE_MARK}", "public/recipes/f.tamis")
    found = [path.removeprefix(f"{tmp_path.as_posix()}/") for path in recipe_paths(tmp_path)]
    assert found == ["a/z.tamis", "a.tamis", "b.tamis"]


def test_the_nearest_settings_make_the_house(tmp_path: Path) -> None:
    made(tmp_path, "kitchen.toml", "sweet/tarts/plum.tamis", "bread/kitchen.toml", "bread/rye.tamis")
    assert house_folder(tmp_path / "sweet/tarts/plum.tamis") == tmp_path.as_posix()
    assert house_folder(tmp_path / "bread/rye.tamis") == (tmp_path / "bread").as_posix()


def test_bytes_that_are_no_text_keep_the_rest(tmp_path: Path) -> None:
    path = tmp_path / "x.tamis"
    path.write_bytes(b"\xef\xbb\xbftitle: caf\xe9\r\n")
    text = read_text(path)
    assert text.source.text == "\ufefftitle: caf\ufffd\r\n" and text.bad_byte == 11
    assert text.source.stem == "x"


def test_what_cannot_be_read_says_so(tmp_path: Path) -> None:
    with pytest.raises(Unreadable, match=r"nowhere.tamis: cannot be read"):
        read_text(tmp_path / "nowhere.tamis")
    with pytest.raises(Unreadable, match="cannot be read"):
        read_text(tmp_path)


def test_names_are_shown_from_where_one_stands(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made(tmp_path, "a/b.tamis")
    monkeypatch.chdir(tmp_path)
    assert shown(tmp_path / "a/b.tamis") == "a/b.tamis"
    monkeypatch.chdir(tmp_path / "a")
    assert shown(tmp_path / "kitchen.toml") == (tmp_path / "kitchen.toml").as_posix()
    assert shown("./b.tamis") == shown(".//b.tamis") == "b.tamis" and shown("../c.tamis") == "../c.tamis"
    assert shown("") == shown(".") == "."
    assert shown("/") == "/" and absolute("/x//y/./z/") == "/x/y/z"


def test_the_paths_are_those_of_the_standard_library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    made(tmp_path, "a-b/c.tamis", "a/b.tamis", "a.tamis", "a b/c.tamis")
    monkeypatch.chdir(tmp_path / "a")
    for name in ("b.tamis", "../a.tamis", ".././a//b.tamis", "/", "/etc", "..", ""):
        assert absolute(name) == Path(name).absolute().as_posix()
    assert recipe_paths("..") == [path.as_posix() for path in sorted(Path("..").absolute().rglob("*.tamis"))]


def test_a_file_is_written_whole_or_not_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "new.tamis"
    path.write_bytes(b"old")

    def broken(beside: str, target: str) -> None:
        raise OSError("the disk is full")

    monkeypatch.setattr(os, "replace", broken)
    with pytest.raises(OSError, match="full"):
        write_atomic(path, b"new")
    assert path.read_bytes() == b"old" and list(tmp_path.iterdir()) == [path]
    monkeypatch.undo()
    write_atomic(path, b"new")
    assert path.read_bytes() == b"new" and list(tmp_path.iterdir()) == [path]
