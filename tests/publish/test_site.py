"""A library becomes a site: what is in it, what is left out, and that the same recipes give the same bytes."""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest

from tamis.library.library import Library
from tamis.publish.site import build_site

from .samples import CUSTARD, HOUSE, Writer

BROKEN = CUSTARD.replace("Poured custard", "Broken custard").replace("[70 g (1/3 cup)", "[70 g (1/3 cup")


def contents(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_a_site_has_an_index_a_page_each_and_a_style_sheet(library: Writer, tmp_path: Path) -> None:
    report = build_site(library(custard=CUSTARD), tmp_path / "public")
    assert report.refused == ""
    assert report.pages == 1
    assert report.changed == ("index.html", "market.html", "recipes/custard.html", "style.css")
    index = (tmp_path / "public" / "index.html").read_text(encoding="utf-8")
    assert '<a href="recipes/custard.html">Poured custard</a>' in index
    assert (tmp_path / "public" / "style.css").stat().st_size > 1000


def test_errors_leave_the_old_site_untouched(library: Writer, tmp_path: Path) -> None:
    out = tmp_path / "public"
    build_site(library(custard=CUSTARD), out)
    before = contents(out)
    report = build_site(library(broken=BROKEN), out)
    assert "has errors" in report.refused
    assert [Path(name).name for name in report.missing] == ["broken.tamis"]
    assert contents(out) == before


def test_keeping_going_builds_the_rest_and_lists_what_is_missing(library: Writer, tmp_path: Path) -> None:
    out = tmp_path / "public"
    report = build_site(library(custard=CUSTARD, broken=BROKEN), out, keep_going=True)
    assert report.pages == 1
    assert [Path(name).name for name in report.missing] == ["broken.tamis"]
    assert not (out / "recipes" / "broken.html").exists()
    index = (out / "index.html").read_text(encoding="utf-8")
    assert "left out" in index and "broken.tamis" in index


def test_a_folder_that_is_not_ours_is_refused(library: Writer, tmp_path: Path) -> None:
    out = tmp_path / "thesis"
    out.mkdir()
    (out / "chapter.txt").write_text("mine")
    assert "--replace" in build_site(library(custard=CUSTARD), out).refused
    assert contents(out) == {"chapter.txt": b"mine"}
    assert build_site(library(), out, replace=True).kept == ("chapter.txt",)


@pytest.mark.parametrize("where", [".", ".."])
def test_the_recipes_own_folder_is_refused_even_if_told(library: Writer, tmp_path: Path, where: str) -> None:
    opened = library(custard=CUSTARD)
    report = build_site(opened, tmp_path / "recipes" / where, replace=True)
    assert "holds the recipes" in report.refused
    assert (tmp_path / "recipes" / "custard.tamis").read_text(encoding="utf-8") == CUSTARD


def test_a_second_build_of_the_same_changes_nothing(library: Writer, tmp_path: Path) -> None:
    opened = library(custard=CUSTARD)
    build_site(opened, tmp_path / "public")
    report = build_site(opened, tmp_path / "public")
    assert (report.pages, report.changed, report.removed) == (1, (), ())


def test_progress_counts_the_pages(library: Writer, tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    build_site(library(custard=CUSTARD), tmp_path / "public", progress=lambda done, of: told.append((done, of)))
    assert told == [(1, 1)]


def test_names_with_odd_characters_are_linked(library: Writer, tmp_path: Path) -> None:
    build_site(library(**{"crème & cœur #1": CUSTARD}), tmp_path / "public")
    index = (tmp_path / "public" / "index.html").read_text(encoding="utf-8")
    assert 'href="recipes/cr%C3%A8me%20%26%20c%C5%93ur%20%231.html"' in index
    assert (tmp_path / "public" / "recipes" / "crème & cœur #1.html").exists()


def test_a_name_that_is_no_text_still_builds(library: Writer, tmp_path: Path) -> None:
    name = os.fsdecode(b"caf\xe9")
    report = build_site(library(**{name: CUSTARD}), tmp_path / "public")
    assert report.pages == 1
    assert 'href="recipes/caf%E9.html"' in (tmp_path / "public" / "index.html").read_text(encoding="utf-8")
    assert build_site(library(), tmp_path / "public").changed == ()


def test_a_house_with_errors_in_its_settings_is_refused(library: Writer, tmp_path: Path) -> None:
    report = build_site(library(HOUSE + 'units = "stones"\n', custard=CUSTARD), tmp_path / "public")
    assert "kitchen" in report.refused
    assert not (tmp_path / "public").exists()


def test_two_builds_of_the_demo_library_are_equal(demo: Library, demo_site: Path, tmp_path: Path) -> None:
    build_site(demo, tmp_path / "again", keep_going=True)
    assert contents(tmp_path / "again") == contents(demo_site)


def test_no_page_needs_anything_from_elsewhere(demo_site: Path) -> None:
    for page in demo_site.rglob("*.html"):
        text = page.read_text(encoding="utf-8")
        assert all(source.startswith("../pictures/") for source in re.findall(r' src="([^"]*)"', text))
        assert "<script" not in text.replace('<script type="application/ld+json">', "")
        assert text.count("<link ") - text.count('rel="canonical"') == 1
    assert "url(" not in (demo_site / "style.css").read_text(encoding="utf-8")
