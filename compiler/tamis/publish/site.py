"""A library as a site: an index, a page a recipe, a style sheet.

With mistakes in the recipes the old site stays as it is, since a page that is out of date beats one that is wrong; a
cook who wants the rest anyway says so, and is told what is missing.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from tamis.assets import asset
from tamis.library.files import read_bytes, shown
from tamis.publish.folder import Refused, put_site
from tamis.publish.listing import index_page
from tamis.publish.market import PAGE, house_market_page
from tamis.publish.page import recipe_page
from tamis.publish.paths import page_file, picture_path
from tamis.record import NamedTuple
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.library.library import Entry, Library, Progress


class Report(NamedTuple):
    """What a build did.

    `refused` says why nothing was built (then the rest is empty, but for `missing`). `missing` names the recipes with
    errors, which have no page. `changed`, `removed` and `kept` are paths in the site: written with other content than
    before, taken away, and found there though no build made them.
    """

    out: Path
    pages: int = 0
    changed: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    refused: str = ""


def build_site(
    library: Library,
    out: Path,
    *,
    keep_going: bool = False,
    replace: bool = False,
    progress: Progress | None = None,
) -> Report:
    """Build the site of a library in `out`, whole or not at all.

    Raises OSError where the disk will not take it, and Unreadable where a picture is no longer to be had.
    """
    sound = [entry for entry in library.entries if not entry.faulty]
    missing = tuple(shown(entry.path) for entry in library.entries if entry.faulty)
    wrong = missing or any(finding.severity == "error" for _, finding in library.house.findings)
    if wrong and not keep_going:
        return Report(out, missing=missing, refused=_errors_in(missing))
    if _holds_recipes(library, out):
        return Report(
            out, missing=missing, refused=f"{out} holds the recipes themselves; choose another place with `-o`"
        )
    files = _files(library, sound, missing, progress)
    try:
        swapped = put_site(out, files, replace)
    except Refused as reason:
        return Report(out, missing=missing, refused=str(reason))
    return Report(out, len(sound), *swapped, missing=missing)


def _errors_in(missing: tuple[str, ...]) -> str:
    if not missing:
        who = "the kitchen's own files have errors"
    else:
        who = f"{len(missing)} recipes have errors" if len(missing) > 1 else f"{missing[0]} has errors"
    return f"{who}, and the site was left as it was; `--keep-going` builds the rest"


def _holds_recipes(library: Library, out: Path) -> bool:
    """Whether the folder, renamed and put back, would be one with recipes below it."""
    place = out.resolve()
    return place.exists() and any(Path(entry.path).resolve().is_relative_to(place) for entry in library.entries)


def _files(
    library: Library, sound: Sequence[Entry], missing: tuple[str, ...], progress: Progress | None
) -> dict[str, bytes]:
    """Every file of the site, by its path in it. Raises Unreadable."""
    kitchen = library.kitchen
    pages = {entry.stem for entry in sound}
    recipes = [entry.compiled for entry in sound]
    market = house_market_page(recipes, kitchen, pages)
    files = {"index.html": _bytes(index_page(recipes, missing, kitchen, PAGE if market else ""))}
    if market:
        files[PAGE] = _bytes(market)
    for done, entry in enumerate(sound, 1):
        picture = picture_path(entry.stem, entry.picture.suffix) if entry.picture else ""
        if entry.picture:
            files[picture] = read_bytes(entry.picture)
        files[page_file(entry.stem)] = _bytes(recipe_page(entry.compiled, kitchen, pages, picture))
        if progress:
            progress(done, len(sound))
    static = Path(asset("site/static"))
    for path in sorted(static.rglob("*")):
        if path.is_file():
            files[path.relative_to(static).as_posix()] = path.read_bytes()
    return files


def _bytes(html: str) -> bytes:
    """A page as UTF-8. A file name may hold what is no character; there a question mark stands."""
    return html.encode("utf-8", "replace")
