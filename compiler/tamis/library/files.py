"""The cook's own files: the one place that reads and writes them.

A recipe folder also holds pictures, notes and the site that was built beside the recipes. Only recipe
files are taken, in an order that no file system decides, and a file is written whole or not at all.

Paths are plain strings here, their parts parted by slashes: to import pathlib takes longer than to read a recipe.
"""

from __future__ import annotations

import os
from collections.abc import Iterable

from tamis.record import NamedTuple
from tamis.source import Source, decode

SETTINGS, GOODS, SUFFIX = "kitchen.toml", "goods.toml", ".tamis"
SITE_MARK = ".tamis-site"
"""A folder that holds this file is a built site and no part of the recipes."""

AnyPath = str | os.PathLike[str]


class Unreadable(Exception):
    """A file or folder that cannot be read at all; the text is for the cook. It stops the command."""


class Text(NamedTuple):
    """A file's text; `bad_byte` is the offset of the first that is not UTF-8, or None."""

    source: Source
    bad_byte: int | None


def absolute(path: AnyPath) -> str:
    """A path from the root. A `..` stays, since the folder before it may be a link to elsewhere."""
    drive, rest = os.path.splitdrive(os.path.join(os.getcwd(), path))
    return f"{drive}/" + "/".join(part for part in rest.replace(os.sep, "/").split("/") if part not in ("", "."))


def stem_of(path: str) -> str:
    """The name by which other recipes use a file."""
    return path.rpartition("/")[2].removesuffix(SUFFIX)


def house_folder(path: AnyPath) -> str:
    """The folder of the nearest `kitchen.toml`, walking up; without one, the path's own folder."""
    start = absolute(path)
    if not os.path.isdir(start):
        start = os.path.dirname(start)
    folder, above = start, os.path.dirname(start)
    while not os.path.isfile(f"{folder}/{SETTINGS}"):
        if above == folder:
            return start
        folder, above = above, os.path.dirname(above)
    return folder


def recipe_paths(folder: AnyPath) -> list[str]:
    """All recipe files below a folder, sorted by path; hidden folders and built sites are passed over."""
    found: list[str] = []
    for here, folders, files in os.walk(absolute(folder)):
        folders[:] = sorted(
            name for name in folders if name[0] != "." and not os.path.exists(f"{here}/{name}/{SITE_MARK}")
        )
        found.extend(absolute(f"{here}/{name}") for name in files if name.endswith(SUFFIX) and name[0] != ".")
    return in_order(found)


def in_order(paths: Iterable[str]) -> list[str]:
    """Paths folder by folder, as the alphabet has them."""
    return sorted(paths, key=lambda path: path.split("/"))


def read_bytes(path: AnyPath) -> bytes:
    """What is in a file. Raises Unreadable."""
    try:
        with open(path, "rb") as file:
            return file.read()
    except OSError as error:
        raise Unreadable(f"{shown(path)}: cannot be read: {error.strerror or error}") from error


def read_text(path: AnyPath) -> Text:
    """A file as text, named as a cook would type it. Raises Unreadable."""
    text, bad = decode(read_bytes(path))
    name = shown(path)
    return Text(Source(name, text, stem_of(name)), bad)


def read_if_there(path: AnyPath) -> Text | None:
    """A file's text, or None where there is no such file. Raises Unreadable."""
    return read_text(path) if os.path.exists(path) else None


def shown(path: AnyPath) -> str:
    """A path as messages name it: from the working folder if it lies below, else whole."""
    whole, here = absolute(path), absolute("")
    return "." if whole == here else whole.removeprefix(here.rstrip("/") + "/")


def write_atomic(path: AnyPath, data: bytes) -> None:
    """Write a file whole or not at all: beside its place first, then into it. Raises OSError."""
    folder, name = os.path.split(path)
    beside = os.path.join(folder, f".{name}.{os.getpid()}.part")
    try:
        with open(beside, "wb") as file:
            file.write(data)
        os.replace(beside, path)
    finally:
        if os.path.exists(beside):
            os.unlink(beside)
