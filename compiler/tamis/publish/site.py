"""A library as a site: an index, a page a recipe, a style sheet.

With mistakes in the recipes the old site stays as it is, since a page that is out of date beats one that is wrong; a
cook who wants the rest anyway says so, and is told what is missing.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path

from tamis.assets import asset
from tamis.internal import internal_error
from tamis.library.files import read_bytes, shown
from tamis.publish.folder import Refused, put_site
from tamis.publish.listing import index_page
from tamis.publish.market import PAGE, house_market_page
from tamis.publish.page import recipe_page
from tamis.publish.paths import page_file, picture_path
from tamis.record import NamedTuple
from tamis.source import Source
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    from tamis.compile import Compiled
    from tamis.diagnostics import Diagnostic
    from tamis.library.library import Entry, Library, Progress


class Report(NamedTuple):
    """What a build did.

    `refused` says why nothing was built (then the rest is empty, but for `missing` and `failed`). `missing` names the
    recipes with errors, which have no page; `failed` tells of pages on which the compiler itself failed. `changed`,
    `removed` and `kept` are paths in the site: written with other content than before, taken away, and found there
    though no build made them.
    """

    out: Path
    pages: int = 0
    changed: tuple[str, ...] = ()
    removed: tuple[str, ...] = ()
    kept: tuple[str, ...] = ()
    missing: tuple[str, ...] = ()
    refused: str = ""
    failed: tuple[tuple[Source, Diagnostic], ...] = ()


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
    wrong = missing or any(finding.severity == "error" for _, finding in library.house.with_prices())
    if wrong and not keep_going:
        return Report(out, missing=missing, refused=_errors_in(missing))
    if _holds_recipes(library, out):
        return Report(
            out, missing=missing, refused=f"{out} holds the recipes themselves; choose another place with `-o`"
        )
    site = _Site(library, progress)
    pages = site.pages(sound)
    sound = [entry for entry in sound if entry.stem in pages]
    kept = {entry.path for entry in sound}
    missing = tuple(shown(entry.path) for entry in library.entries if entry.path not in kept)
    files = site.files(sound, missing, pages)
    failed = tuple(site.failed)
    if failed and not keep_going:
        return Report(out, missing=missing, refused=_errors_in(missing or (failed[0][0].name,)), failed=failed)
    try:
        swapped = put_site(out, files, replace)
    except Refused as reason:
        return Report(out, missing=missing, refused=str(reason), failed=failed)
    return Report(out, len(sound), *swapped, missing=missing, failed=failed)


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


class _Site:
    """The files of a site in the making, by path; `failed` are the pages that the compiler could not make."""

    def __init__(self, library: Library, progress: Progress | None) -> None:
        self.library = library
        self.progress = progress
        self.failed: list[tuple[Source, Diagnostic]] = []

    def pages(self, sound: Sequence[Entry]) -> dict[str, str]:
        """The page of each recipe, by stem; without those that fail, to which then no other may link."""
        stems = {entry.stem for entry in sound}
        pages: dict[str, str] = {}
        for done, entry in enumerate(sound, 1):
            picture = _picture(entry)
            try:
                pages[entry.stem] = recipe_page(entry.compiled, self.library.kitchen, stems, picture)
            except Exception as error:
                self.failed.append((entry.compiled.source, internal_error(error)))
            if self.progress:
                self.progress(done, len(sound))
        if len(pages) < len(stems):
            return self.pages([entry for entry in sound if entry.stem in pages])
        return pages

    def files(self, sound: Sequence[Entry], missing: Sequence[str], pages: Mapping[str, str]) -> dict[str, bytes]:
        """Every file of the site, by its path in it. Raises Unreadable."""
        recipes = [entry.compiled for entry in sound]
        market = self._market(recipes, pages)
        files = {"index.html": _bytes(index_page(recipes, missing, self.library.kitchen, PAGE if market else ""))}
        if market:
            files[PAGE] = _bytes(market)
        for entry in sound:
            if entry.picture:
                files[_picture(entry)] = read_bytes(entry.picture)
            files[page_file(entry.stem)] = _bytes(pages[entry.stem])
        static = Path(asset("site/static"))
        for path in sorted(static.rglob("*")):
            if path.is_file():
                files[path.relative_to(static).as_posix()] = path.read_bytes()
        return files

    def _market(self, recipes: Sequence[Compiled], pages: Collection[str]) -> str | None:
        try:
            return house_market_page(recipes, self.library.kitchen, pages)
        except Exception as error:
            self.failed.append((Source(PAGE, ""), internal_error(error)))
            return None


def _picture(entry: Entry) -> str:
    return picture_path(entry.stem, entry.picture.suffix) if entry.picture else ""


def _bytes(html: str) -> bytes:
    """A page as UTF-8. A file name may hold what is no character; there a question mark stands."""
    return html.encode("utf-8", "replace")
