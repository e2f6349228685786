"""Begin a recipe file: a small sound recipe with a comment on each kind of line, to be written over.

An empty file teaches nothing. This one compiles clean, shows the header, a component, and most kinds of
bracket, and never takes the place of a file that is there.
"""

from __future__ import annotations

import re
from pathlib import Path

from tamis.cli.common import Stop
from tamis.library.files import SUFFIX, write_atomic
from tamis.typed import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse


def arguments(parser: argparse.ArgumentParser) -> None:
    """What `tamis new` takes."""
    parser.add_argument("name", metavar="NAME", help="the dish, or the file to write")


def run(options: argparse.Namespace) -> int:
    """Write the file and say so."""
    path, title = _named(options.name)
    if path.exists():
        raise Stop(f"{path}: already exists, and was not changed")
    if not path.parent.is_dir():
        raise Stop(f"{path.parent}: there is no such folder")
    try:
        write_atomic(path, _begun(path, title).encode())
    except OSError as error:
        raise Stop(f"{path}: cannot be written: {error.strerror or error}") from error
    print(f"wrote {path}; check it with `tamis check {path}`")
    return 0


def _begun(path: Path, title: str) -> str:
    """The beginning of a recipe in the language of the house around the file."""
    from tamis.assets import asset_text
    from tamis.library.files import house_folder
    from tamis.library.house import open_house

    language = open_house(house_folder(path.parent)).kitchen.language
    return asset_text(f"grammar/words/{language}/new.tamis").replace("TITLE", title)


def _named(name: str) -> tuple[Path, str]:
    """The file and the title of a dish: `Harbour soup` is `harbour-soup.tamis`, and the other way round."""
    given = Path(name)
    words = given.name.removesuffix(SUFFIX)
    stem = re.sub(r"[^\w]+", "-", words).strip("-").lower()
    if not stem:
        raise Stop(f"“{name}” is not a name for a recipe: expected letters, as in `tamis new harbour-soup`")
    title = re.sub(r"[-_\s]+", " ", words).strip()
    return given.with_name(stem + SUFFIX), title[0].upper() + title[1:]
