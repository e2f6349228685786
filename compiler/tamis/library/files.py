"""The cook's own files: the one place that reads and writes them.

A recipe folder also holds pictures, notes and the site that was built beside the recipes. Only recipe
files are taken, in an order that no file system decides, and a file is written whole or not at all.
"""

from __future__ import annotations

import os
from pathlib import Path

from tamis.record import NamedTuple
from tamis.source import Source, decode

SETTINGS, GOODS, SUFFIX = "kitchen.toml", "goods.toml", ".tamis"
SITE_MARK = ".tamis-site"
"""A folder that holds this file is a built site and no part of the recipes."""


class Unreadable(Exception):
    """A file or folder that cannot be read at all; the text is for the cook. It stops the command."""


class Text(NamedTuple):
    """A file's text; `bad_byte` is the offset of the first that is not UTF-8, or None."""

    source: Source
    bad_byte: int | None


def house_folder(path: Path) -> Path:
    """The folder of the nearest `kitchen.toml`, walking up; without one, the path's own folder."""
    start = path.absolute()
    if not start.is_dir():
        start = start.parent
    for folder in (start, *start.parents):
        if (folder / SETTINGS).is_file():
            return folder
    return start


def recipe_paths(folder: Path) -> list[Path]:
    """All recipe files below a folder, sorted by path; hidden folders and built sites are passed over."""
    found: list[Path] = []
    for here, folders, files in os.walk(folder):
        folders[:] = sorted(
            name for name in folders if not name.startswith(".") and not Path(here, name, SITE_MARK).exists()
        )
        found.extend(Path(here, name) for name in files if name.endswith(SUFFIX) and name[0] != ".")
    return sorted(found)


def read_bytes(path: Path) -> bytes:
    """What is in a file. Raises Unreadable."""
    try:
        return path.read_bytes()
    except OSError as error:
        raise Unreadable(f"{shown(path)}: cannot be read: {error.strerror or error}") from error


def read_text(path: Path) -> Text:
    """A file as text, named as a cook would type it. Raises Unreadable."""
    text, bad = decode(read_bytes(path))
    return Text(Source(shown(path), text, path.name.removesuffix(SUFFIX)), bad)


def read_if_there(path: Path) -> Text | None:
    """A file's text, or None where there is no such file. Raises Unreadable."""
    return read_text(path) if path.exists() else None


def shown(path: Path) -> str:
    """A path as messages name it: from the working folder if it lies below, else whole."""
    whole = path.absolute()
    try:
        return whole.relative_to(Path.cwd()).as_posix()
    except ValueError:
        return whole.as_posix()


def write_atomic(path: Path, data: bytes) -> None:
    """Write a file whole or not at all: beside its place first, then into it. Raises OSError."""
    beside = path.with_name(f".{path.name}.{os.getpid()}.part")
    try:
        beside.write_bytes(data)
        beside.replace(path)
    finally:
        beside.unlink(missing_ok=True)
