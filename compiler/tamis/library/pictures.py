"""The picture of a dish: a file that lies in the house's folder and that every browser can show.

A picture somewhere on the web is told to machines that read the page; it is neither fetched nor shown, since a page
that loads from elsewhere breaks when elsewhere does.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from tamis.diagnostics import Diagnostic
from tamis.quantity.near import nearest

if TYPE_CHECKING:
    from tamis.reading.header import Header

SUFFIXES = (".avif", ".gif", ".jpeg", ".jpg", ".png", ".svg", ".webp")


def is_on_the_web(image: str) -> bool:
    """Whether the header names a place on the web instead of a file."""
    return image.startswith(("http://", "https://"))


def picture_file(recipe: Path, image: str) -> Path:
    """The file that a recipe names as its picture, counted from the recipe's own folder."""
    return recipe.parent / image


def about_picture(header: Header, recipe: Path, house: Path) -> Diagnostic | None:
    """The finding for a picture that the site could not show; None where there is nothing to say."""
    if not header.image or is_on_the_web(header.image):
        return None
    wrong = _wrong(picture_file(recipe, header.image), house)
    if wrong is None:
        return None
    message, hint = wrong
    return Diagnostic("image-missing", "warning", header.span("image"), message, hint)


def _wrong(file: Path, house: Path) -> tuple[str, str] | None:
    if file.suffix.lower() not in SUFFIXES:
        return f"“{file.name}” is no picture that browsers show", f"its name ends in one of {', '.join(SUFFIXES)}"
    if not file.resolve().is_relative_to(house.resolve()):
        return f"“{file.name}” lies outside the folder of the house", "copy the picture beside the recipe"
    if file.is_file():
        return None
    near = nearest(file.name, sorted(other.name for other in _beside(file)))
    hint = f"did you mean `{near}`?" if near else "put the picture beside the recipe, or take the line out"
    return f"there is no picture “{file.name}” here", hint


def _beside(file: Path) -> list[Path]:
    """The pictures in the folder of a file."""
    if not file.parent.is_dir():
        return []
    return [other for other in file.parent.iterdir() if other.suffix.lower() in SUFFIXES]
