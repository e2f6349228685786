"""The picture of a dish: a file that lies in the house's folder and that every browser can show.

A picture somewhere on the web is told to machines that read the page; it is neither fetched nor shown, since a page
that loads from elsewhere breaks when elsewhere does.
"""

from __future__ import annotations

from pathlib import Path

from tamis.diagnostics import Diagnostic
from tamis.quantity.near import nearest
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.reading.header import Header

SUFFIXES = (".avif", ".gif", ".jpeg", ".jpg", ".png", ".svg", ".webp")


def is_on_the_web(image: str) -> bool:
    """Whether the header names a place on the web instead of a file."""
    return image.lower().startswith(("http://", "https://"))


def picture_of(header: Header, recipe: str, house: str) -> tuple[Path | None, Diagnostic | None]:
    """The file of a recipe's picture, counted from the recipe's own folder, or why the site cannot show it.

    Neither where there is no picture, or only one on the web.
    """
    if not header.image or is_on_the_web(header.image):
        return None, None
    file = Path(recipe).parent / header.image
    wrong = _wrong(file, header.image, Path(house))
    if wrong is None:
        return file, None
    message, hint = wrong
    return None, Diagnostic("image-missing", "warning", header.span("image"), message, hint)


def _wrong(file: Path, image: str, house: Path) -> tuple[str, str] | None:
    """What keeps a file from being shown, and what to do; None where nothing does."""
    inside, there = _found(file, house)
    if not inside:
        return f"“{image}” is outside the library's folder", "copy the picture beside the recipe"
    known = file.suffix.lower() in SUFFIXES
    if known and there:
        return None
    near = _nearest(file)
    if near:
        hint = f"did you mean `{(Path(image).parent / near).as_posix()}`?"
    elif known:
        hint = "put the picture beside the recipe, or take the line out"
    else:
        hint = f"its name ends in one of {', '.join(SUFFIXES)}"
    return f"there is no picture “{image}”" if known else f"“{image}” is not a picture that browsers show", hint


def _found(file: Path, house: Path) -> tuple[bool, bool]:
    """Whether a file lies in the house's folder, and whether it is there."""
    try:
        return file.resolve().is_relative_to(house.resolve()), file.is_file()
    except (OSError, RuntimeError, ValueError):  # too long a name, a link to itself, a sign that no name may hold
        return True, False


def _nearest(file: Path) -> str | None:
    """The picture in the same folder that was most likely meant: one that differs in its ending or in capitals only,
    or else the one with the nearest name."""
    names = _pictures_in(file.parent)
    same = (name for name in names if Path(name).stem.casefold() == file.stem.casefold())
    return next(same, None) or nearest(file.name, names)


def _pictures_in(folder: Path) -> list[str]:
    """The names of the pictures in a folder, sorted; none where it cannot be looked into."""
    try:
        return sorted(each.name for each in folder.iterdir() if each.suffix.lower() in SUFFIXES and each.is_file())
    except (OSError, ValueError):
        return []
