"""The picture of a dish: on its page, in the site's folder, and told to machines."""

from __future__ import annotations

from pathlib import Path

import pytest

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


@pytest.mark.parametrize(
    ("image", "said"),
    [
        ("jgu.PNG", ("there is no picture “jgu.PNG” here", "did you mean `jug.PNG`?")),
        (
            "photos/jug.jpg",
            ("there is no picture “jug.jpg” here", "put the picture beside the recipe, or take the line out"),
        ),
        ("../jug.png", ("“jug.png” lies outside the folder of the house", "copy the picture beside the recipe")),
        ("/etc/jug.png", ("“jug.png” lies outside the folder of the house", "copy the picture beside the recipe")),
    ],
)
def test_what_cannot_be_shown_is_told_and_left_out(image: str, said: tuple[str, str], tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, image)
    assert kitchen.findings() == [said]
    page = kitchen.build()
    assert "<img" not in page and "image" not in data_of(page)


def test_what_no_browser_shows_is_told(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, "jug.tiff")
    ((message, hint),) = kitchen.findings()
    assert message == "“jug.tiff” is no picture that browsers show" and ".png" in hint
    assert "<img" not in kitchen.build()


def test_a_picture_on_the_web_is_told_to_machines_only(tmp_path: Path) -> None:
    kitchen = Kitchen(tmp_path, "https://example.org/jug.jpg")
    assert kitchen.findings() == []
    page = kitchen.build()
    assert "<img" not in page and data_of(page)["image"] == "https://example.org/jug.jpg"
