"""The picture of a dish: on its page, in the site's folder, and told to machines."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tamis.cli.main import main
from tamis.library.files import Unreadable
from tamis.library.library import open_library
from tamis.publish.site import build_site
from tests.publish.samples import CUSTARD
from tests.publish.test_structured import data_of

PICTURE = b"\x89PNG\r\n\x1a\n and so on"


class Kitchen:
    """A folder with a custard and its picture, and the site built from it."""

    def __init__(self, folder: Path, image: str = "jug.PNG") -> None:
        self.folder, self.out = folder / "recipes", folder / "public"
        self.folder.mkdir()
        (self.folder / "jug.PNG").write_bytes(PICTURE)
        self.write(image)

    def write(self, image: str) -> None:
        line = f"image: {image}\n" if image else ""
        (self.folder / "custard.tamis").write_text(CUSTARD.replace("\n\n", f"\n{line}\n", 1), encoding="utf-8")

    def findings(self) -> list[tuple[str, str]]:
        return [(finding.message, finding.hint) for _, finding in open_library(self.folder).findings()]

    def build(self) -> str:
        report = build_site(open_library(self.folder), self.out)
        assert report.refused == ""
        return (self.out / "recipes" / "custard.html").read_text(encoding="utf-8")


def test_a_picture_is_copied_shown_and_told(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    assert kitchen.findings() == []
    page = kitchen.build()
    assert page.count('<img class="picture" src="../pictures/custard.png" alt="">') == page.count("<img") == 1
    assert (kitchen.out / "pictures" / "custard.png").read_bytes() == PICTURE
    assert data_of(page)["image"] == "../pictures/custard.png"


def test_machines_are_told_the_whole_address_where_it_is_known(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    (kitchen.folder / "kitchen.toml").write_text('[publish]\naddress = "https://example.org/school/"\n')
    assert data_of(kitchen.build())["image"] == "https://example.org/school/pictures/custard.png"


def test_a_picture_that_is_dropped_leaves_the_site(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    kitchen.build()
    kitchen.write("")
    assert "<img" not in kitchen.build()
    assert not (kitchen.out / "pictures").exists()


ELSEWHERE, NO_SUCH = "copy the picture beside the recipe", "put the picture beside the recipe, or take the line out"
LONG = "j" * 300 + ".png"


@pytest.mark.parametrize(
    ("image", "said"),
    [
        ("jgu.PNG", ("there is no picture “jgu.PNG”", "did you mean `jug.PNG`?")),
        ("jug.png", ("there is no picture “jug.png”", "did you mean `jug.PNG`?")),
        ("jug.tiff", ("“jug.tiff” is not a picture that browsers show", "did you mean `jug.PNG`?")),
        ("photos/bowl.jpg", ("there is no picture “photos/bowl.jpg”", "did you mean `photos/bowls.jpg`?")),
        ("photos/jug.jpg", ("there is no picture “photos/jug.jpg”", NO_SUCH)),
        ("photos/spoon.png", ("there is no picture “photos/spoon.png”", NO_SUCH)),  # a folder, and not its own nearest
        ("no/where.jpg", ("there is no picture “no/where.jpg”", NO_SUCH)),
        ("../jug.png", ("“../jug.png” is outside the library's folder", ELSEWHERE)),
        ("/etc/jug.png", ("“/etc/jug.png” is outside the library's folder", ELSEWHERE)),
        ("out.png", ("“out.png” is outside the library's folder", ELSEWHERE)),
        ("loop.png", ("there is no picture “loop.png”", NO_SUCH)),
        (LONG, (f"there is no picture “{LONG}”", NO_SUCH)),
    ],
)
def test_what_cannot_be_shown_is_told_and_left_out(image: str, said: tuple[str, str], tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, image)
    (kitchen.folder / "photos" / "spoon.png").mkdir(parents=True)
    (kitchen.folder / "photos" / "bowls.jpg").write_bytes(PICTURE)
    (tmp_path / "outside.png").write_bytes(PICTURE)
    (kitchen.folder / "out.png").symlink_to(tmp_path / "outside.png")
    (kitchen.folder / "loop.png").symlink_to("loop.png")
    if image == "jug.png" and (kitchen.folder / image).exists():
        pytest.skip("this disk takes capital and small letters for the same")
    assert kitchen.findings() == [said]
    page = kitchen.build()
    assert "<img" not in page and "image" not in data_of(page)
    assert not (kitchen.out / "pictures").exists()


def test_a_name_that_no_disk_takes_is_told_like_any_other(tmp_path: Path) -> None:
    findings = Kitchen(tmp_path, "jars\0/jar.png").findings()
    assert ("there is no picture “jars\0/jar.png”", NO_SUCH) in findings


def test_what_no_browser_shows_is_told(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, "custard.txt")
    ((message, hint),) = kitchen.findings()
    assert message == "“custard.txt” is not a picture that browsers show" and ".png" in hint
    assert "<img" not in kitchen.build()


@pytest.mark.parametrize("image", ["https://example.org/jug.jpg", "HTTP://example.org/jug"])
def test_a_picture_on_the_web_is_told_to_machines_only(image: str, tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, image)
    assert kitchen.findings() == []
    page = kitchen.build()
    assert "<img" not in page and data_of(page)["image"] == image


def test_a_picture_counts_from_the_folder_of_the_recipe_and_may_lie_elsewhere_in_the_house(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    (kitchen.folder / "kitchen.toml").touch()
    (kitchen.folder / "sweet").mkdir()
    kitchen.write("../jug.PNG")
    (kitchen.folder / "custard.tamis").rename(kitchen.folder / "sweet" / "custard.tamis")
    assert [list(open_library(path).findings()) for path in (kitchen.folder, kitchen.folder / "sweet")] == [[], []]
    kitchen.build()
    assert (kitchen.out / "pictures" / "custard.png").read_bytes() == PICTURE


def test_a_changed_picture_is_written_and_an_unchanged_one_is_not(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    kitchen.build()
    assert build_site(open_library(kitchen.folder), kitchen.out).changed == ()
    (kitchen.folder / "jug.PNG").write_bytes(PICTURE + b"!")
    assert build_site(open_library(kitchen.folder), kitchen.out).changed == ("pictures/custard.png",)


def test_a_picture_that_vanishes_after_the_check_leaves_the_old_site_whole(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path)
    before = kitchen.build()
    library = open_library(kitchen.folder)
    (kitchen.folder / "jug.PNG").unlink()
    with pytest.raises(Unreadable, match=r"jug\.PNG: cannot be read: No such file"):
        build_site(library, kitchen.out)
    assert (kitchen.out / "recipes" / "custard.html").read_text(encoding="utf-8") == before
    assert (kitchen.out / "pictures" / "custard.png").read_bytes() == PICTURE


def test_the_command_tells_of_a_picture_that_cannot_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    kitchen = Kitchen(tmp_path)
    opened = open

    def locked(path: Any, *how: Any, **more: Any) -> Any:
        if str(path).endswith("jug.PNG"):
            raise PermissionError(13, "Permission denied")
        return opened(path, *how, **more)

    monkeypatch.setattr("builtins.open", locked)
    assert main(["build", str(kitchen.folder)]) == 2
    assert "jug.PNG: cannot be read: Permission denied" in capsys.readouterr().err
    assert not (kitchen.folder / "public").exists()
