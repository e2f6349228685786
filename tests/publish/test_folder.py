"""The new site takes the old one's place whole, and nobody else's file is ever lost."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tamis.library.files import SITE_MARK
from tamis.publish import folder
from tamis.publish.folder import Refused, put_site

ONE = {"index.html": b"one", "recipes/soup.html": b"soup"}
TWO = {"index.html": b"two", "recipes/bread.html": b"bread"}


def files_in(out: Path) -> set[str]:
    return {path.relative_to(out).as_posix() for path in out.rglob("*") if not path.is_dir()}


def test_a_first_build_makes_the_folder_and_marks_it(tmp_path: Path) -> None:
    swapped = put_site(tmp_path / "deep" / "public", ONE, replace=False)
    out = tmp_path / "deep" / "public"
    assert files_in(out) == {*ONE, SITE_MARK}
    assert json.loads((out / SITE_MARK).read_text())["files"] == sorted(ONE)
    assert swapped == (("index.html", "recipes/soup.html"), (), ())


def test_a_second_build_removes_what_the_first_owned(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    swapped = put_site(out, TWO, replace=False)
    assert files_in(out) == {*TWO, SITE_MARK}
    assert (out / "index.html").read_bytes() == b"two"
    assert swapped.changed == ("index.html", "recipes/bread.html")
    assert swapped.removed == ("recipes/soup.html",)


def test_what_others_put_there_is_kept_byte_for_byte(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    (out / "pictures" / "empty").mkdir(parents=True)
    (out / "pictures" / "quay.jpg").write_bytes(b"\xff\xd8")
    (out / "robots.txt").symlink_to("nowhere")
    swapped = put_site(out, TWO, replace=False)
    assert (out / "pictures" / "quay.jpg").read_bytes() == b"\xff\xd8"
    assert (out / "pictures" / "empty").is_dir()
    assert (out / "robots.txt").is_symlink()
    assert swapped.kept == ("pictures/empty", "pictures/quay.jpg", "robots.txt")


def test_nothing_changed_touches_nothing(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    before = (out / "index.html").stat().st_ino
    assert put_site(out, ONE, replace=False) == ((), (), ())
    assert (out / "index.html").stat().st_ino == before


def test_a_strange_folder_is_refused_and_left_alone(tmp_path: Path) -> None:
    out = tmp_path / "thesis"
    out.mkdir()
    (out / "chapter.txt").write_text("mine")
    with pytest.raises(Refused, match="not built by tamis"):
        put_site(out, ONE, replace=False)
    assert files_in(out) == {"chapter.txt"}


def test_told_to_replace_it_builds_there_and_still_loses_nothing(tmp_path: Path) -> None:
    out = tmp_path / "thesis"
    out.mkdir()
    (out / "chapter.txt").write_text("mine")
    put_site(out, ONE, replace=True)
    assert files_in(out) == {*ONE, SITE_MARK, "chapter.txt"}


def test_an_empty_folder_needs_no_telling(tmp_path: Path) -> None:
    put_site(tmp_path, ONE, replace=False)
    assert files_in(tmp_path) == {*ONE, SITE_MARK}


def test_a_link_to_a_folder_stays_a_link(tmp_path: Path) -> None:
    (tmp_path / "served").mkdir()
    (tmp_path / "public").symlink_to("served")
    put_site(tmp_path / "public", ONE, replace=False)
    assert (tmp_path / "public").is_symlink()
    assert files_in(tmp_path / "served") == {*ONE, SITE_MARK}


def test_a_file_in_the_place_of_the_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "public").write_text("a note")
    with pytest.raises(Refused, match="not a folder"):
        put_site(tmp_path / "public", ONE, replace=True)
    assert (tmp_path / "public").read_text() == "a note"


def test_somebody_elses_file_in_the_way_is_refused(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, {"index.html": b"one"}, replace=False)
    (out / "recipes").mkdir()
    (out / "recipes" / "soup.html").write_bytes(b"theirs")
    with pytest.raises(Refused, match=r"soup\.html is in the way"):
        put_site(out, ONE, replace=False)
    assert (out / "recipes" / "soup.html").read_bytes() == b"theirs"


def test_a_folder_in_the_way_of_a_file_is_refused(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, {"style.css": b"a"}, replace=False)
    (out / "index.html").mkdir()
    with pytest.raises(Refused, match=r"index\.html cannot be written"):
        put_site(out, ONE, replace=True)


@pytest.mark.parametrize("mark", ["", "{}", "[]", '{"files": 3}', "\x00"])
def test_a_mark_that_cannot_be_read_owns_nothing(tmp_path: Path, mark: str) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    (out / SITE_MARK).write_text(mark)
    with pytest.raises(Refused, match="cannot be read"):
        put_site(out, TWO, replace=False)
    put_site(out, TWO, replace=True)
    assert files_in(out) == {*ONE, *TWO, SITE_MARK}


def test_a_mark_cannot_reach_outside_its_folder(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    (tmp_path / "precious.txt").write_text("mine")
    mark = json.loads((out / SITE_MARK).read_text())
    (out / SITE_MARK).write_text(json.dumps({**mark, "files": [*mark["files"], "../precious.txt"]}))
    put_site(out, TWO, replace=False)
    assert (tmp_path / "precious.txt").read_text() == "mine"


def test_a_disk_that_fails_half_way_leaves_the_old_site(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    written: list[Path] = []

    def write_some(path: Path, data: bytes) -> int:
        if written:
            raise OSError(28, "No space left on device")
        written.append(path)
        return len(data)

    monkeypatch.setattr(Path, "write_bytes", write_some)
    with pytest.raises(OSError, match="No space"):
        put_site(out, TWO, replace=False)
    monkeypatch.undo()
    assert {name: (out / name).read_bytes() for name in ONE} == ONE
    put_site(out, TWO, replace=False)
    assert files_in(out) == {*TWO, SITE_MARK}
    assert [path.name for path in tmp_path.iterdir()] == ["public"]


def test_a_rename_that_fails_brings_the_old_site_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    rename = Path.rename

    def refuse_new(path: Path, target: Path) -> Path:
        if path.name.endswith(".new"):
            raise OSError(13, "Permission denied")
        return rename(path, target)

    monkeypatch.setattr(Path, "rename", refuse_new)
    with pytest.raises(OSError, match="Permission denied"):
        put_site(out, TWO, replace=False)
    assert {name: (out / name).read_bytes() for name in ONE} == ONE


def test_a_build_killed_between_its_renames_is_mended_by_the_next(tmp_path: Path) -> None:
    out = tmp_path / "public"
    put_site(out, ONE, replace=False)
    (out / "quay.jpg").write_bytes(b"theirs")
    out.rename(tmp_path / ".public.old")
    swapped = folder.put_site(out, TWO, replace=False)
    assert swapped.kept == ("quay.jpg",)
    assert files_in(out) == {*TWO, SITE_MARK, "quay.jpg"}
